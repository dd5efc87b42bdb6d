import { FEATURE_KINDS, SIZE_KINDS } from './kinds.ts';
import type { IdentificationModel } from './model.ts';
import { excessOf, withinOf } from './tools.ts';
import type { Family, PartReadings, ReadingWord, Reason } from './types.ts';

/** Rounding of a decimal entry must not decide at the very edge of a band. */
const EDGE = 1e-9;

function within(difference: number, band: { below: number; above: number }): boolean {
  return difference >= -band.below - EDGE && difference <= band.above + EDGE;
}

interface Bands {
  readonly agrees: { readonly below: number; readonly above: number };
  readonly cannotTell: { readonly below: number; readonly above: number };
}

/**
 * What one reading says of a size the part is made for.
 *
 * Equation: d = reading - nominal; `agrees` for d in the first band and d ± excess within the second, `differs` for d
 * outside the second band widened by the excess, else `cannot-tell`.
 *
 * @param model [in] the bands of this kind of reading
 * @param nominal [in] size the part is made for
 * @param reading [in] as read
 * @param excess [in] how much further off than a caliper it may be; left out, 0
 * @returns one of the three words
 * Validity: bands for careful caliper work on a clean part.
 * Source: common practice, no published source.
 */
export function wordFor(model: Bands, nominal: number, reading: number, excess = 0): ReadingWord {
  const difference = reading - nominal;
  const { below, above } = model.cannotTell;
  if (!within(difference, { below: below + excess, above: above + excess })) return 'differs';
  const clear =
    within(difference - excess, model.cannotTell) && within(difference + excess, model.cannotTell);
  return clear && within(difference, model.agrees) ? 'agrees' : 'cannot-tell';
}

/** Every reading set against one family, in the order of the kinds: reasons for it and against it. */
export function reasonsFor(model: IdentificationModel, family: Family, readings: PartReadings): Reason[] {
  const sizes = SIZE_KINDS.flatMap((kind) =>
    (readings.sizes[kind] ?? []).map((read): Reason => {
      const madeFor = family.sizes[kind];
      const { value: reading } = read;
      const how = { within: withinOf(kind, read), ...(read.tool === 'guess' ? { guess: true } : {}) };
      if (madeFor === undefined) return { kind, word: 'not-known', reading, ...how };
      const word = wordFor(model.sizes[kind], madeFor, reading, excessOf(kind, read));
      return { kind, word, reading, madeFor, difference: reading - madeFor, ...how };
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
