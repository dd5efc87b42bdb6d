/** Mean and scatter of repeated readings. */
export interface Sample {
  readonly n: number;
  readonly mean: number;
  /** Experimental standard deviation, n − 1; left out for a single reading. */
  readonly s?: number;
}

/**
 * Mean and experimental standard deviation of repeated readings, in two passes.
 *
 * Equation: x̄ = x₁ + Σ(x − x₁)/n, corrected by Σ(x − x̄)/n; s² = (Σ(x − x̄)² − (Σ(x − x̄))²/n)/(n − 1)
 *
 * @param values [any] the readings, at least one
 * @returns mean and s [as the readings], n [1]
 * @throws RangeError without a reading
 *
 * Validity: the one-pass form Σx² − n x̄² loses all digits on readings far from zero; this does not. Readings
 * that are all alike have exactly their own value as mean and exactly no scatter.
 * Source: JCGM 100:2008, 4.2.1 and 4.2.2; T. Chan, G. Golub, R. LeVeque, 1983 (corrected two-pass; from memory).
 */
export function sampleOf(values: readonly number[]): Sample {
  const [first] = values;
  if (first === undefined) throw new RangeError('a mean needs a reading');
  const n = values.length;
  const rough = first + values.reduce((sum, value) => sum + (value - first), 0) / n;
  const mean = rough + values.reduce((sum, value) => sum + (value - rough), 0) / n;
  if (n === 1) return { n, mean };
  let squares = 0;
  let rest = 0;
  for (const value of values) {
    squares += (value - mean) ** 2;
    rest += value - mean;
  }
  return { n, mean, s: Math.sqrt(Math.max(0, squares - rest ** 2 / n) / (n - 1)) };
}
