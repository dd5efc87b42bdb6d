import { shortLength } from '../../../../shared/quantities/short-length.ts';
import { PART_KINDS } from '../../../../shared/schemas/part-words.ts';

/** A size of a part with no more than four places, and no fewer than it is written with: `.4355 in`. */
export const sizeSaid = (si: number): string => shortLength(si);

/** The same with its half-width. */
export const sizeWithin = (si: number, halfWidth: number): string =>
  `${sizeSaid(si)} ± ${sizeSaid(halfWidth).replace(/ (?:in|mm)$/, '')}`;

const NAMES: Readonly<Record<string, string>> = PART_KINDS;
/** A kind of reading within a sentence: `roller diameter`. */
export const nameOf = (kind: string): string => (NAMES[kind] ?? kind).toLowerCase();

/** `a, b or c` */
export const eitherSaid = (items: readonly string[]): string => {
  const last = items.at(-1) ?? '';
  return items.length < 2 ? last : `${items.slice(0, -1).join(', ')} or ${last}`;
};
