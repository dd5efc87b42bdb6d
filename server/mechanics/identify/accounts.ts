import type { IdentificationModel } from './model.ts';
import type { Family } from './types.ts';

/** What a part is made like. */
type Made = Pick<Family, 'sizes' | 'features'>;

/**
 * One account of what the part in the hand may be. It belongs to a family, or to none of them; each size is as
 * `made` with the chance `same`, and otherwise unknown.
 */
export interface Account {
  /** Index of the family; the number of families for none of them. */
  readonly of: number;
  readonly prior: number;
  readonly made: Made;
  readonly same: number;
}

const NOTHING_KNOWN: Made = { sizes: {}, features: {} };

/**
 * Every account with its prior: each family, a part from elsewhere of which nothing is known, and a relative of
 * each family that is not in the catalogue.
 *
 * Equation: (1 - p0) g_f for a family, p0 (1 - r) for a stranger, p0 r g_f for a relative of f; g_f its weight
 * over the sum of weights, p0 and r from the model (p0 = 1, r = 0 with an empty catalogue).
 *
 * @param model [1] prior of none of these, share of relatives, chance that a size is the same
 * @param families the catalogue, weights above 0
 * @returns [1] accounts whose priors sum to 1
 * Validity: weights say how often a family comes in.
 * Source: judgement, no published source.
 */
export function accountsOf(model: IdentificationModel, families: readonly Family[]): Account[] {
  const none = families.length;
  const { prior, relative } = model.noneOfThese;
  if (none === 0) return [{ of: none, prior: 1, made: NOTHING_KNOWN, same: 1 }];
  const total = families.reduce((sum, family) => sum + family.weight, 0);
  return [
    ...families.map((made, of) => ({ of, prior: ((1 - prior) * made.weight) / total, made, same: 1 })),
    { of: none, prior: prior * (1 - relative.share), made: NOTHING_KNOWN, same: 1 },
    ...families.map((made) => ({
      of: none,
      prior: (prior * relative.share * made.weight) / total,
      made,
      same: relative.same,
    })),
  ];
}
