import tCdf from '@stdlib/stats-base-dists-t-cdf';
import { NOISE } from './odd-valve.ts';

/** A valve is odd when its lift is further than this from the middle of its siblings: trade practice, no source. */
export const ODD_BEYOND = 0.008;
/** Student's t with so many degrees of freedom is the normal distribution. */
const MANY = 1e9;
/** Readings are written in thousandths: variance of the rounding. */
const ROUNDING = 0.001 ** 2 / 12;
/**
 * Variance of the median of seven normal values, in variances of one. Source: tables of order statistics of normal
 * samples (A. Sarhan, B. Greenberg, 1962), .2104, from memory; checked by drawing in odd-valve.test.ts.
 */
export const MEDIAN_OF_SEVEN = 0.2104;

/** Standard deviation of one lift less the median of its seven siblings. */
export const SPREAD = Math.sqrt((NOISE ** 2 + ROUNDING) * (1 + MEDIAN_OF_SEVEN));

/**
 * Chance that a valve which is off by so much is named. What is exactly on the limit is not past it, and lifts are whole
 * thousandths: the limit lies half a thousandth further out.
 */
export function chanceNamed(off: number): number {
  const limit = ODD_BEYOND + 0.0005;
  const beyond = (by: number) => tCdf((by - limit) / SPREAD, MANY);
  return beyond(off) + beyond(-off);
}
