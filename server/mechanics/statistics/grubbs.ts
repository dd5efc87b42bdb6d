import { sampleOf } from '../uncertainty/sample.ts';
import { studentAbove } from '../uncertainty/student.ts';
import { type OutlierScores, outBy, type Tail } from './outlier-fields.ts';

/**
 * Critical value of Grubbs' test.
 *
 * Equation: G = (n − 1)/√n · √(t²/(n − 2 + t²)), t above with chance α/n on n − 2 degrees, α/(2n) two-sided
 *
 * @param n [1] values, at least three
 * @param alpha [1] chance of flagging a good value, between zero and one
 * @param tail [1] `two`, `upper` or `lower`
 * @returns G [1]
 *
 * Source: F. Grubbs, 1969; NIST/SEMATECH e-Handbook, 1.3.5.17.1.
 */
export function grubbsCritical(n: number, alpha: number, tail: Tail): number {
  const t = studentAbove(alpha / (tail === 'two' ? 2 * n : n), n - 2);
  return (n - 1) / Math.sqrt(n * (1 + (n - 2) / t ** 2));
}

/**
 * Grubbs' test: whether the value farthest out belongs to the rest.
 *
 * Equation: G_i = (x_i − x̄)/s; the farthest out is flagged when its G is over the critical value
 *
 * @param values [any] at least three
 * @param tail [1] side to test
 * @param alpha [1] chance of flagging a good value, between zero and one
 * @returns scores [1] signed, flagged [1] (the farthest out alone, and its equals), critical [1]
 *
 * Validity: near normal values, one outlier; two can hide each other.
 * Source: F. Grubbs, 1969; NIST/SEMATECH e-Handbook, 1.3.5.17.1.
 */
export function grubbsScores(values: readonly number[], tail: Tail, alpha: number): OutlierScores {
  const { mean, s = 0 } = sampleOf(values);
  const scores = values.map((value) => (s === 0 ? 0 : (value - mean) / s));
  const critical = grubbsCritical(values.length, alpha, tail);
  const farthest = scores.reduce(
    (most, score) => Math.max(most, outBy(score, tail)),
    Number.NEGATIVE_INFINITY,
  );
  const isFarthest = (index: number) => outBy(scores[index] ?? 0, tail) === farthest;
  const flagged = farthest > critical ? [...scores.keys()].filter(isFarthest) : [];
  return { scores, flagged, critical };
}
