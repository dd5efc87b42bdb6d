import type { Sample } from './sample.ts';

/** A scatter with how well it is known. */
export interface Scatter {
  readonly s: number;
  readonly degreesOfFreedom: number;
}

/**
 * Degrees of freedom of a scatter that is known by experience to about a quarter of itself: ½ · .25⁻² = 8.
 * JCGM 100:2008, equation G.3; the quarter is judgement, no published source.
 */
export const KNOWN_TO_A_QUARTER = 8;

/**
 * Scatter of single readings, out of what such readings usually show and what these show.
 *
 * Equation: s² = (ν₀ s₀² + (n − 1) s₁²)/(ν₀ + n − 1), with ν₀ + n − 1 degrees of freedom
 *
 * @param sample [any] the readings: how many, and their own s₁
 * @param usual [as the readings] s₀, with ν₀
 * @returns the pooled scatter of one reading [as the readings] and its degrees of freedom
 *
 * Validity: both are scatters of the same kind of reading. One reading shows none, and has the usual one alone.
 * Source: JCGM 100:2008, 4.2.4 (a pooled estimate where a measurement is well known); weights by degrees of freedom, common statistics.
 */
export function pooledScatter({ n, s }: Sample, usual: Scatter): Scatter {
  const degreesOfFreedom = usual.degreesOfFreedom + n - 1;
  const squares = usual.degreesOfFreedom * usual.s ** 2 + (n - 1) * (s ?? 0) ** 2;
  return { s: Math.sqrt(squares / degreesOfFreedom), degreesOfFreedom };
}
