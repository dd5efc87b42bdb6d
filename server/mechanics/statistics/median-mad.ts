import { medianOf } from './median.ts';
import { type OutlierScores, outBy, type Tail } from './outlier-fields.ts';

/** Past this a value is called an outlier (Iglewicz and Hoaglin, 1993). */
const CRITICAL = 3.5;
/** Quartile of the normal distribution as the method prints it. */
const QUARTILE = 0.6745;
/** √(π/2) as the method prints it: mean absolute deviation to standard deviation. */
const MEAN_DEVIATION = 1.253314;

interface MedianMadScores extends OutlierScores {
  /** What the scatter was taken from; `none` where all values are alike. */
  readonly scatter: 'median' | 'mean' | 'none';
}

/**
 * Scores by the median and the median absolute deviation, which one wild value can't move.
 *
 * Equation: M_i = .6745 (x_i − x̃)/MAD; where MAD is zero, M_i = (x_i − x̃)/(1.253314 · mean|x − x̃|)
 *
 * @param values [any] at least one
 * @param tail [1] side to flag on
 * @returns scores [1] signed, flagged [1] past 3.5, critical [1], scatter [1]
 *
 * Validity: the scatter of the good values near normal; all alike, every score is zero.
 * Source: B. Iglewicz, D. Hoaglin, 1993, as in the NIST/SEMATECH e-Handbook, 1.3.5.17; the fallback for MAD
 * zero is common practice, no published source seen.
 */
export function medianMadScores(values: readonly number[], tail: Tail): MedianMadScores {
  const middle = medianOf(values);
  const away = values.map((value) => Math.abs(value - middle));
  const mad = medianOf(away);
  const mean = away.reduce((sum, each) => sum + each, 0) / values.length;
  const scale = mad > 0 ? mad / QUARTILE : MEAN_DEVIATION * mean;
  const scores = values.map((value) => (scale === 0 ? 0 : (value - middle) / scale));
  const flagged = [...scores.keys()].filter((index) => outBy(scores[index] ?? 0, tail) > CRITICAL);
  const scatter = mad > 0 ? 'median' : scale > 0 ? 'mean' : 'none';
  return { scores, flagged, critical: CRITICAL, scatter };
}
