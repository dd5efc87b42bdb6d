import { sampleOf } from './sample.ts';

/**
 * How far two lists of readings taken together go together: the coefficient of the readings and of their means.
 *
 * Equation: r = Σ(x − x̄)(y − ȳ) / √(Σ(x − x̄)² Σ(y − ȳ)²)
 *
 * @param first [any] readings
 * @param second [any] readings taken with the first, as many
 * @returns r [1], between −1 and 1; zero where one of them does not vary
 * @throws RangeError when the lists are not as long as each other, or have fewer than two readings
 *
 * Source: JCGM 100:2008, equations 14 and 17, section 5.2.3.
 */
export function correlationOf(first: readonly number[], second: readonly number[]): number {
  if (first.length !== second.length || first.length < 2) {
    throw new RangeError('a correlation needs two lists of two or more readings, as long as each other');
  }
  const a = sampleOf(first);
  const b = sampleOf(second);
  if (!a.s || !b.s) return 0;
  const together = first.reduce(
    (sum, value, index) => sum + (value - a.mean) * ((second[index] ?? b.mean) - b.mean),
    0,
  );
  const r = together / ((a.n - 1) * a.s * b.s);
  return Math.max(-1, Math.min(1, r));
}
