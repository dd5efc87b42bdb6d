import { type Combined, type Contribution, combine, sharedVariance } from '../uncertainty/combine.ts';
import { KNOWN_TO_A_QUARTER, pooledScatter, type Scatter } from '../uncertainty/pooled.ts';
import { type Sample, sampleOf } from '../uncertainty/sample.ts';
import { rectangular } from '../uncertainty/type-b.ts';
import { byIndicator, type OneLift, type ReadLift } from './lift-fields.ts';

/** How far the error limits of one and the same indicator go together (judgement, no published source). */
export const SAME_INDICATOR = 0.5;

/** One line of the budget: |c|·u and its part of the combined variance. */
interface BudgetLine {
  readonly source: string;
  readonly contribution: number;
  readonly share: number;
}

interface RatioBudget {
  readonly ratio: number;
  readonly lobeLift: number;
  readonly combined: Combined;
  readonly budget: readonly BudgetLine[];
}

const sampleOfLift = (lift: ReadLift | OneLift): Sample =>
  'readings' in lift ? sampleOf(lift.readings) : { n: 1, mean: lift.value };

/** One pass shows no scatter of its own, and has the usual one where that is said; without it none is counted. */
function scatterOf(lift: ReadLift | OneLift, sample: Sample): Scatter | undefined {
  if ('readings' in lift && lift.usualScatter !== undefined)
    return pooledScatter(sample, { s: lift.usualScatter, degreesOfFreedom: KNOWN_TO_A_QUARTER });
  return sample.s === undefined ? undefined : { s: sample.s, degreesOfFreedom: sample.n - 1 };
}

/** What makes one lift uncertain; the error limit stands last. */
function contributionsOf(
  name: string,
  lift: ReadLift | OneLift,
  sample: Sample,
  sensitivity: number,
): Contribution[] {
  const found: Contribution[] = [];
  const scatter = scatterOf(lift, sample);
  if (scatter !== undefined) {
    const { s, degreesOfFreedom } = scatter;
    found.push({
      source: `${name}, repeatability`,
      u: s / Math.sqrt(sample.n),
      sensitivity,
      degreesOfFreedom,
    });
  }
  if ('graduation' in lift) {
    found.push({ source: `${name}, graduation`, u: rectangular(lift.graduation / 2), sensitivity });
  }
  found.push({ source: `${name}, error limit`, u: rectangular(lift.errorLimit), sensitivity });
  return found;
}

function linesOf(contributions: readonly Contribution[], shared: number | undefined, variance: number) {
  const part = (squared: number) => (variance === 0 ? 0 : squared / variance);
  const lines = contributions.map(({ source, u, sensitivity }): BudgetLine => {
    const contribution = Math.abs(sensitivity) * u;
    return { source, contribution, share: part(contribution ** 2) };
  });
  if (shared === undefined) return lines;
  const source = 'one indicator for both, errors that cancel';
  return [...lines, { source, contribution: Math.sqrt(Math.abs(shared)), share: part(shared) }];
}

/**
 * Ratio of two lifts with its uncertainty and where that comes from.
 *
 * Equation: R = V/L; c_V = 1/L, c_L = −R/L; u_R² = Σ(c_i u_i)² + 2 c_V c_L u_V u_L r; each lift's u from
 * s/√n (s pooled with the usual scatter where that is given), graduation/(2√3) and errorLimit/√3
 *
 * @param valve [m] passes at the valve with graduation and error limit
 * @param lobe [m] passes at the lifter likewise, or one value with its error limit
 * @param sameIndicator [1] whether one indicator read both: r = .5 between the two error limits
 * @returns ratio [1], lobeLift [m] (the mean), combined [1], budget [1] with shares that add up to one; the
 * shared errors have a line of their own with a negative share
 *
 * Validity: errors small against the lifts.
 * Source: JCGM 100:2008, 4.2, 4.2.4, 4.3.7, 5.2.2; correlation by judgement.
 */
export function ratioBudget(valve: ReadLift, lobe: ReadLift | OneLift, sameIndicator: boolean): RatioBudget {
  const v = sampleOfLift(valve);
  const l = sampleOfLift(lobe);
  const ratio = v.mean / l.mean;
  const ofValve = contributionsOf('valve lift', valve, v, 1 / l.mean);
  const contributions = [...ofValve, ...contributionsOf('lobe lift', lobe, l, -ratio / l.mean)];
  const limits = { first: ofValve.length - 1, second: contributions.length - 1 };
  const correlations = sameIndicator && byIndicator(lobe) ? [{ ...limits, coefficient: SAME_INDICATOR }] : [];
  const combined = combine(contributions, correlations);
  const shared = correlations.length === 0 ? undefined : sharedVariance(contributions, correlations);
  const budget = linesOf(contributions, shared, combined.standardUncertainty ** 2);
  return { ratio, lobeLift: l.mean, combined, budget };
}
