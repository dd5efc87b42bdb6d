import type { ErrorLine, SizeModel } from './model.ts';

/** A weighted normal that a reading may come from. Inches. */
export interface Line {
  readonly weight: number;
  readonly mean: number;
  readonly spread: number;
}

function around(errors: readonly ErrorLine[], at: number, share: number, own: number, noise: number): Line[] {
  return errors.map((error) => ({
    weight: share * error.share,
    mean: at + error.bias,
    spread: Math.hypot(error.spread, own, noise),
  }));
}

/**
 * The distribution of the mean of n readings at one place, for a part made for `nominal`, or for a part of
 * which the size is not known.
 *
 * Equation: reading_i = size + e + d_i, e one of the model's error lines (the same for all readings of the
 * place), d_i normal with the model's `repeat`; so the mean of n has variance spread^2 + repeat^2 / n. For an
 * unknown part the size is one of the trade's nominals, or lies elsewhere, normally spread.
 *
 * @param model [in] error lines, repeat spread and unknown sizes of this kind of reading
 * @param nominal [in] size the part is made for, above 0; undefined when the catalogue does not say
 * @param n [1] number of readings at the place, 1 or more
 * @returns weights that sum to 1, means and spreads [in]
 * Validity: readings that lie within `apart` of each other; further apart they are taken one by one.
 * Source: derived here; the figures are common practice, no published source.
 */
export function linesOf(model: SizeModel, nominal: number | undefined, n: number): Line[] {
  const noise = model.repeat / Math.sqrt(n);
  if (nominal !== undefined) return around(model.errors, nominal, 1, 0, noise);
  const { nominals, elsewhere } = model.unknown;
  return [
    ...nominals.flatMap(({ at, share }) => around(model.errors, at, share, 0, noise)),
    ...around(model.errors, elsewhere.mean, elsewhere.share, elsewhere.spread, noise),
  ];
}
