import { formatFigure } from './format.ts';
import { spokenUnits } from './spoken-units.ts';

/** `.050`, `.050 in`, `1.250 in`, `18 thou`: lengths in words that are written down in inches; `1.65` alone is a ratio. */
const LENGTH = /(?<![\w.,/])(?:(\.\d{2,4})(?: in\b)?|(\d+\.\d+) in\b|(\d+) thou\b)/g;
const THOUSANDTHS = 3;

function told(_: string, bare?: string, inches?: string, thou?: string): string {
  const written = bare ?? inches;
  const value = written === undefined ? Number(thou) / 1000 : Number(written);
  const places = written?.split('.')[1]?.length ?? THOUSANDTHS;
  return `${formatFigure({ value, unit: 'in' }, { places })} mm`;
}

/**
 * Words of ours that name lengths in inches, told in the units that are spoken: `.005 to .040 in` is then
 * `0.13 mm to 1.02 mm`. Not for what somebody typed.
 */
export const inSpoken = (words: string): string =>
  spokenUnits() === 'inch' ? words : words.replaceAll(LENGTH, told);
