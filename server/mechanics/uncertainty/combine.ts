import quantile from '@stdlib/stats-base-dists-t-quantile';

/** One contribution to a combined uncertainty. */
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
  /** Two-sided 95 % factor of Student's t at the degrees of freedom truncated downward. */
  readonly coverageFactor: number;
  /** Half-width of the 95 % interval. */
  readonly expanded: number;
}

/** From here on Student's t is the normal distribution to all digits; the library breaks down far beyond it. */
const NORMAL = 1e15;

/** Factors found before: finding one costs more than all the rest of a combination. */
const known = new Map<number, number>();
const KNOWN_AT_MOST = 10_000;

/** The 95 % factor at whole degrees of freedom. */
function factor95(degreesOfFreedom: number): number {
  const found = known.get(degreesOfFreedom);
  if (found !== undefined) return found;
  const factor = studentFactor(0.95, degreesOfFreedom);
  if (known.size >= KNOWN_AT_MOST) known.clear();
  known.set(degreesOfFreedom, factor);
  return factor;
}

/**
 * Two-sided quantile of Student's t.
 *
 * Equation: t with P(|T| ≤ t) = level
 *
 * @param level [1] coverage, between nought and one
 * @param degreesOfFreedom [1] above nought; Infinity for the normal distribution
 * @returns t [1]
 *
 * Source: JCGM 100:2008, table G.2.
 */
export function studentFactor(level: number, degreesOfFreedom: number): number {
  return quantile(1 - (1 - level) / 2, Math.min(degreesOfFreedom, NORMAL));
}

/** Covariance part of the combined variance: 2 ΣΣ c_i c_j u_i u_j r_ij. */
export function covarianceTerm(
  contributions: readonly Contribution[],
  correlations: readonly Correlation[],
): number {
  return correlations.reduce((sum, { first, second, coefficient }) => {
    const a = contributions[first];
    const b = contributions[second];
    if (a === undefined || b === undefined)
      throw new RangeError('a correlation names a contribution that is not there');
    return sum + 2 * a.sensitivity * b.sensitivity * a.u * b.u * coefficient;
  }, 0);
}

/**
 * Combines standard uncertainties, correlated ones too, to a 95 % interval.
 *
 * Equation: u_c² = Σ c_i² u_i² + 2 ΣΣ c_i c_j u_i u_j r_ij; ν_eff = u_c⁴ / Σ (c_i u_i)⁴/ν_i;
 * k = t_95(⌊ν_eff⌋); U = k u_c
 *
 * @param contributions [unit of the result] uncertainties with their sensitivities
 * @param correlations [1] coefficients of pairs, between −1 and 1
 * @returns standardUncertainty, expanded [unit of the result]; degreesOfFreedom, coverageFactor [1]
 *
 * Validity: a result nearly linear over the uncertainties; truncation of ν as G.4.1.
 * Source: JCGM 100:2008, equations 13 and G.2b, section G.4.1.
 */
export function combine(
  contributions: readonly Contribution[],
  correlations: readonly Correlation[] = [],
): Combined {
  const independent = contributions.reduce((sum, { u, sensitivity }) => sum + (u * sensitivity) ** 2, 0);
  const standardUncertainty = Math.sqrt(
    Math.max(0, independent + covarianceTerm(contributions, correlations)),
  );
  const spread = contributions.reduce(
    (sum, { u, sensitivity, degreesOfFreedom }) =>
      degreesOfFreedom === undefined ? sum : sum + (u * sensitivity) ** 4 / degreesOfFreedom,
    0,
  );
  const effective = spread === 0 ? Number.POSITIVE_INFINITY : standardUncertainty ** 4 / spread;
  const coverageFactor = factor95(Math.max(1, Math.floor(effective)));
  return {
    standardUncertainty,
    ...(Number.isFinite(effective) ? { degreesOfFreedom: effective } : {}),
    coverageFactor,
    expanded: coverageFactor * standardUncertainty,
  };
}

/** Standard uncertainty of a quantity known only to lie within ± halfWidth (JCGM 100:2008, 4.3.7). */
export const rectangular = (halfWidth: number): number => halfWidth / Math.sqrt(3);
