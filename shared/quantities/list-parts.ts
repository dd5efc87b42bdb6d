/** A figure with its decimals, and the unit it may have, before a gap and another such figure: `2,65 mm 2,70 mm`. */
const BETWEEN_FIGURES = /(?<=[.,]\d+\s?(?:mm|in|["”″])?)\s+(?=\d*[.,]\d)/;

/** A comma that no number has inside: at a space, beside a unit, before a point. */
const AT_COMMA = /,\s+|(?<!\d),|,(?!\d)/;

/** `2.60,2.65` has points for its decimals, so that its comma stands between; `2,65` has none. */
const byPoint = (text: string): string[] => (text.includes('.') ? text.split(',') : [text]);

/**
 * The entries of a list in one text: a line, a semicolon or a comma ends one. A comma between two figures without a
 * point is a decimal comma, as half the world writes `2,65 mm`; a list is never made of it.
 */
export const listParts = (text: string): string[] =>
  text
    .split(/[\r\n;]+/)
    .flatMap((each) => each.split(AT_COMMA))
    .flatMap(byPoint)
    .flatMap((each) => each.trim().split(BETWEEN_FIGURES))
    .map((each) => each.trim())
    .filter((each) => each !== '');
