import { coverageFactor } from './student.ts';

/** One input's part in a combined uncertainty. */
export interface Contribution {
  readonly source: string;
  /** Standard uncertainty of the input. */
  readonly u: number;
  /** Partial derivative of the result by the input. */
  readonly sensitivity: number;
  /** Left out: known so well that it is without limit. */
  readonly degreesOfFreedom?: number;
}

/** Two contributions, by index, whose errors go together. */
export interface Correlation {
  readonly first: number;
  readonly second: number;
  readonly coefficient: number;
}

export interface Combined {
  readonly standardUncertainty: number;
  /** Effective degrees of freedom as computed; left out where they are without limit. */
  readonly degreesOfFreedom?: number;
  /** Two-sided factor of Student's t at the degrees of freedom truncated downward. */
  readonly coverageFactor: number;
  /** Half-width of the interval. */
  readonly expanded: number;
}

function contributionAt(contributions: readonly Contribution[], index: number): Contribution {
  const found = contributions[index];
  if (found === undefined) throw new RangeError('a correlation names a contribution that is not there');
  return found;
}

/**
 * What shared errors add to a combined variance, or take from it where they cancel.
 *
 * Equation: 2 ΣΣ c_i c_j u_i u_j r_ij over the pairs named
 *
 * @param contributions [unit of the result] uncertainties with their sensitivities
 * @param correlations [1] coefficients of pairs, between −1 and 1
 * @returns the term [unit of the result squared]
 * @throws RangeError when a correlation names a contribution that is not there
 *
 * Source: JCGM 100:2008, equation 16.
 */
export function sharedVariance(
  contributions: readonly Contribution[],
  correlations: readonly Correlation[],
): number {
  return correlations.reduce((sum, { first, second, coefficient }) => {
    const a = contributionAt(contributions, first);
    const b = contributionAt(contributions, second);
    return sum + 2 * a.sensitivity * b.sensitivity * a.u * b.u * coefficient;
  }, 0);
}

/** Welch–Satterthwaite; Infinity where nothing limits it. */
function effectiveFreedom(contributions: readonly Contribution[], variance: number): number {
  if (variance === 0) return Number.POSITIVE_INFINITY;
  const spread = contributions.reduce((sum, { u, sensitivity, degreesOfFreedom }) => {
    if (degreesOfFreedom === undefined) return sum;
    return sum + ((u * sensitivity) ** 2 / variance) ** 2 / degreesOfFreedom;
  }, 0);
  return 1 / spread;
}

/** Truncated downward; a rounding in the last digits does not take one away. */
const wholeFreedom = (freedom: number): number => Math.max(1, Math.floor(freedom * (1 + 1e-12)));

/**
 * Combines standard uncertainties, correlated ones too, to an interval.
 *
 * Equation: u_c² = Σ c_i² u_i² + 2 ΣΣ c_i c_j u_i u_j r_ij; ν_eff = u_c⁴ / Σ (c_i u_i)⁴/ν_i;
 * k = t(⌊ν_eff⌋); U = k u_c
 *
 * @param contributions [unit of the result] uncertainties with their sensitivities
 * @param correlations [1] coefficients of pairs, between −1 and 1; left out, none
 * @param level [1] coverage of the interval; left out, .95
 * @returns standardUncertainty, expanded [unit of the result]; degreesOfFreedom, coverageFactor [1]
 * @throws RangeError when a correlation names a contribution that is not there
 *
 * Validity: a result nearly linear over the uncertainties; ν truncated downward, and taken as one below one.
 * Source: JCGM 100:2008, equations 13 and G.2b, section G.4.1.
 */
export function combine(
  contributions: readonly Contribution[],
  correlations: readonly Correlation[] = [],
  level = 0.95,
): Combined {
  const own = contributions.reduce((sum, { u, sensitivity }) => sum + (u * sensitivity) ** 2, 0);
  const variance = Math.max(0, own + sharedVariance(contributions, correlations));
  const standardUncertainty = Math.sqrt(variance);
  const freedom = effectiveFreedom(contributions, variance);
  const factor = coverageFactor(level, wholeFreedom(freedom));
  return {
    standardUncertainty,
    ...(Number.isFinite(freedom) ? { degreesOfFreedom: freedom } : {}),
    coverageFactor: factor,
    expanded: factor * standardUncertainty,
  };
}
