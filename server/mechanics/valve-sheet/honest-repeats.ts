import { normalCdf, normalDensity } from '../explain-readings/normal.ts';
import { IN, MM } from '../kit/si.ts';

/** Divisions that dials have, and that readings between them are estimated to; the coarsest first. */
const DIVISIONS = [0.001 * IN, 0.01 * MM, 0.0005 * IN, 0.005 * MM, 0.0001 * IN, 0.001 * MM];
const FINEST = 0.0001 * IN;
/** What arithmetic leaves of a decimal, far under any division. */
const BITS = 1e-6;

/**
 * The division that readings were written to: the coarsest of which all of them are whole numbers.
 *
 * @param values [m] readings as they were written
 */
export function divisionOf(values: readonly number[]): number {
  const isWhole = (value: number, division: number) =>
    Math.abs(value / division - Math.round(value / division)) < BITS * (1 + Math.abs(value / division));
  return DIVISIONS.find((division) => values.every((value) => isWhole(value, division))) ?? FINEST;
}

/**
 * The chance that two honest readings of one thing are written alike to the last digit.
 *
 * Equation: E[max(0, 1 − |d|/g)] with d normal of standard deviation s = σ√2, which is
 * 2Φ(k) − 1 − (2/k)(φ(0) − φ(k)) with k = g/s
 *
 * @param division [m] g, what the readings are rounded to
 * @param scatter [m] σ, standard deviation of one reading
 *
 * Source: derived here: a reading falls anywhere in its division, so that two that lie d apart are rounded alike with
 * the chance 1 − d/g.
 */
export function alikeChance(division: number, scatter: number): number {
  const k = division / (scatter * Math.SQRT2);
  return 2 * normalCdf(k) - 1 - (2 / k) * (normalDensity(0, 1) - normalDensity(k, 1));
}

/**
 * At most the chance that one honest reading falls into the division where another fell: that of the division which
 * lies about the middle.
 *
 * Equation: 2Φ(g/2σ) − 1
 *
 * @param division [m] g
 * @param scatter [m] σ, from one valve to the next
 *
 * Source: normal distribution; no division holds more of it than the middle one.
 */
export const sameDivisionChance = (division: number, scatter: number): number =>
  2 * normalCdf(division / (2 * scatter)) - 1;

/** The chance of `least` or more of `count` independent events, each of chance `each`: binomial tail. */
export function chanceOfSoMany(count: number, least: number, each: number): number {
  let sum = 0;
  let ways = 1;
  for (let some = 0; some <= count; some += 1) {
    if (some > 0) ways = (ways * (count - some + 1)) / some;
    if (some >= least) sum += ways * each ** some * (1 - each) ** (count - some);
  }
  return Math.min(1, sum);
}
