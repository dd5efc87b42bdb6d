import { defined } from '../../../shared/defined.ts';
import { impossible } from '../../../shared/problems/faults.ts';
import { correlationsOf, type Fit, leastSquares } from '../statistics/least-squares.ts';
import type { Pair, RunningPass } from './through-lift-fields.ts';

interface Estimate {
  readonly value: number;
  readonly standardUncertainty: number;
}

interface ThroughLift {
  readonly ratio: Estimate;
  readonly lashLeftIn: Estimate;
  /** Only with both passes, and where the spring's load can be told from lash. */
  readonly compliance?: Estimate;
  readonly correlations: readonly (readonly number[])[];
  /** Valve lift less fit, the light pass first. */
  readonly residuals: readonly number[];
}

function fitOf(stations: readonly Pair[], loads: readonly number[]): Fit {
  const lifts = stations.map(({ lobeLift }) => lobeLift);
  const lash = stations.map(() => -1);
  const valve = stations.map(({ valveLift }) => valveLift);
  const given = loads.some((load) => load > 0)
    ? leastSquares([lifts, lash, loads.map((load) => -load)], valve)
    : undefined;
  const found = given ?? leastSquares([lifts, lash], valve);
  return found ?? impossible(['pairs'], 'stand so near together that no ratio can be told from them');
}

/**
 * Ratio, lash left in and compliance from stations through the lift.
 *
 * Equation: V = R·L − g − C·F by least squares, F = 0 on the light spring, springSeatLoad + springRate·V under the
 * running one; standard deviation of each station u·√(1 + R²)
 *
 * @param light [m] lobe and valve lifts on the light spring, rising
 * @param running [m, N, N/m] a second pass under the running spring; left out, none
 * @param readingUncertainty [m] standard uncertainty of each lift, not negative
 * @returns ratio R [1], lashLeftIn g [m], compliance C [m/N] (with both passes), each with its standard uncertainty;
 * correlations [1] in that order; residuals [m]
 * @throws impossible-input when the stations can't be told apart
 *
 * Validity: one ratio through the lift, errors alike at every station; a few stations can't tell a ratio that
 * changes from one that does not.
 * Source: JCGM 100:2008, H.3 (the straight line); derived here for the third term.
 */
export function fitThroughLift(
  light: readonly Pair[],
  running: RunningPass | undefined,
  readingUncertainty: number,
): ThroughLift {
  const loads = running?.pairs.map(
    ({ valveLift }) => running.springSeatLoad + running.springRate * valveLift,
  );
  const stations = [...light, ...(running?.pairs ?? [])];
  const fit = fitOf(stations, [...light.map(() => 0), ...(loads ?? [])]);
  const [ratio = 0] = fit.estimates;
  const deviation = readingUncertainty * Math.sqrt(1 + ratio ** 2);
  const [r, g, c] = fit.estimates.map((value, index): Estimate => {
    const variance = fit.covariance[index]?.[index] ?? 0;
    return { value, standardUncertainty: deviation * Math.sqrt(variance) };
  });
  if (r === undefined || g === undefined) throw new RangeError('a line needs two estimates');
  return {
    ratio: r,
    lashLeftIn: g,
    ...defined({ compliance: c }),
    correlations: correlationsOf(fit.covariance),
    residuals: fit.residuals,
  };
}

/** Ratio of each step from one station to the next. */
export const segmentRatiosOf = (stations: readonly Pair[]): number[] =>
  stations.slice(1).map((next, index) => {
    const before = stations[index] ?? next;
    return (next.valveLift - before.valveLift) / (next.lobeLift - before.lobeLift);
  });
