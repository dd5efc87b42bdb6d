import { halfWidthOf, leastOf, type ScanLeast } from '../../gap-scan/least.ts';
import { type Station, stationsOf } from '../../gap-scan/stations.ts';
import { allowance, toolAllowance } from '../../kit/allowances.ts';
import { DEG } from '../../kit/si.ts';
import type { GapBounds } from '../common/gap-said.ts';
import { once } from '../common/once.ts';
import type { ScanEvidence, ScanPoint } from '../evidence.ts';
import { withoutJumps } from './jumps.ts';

/** A scan put in order: its figures, what lies between gauges, the curve about its least, and what the least is. */
export interface Scanned {
  readonly scan: ScanEvidence;
  /** Figures, one to a crank angle; empty where there are fewer than three. */
  readonly stations: readonly Station[];
  /** Those of them that the curve is of: none that stands far over its neighbours. */
  readonly ofCurve: readonly Station[];
  /** Readings that lie between two gauges, or over one. */
  readonly between: readonly ScanPoint[];
  readonly fit?: ScanLeast;
  readonly least: GapBounds;
  /** Where the least is; left out where only gauges were read. */
  readonly crankAngle?: number;
}

/** By crank angle, then by what was read there: in which order they were entered says nothing. */
export const inOrder = ({ points }: ScanEvidence): ScanPoint[] => {
  const at = ({ gap: { value, low, high } }: ScanPoint) => value ?? low ?? high ?? 0;
  return points.toSorted(
    (a, b) => a.crankAngle - b.crankAngle || at(a) - at(b) || (a.gap.high ?? 0) - (b.gap.high ?? 0),
  );
};

const sameAngle = (one: number, other: number): boolean => Math.abs(one - other) <= 1e-6 * DEG;

function stationsIn(scan: ScanEvidence): Station[] {
  const figures = inOrder(scan).flatMap(({ crankAngle, gap: { value } }) =>
    value === undefined ? [] : [{ crankAngle, gap: value }],
  );
  const angles = figures.filter(
    ({ crankAngle }, index) => figures.findIndex((each) => sameAngle(each.crankAngle, crankAngle)) === index,
  );
  return angles.length < 3 ? [] : stationsOf(figures);
}

/** How far one reading may be off; a tool errs alike in all of them, so that no fit makes it better. */
export const errorOf = ({ tool }: ScanEvidence): number => toolAllowance(tool);

/** A least at an end, or between steps that are wide, is only the least so far: it may be less, and by nobody knows how much. */
function ofFit(fit: ScanLeast, error: number): GapBounds {
  if (fit.edge !== 'none') return { value: fit.least, high: fit.least + error };
  const half = halfWidthOf(fit, error, (spread) => Math.max(1, spread));
  const high = fit.least + half;
  return isWide(fit) ? { value: fit.least, high } : { value: fit.least, low: fit.least - half, high };
}

/** Without a curve the least is no more than the least of what was read; what no gauge was put to may be less. */
function ofReadings({ points }: ScanEvidence, error: number): GapBounds {
  const ends = points.map(({ gap: { value, low, high } }) =>
    value === undefined ? { low, high } : { low: value - error, high: value + error },
  );
  const highs = ends.flatMap(({ high }) => high ?? []);
  const lows = ends.flatMap(({ low }) => low ?? []);
  return {
    ...(lows.length === ends.length && lows.length > 0 ? { low: Math.min(...lows) } : {}),
    ...(highs.length === 0 ? {} : { high: Math.min(...highs) }),
  };
}

/** A gauge that did not go where the curve says there is more: the least is no more than that gauge. */
function withGauges(found: GapBounds, between: readonly ScanPoint[]): GapBounds {
  const tight = between
    .flatMap(({ gap: { low, high } }) => (high === undefined ? [] : [{ low, high }]))
    .toSorted((a, b) => a.high - b.high)[0];
  if (tight === undefined || found.value === undefined || tight.high >= found.value) return found;
  const lows = [found.low, tight.low].flatMap((low) => low ?? []);
  return { ...(lows.length === 0 ? {} : { low: Math.min(...lows) }), high: tight.high };
}

/** Lash left in makes every gap larger by it than at none: the low end is what is left with it taken up. */
function withoutLash(found: GapBounds, { lash, lashSetting }: ScanEvidence): GapBounds {
  if (lash !== 'set' || lashSetting === undefined || found.low === undefined) return found;
  return { ...found, low: found.low - lashSetting };
}

export const scanned = once((scan: ScanEvidence): Scanned => {
  const stations = stationsIn(scan);
  const between = inOrder(scan).filter(({ gap: { value } }) => value === undefined);
  const error = errorOf(scan);
  const ofCurve = withoutJumps(stations);
  const fit = ofCurve.length === 0 ? undefined : leastOf(ofCurve, error);
  const found = fit === undefined ? ofReadings(scan, error) : ofFit(fit, error);
  return {
    scan,
    stations,
    ofCurve,
    between,
    ...(fit === undefined ? {} : { fit, crankAngle: fit.crankAngle }),
    least: withoutLash(withGauges(found, between), scan),
  };
});

/** The least is told as what was read so far: further on, or between the steps, it may be less. */
export const isSoFar = ({ fit }: Scanned): boolean =>
  fit !== undefined && (fit.edge !== 'none' || isWide(fit));

/** Neighbours farther apart than a parabola can bridge. */
export function isWide(fit: ScanLeast): boolean {
  if (fit.edge !== 'none') return false;
  const { before, reading, after } = fit;
  const widest = Math.max(reading.crankAngle - before.crankAngle, after.crankAngle - reading.crankAngle);
  return widest > allowance('scan-step') * (1 + 1e-9);
}
