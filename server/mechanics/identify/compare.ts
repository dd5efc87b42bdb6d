import { FEATURE_KINDS, SIZE_KINDS } from './kinds.ts';
import type { IdentificationModel, SizeModel } from './model.ts';
import type { Family, PartReadings, ReadingWord, Reason } from './types.ts';

/** Rounding of a decimal entry must not decide at the very edge of a band. */
const EDGE = 1e-9;

function within(difference: number, band: { below: number; above: number }): boolean {
  return difference >= -band.below - EDGE && difference <= band.above + EDGE;
}

/**
 * What one reading says of a size the part is made for.
 *
 * Equation: `agrees` for -below <= reading - nominal <= above of the model's first band, `cannot-tell` within
 * its second, else `differs`.
 *
 * @param model [in] the bands of this kind of reading
 * @param nominal [in] size the part is made for
 * @param reading [in] as read
 * @returns one of the three words
 * Validity: bands for careful caliper work on a clean part.
 * Source: common practice, no published source.
 */
export function wordFor(model: SizeModel, nominal: number, reading: number): ReadingWord {
  const difference = reading - nominal;
  if (within(difference, model.agrees)) return 'agrees';
  return within(difference, model.cannotTell) ? 'cannot-tell' : 'differs';
}

/** Every reading set against one family, in the order of the kinds: reasons for it and against it. */
export function reasonsFor(model: IdentificationModel, family: Family, readings: PartReadings): Reason[] {
  const sizes = SIZE_KINDS.flatMap((kind) =>
    (readings.sizes[kind] ?? []).map((reading): Reason => {
      const madeFor = family.sizes[kind];
      if (madeFor === undefined) return { kind, word: 'not-known', reading };
      const word = wordFor(model.sizes[kind], madeFor, reading);
      return { kind, word, reading, madeFor, difference: reading - madeFor };
    }),
  );
  const features = FEATURE_KINDS.flatMap((kind) =>
    (readings.features[kind] ?? []).map((reading): Reason => {
      const madeFor = family.features[kind];
      if (madeFor === undefined) return { kind, word: 'not-known', reading };
      return { kind, word: madeFor === reading ? 'agrees' : 'differs', reading, madeFor };
    }),
  );
  return [...sizes, ...features];
}
