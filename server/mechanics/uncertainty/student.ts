import quantile from '@stdlib/stats-base-dists-t-quantile';

import { knownFactors } from './known-factors.ts';

/** From here on Student's t is the normal distribution to all digits; the library breaks down far beyond it. */
const NORMAL = 1e15;

/** Two-sided factor of the normal distribution for 95 %. */
export const Z95 = 1.959963984540054;

const KNOWN_AT_MOST = 10_000;

/**
 * What Student's t leaves above it with the given chance.
 *
 * Equation: P(T > t) = tail
 *
 * @param tail [1] chance above t, between zero and one half
 * @param degreesOfFreedom [1] above zero; Infinity for the normal distribution
 * @returns t [1], not negative
 *
 * Validity: taken from the lower tail, so that small chances keep their digits.
 * Source: JCGM 100:2008, G.3.
 */
export function studentAbove(tail: number, degreesOfFreedom: number): number {
  return Math.abs(quantile(tail, Math.min(degreesOfFreedom, NORMAL)));
}

/**
 * Two-sided factor of Student's t, the coverage factor of an expanded uncertainty.
 *
 * Equation: t with P(|T| ≤ t) = level
 *
 * @param level [1] coverage, between zero and one
 * @param degreesOfFreedom [1] above zero; Infinity for the normal distribution
 * @returns t [1]
 *
 * Source: JCGM 100:2008, table G.2.
 */
export function coverageFactor(level: number, degreesOfFreedom: number): number {
  const key = `${level} ${degreesOfFreedom}`;
  const found = knownFactors.get(key);
  if (found !== undefined) return found;
  const factor = studentAbove((1 - level) / 2, degreesOfFreedom);
  if (knownFactors.size >= KNOWN_AT_MOST) knownFactors.clear();
  knownFactors.set(key, factor);
  return factor;
}
