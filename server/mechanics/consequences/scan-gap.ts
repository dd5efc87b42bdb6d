import { leastOf, type ScanLeast } from '../gap-scan/least.ts';
import { stationsOf } from '../gap-scan/stations.ts';
import { allowance } from '../kit/allowances.ts';
import { type Calculated, together } from './gap-calculation.ts';
import type { RatioFigure, ScanBefore } from './types.ts';

/** Lift of the lobe at each of these crank angles. */
export type LobeAt = (crankAngles: readonly number[]) => readonly number[];

export interface ScanMoved {
  readonly before: ScanLeast;
  readonly after: ScanLeast;
}

/** What the valve is lifted: nothing until the lash that was in it is taken up. */
const lifted = (lobe: number, ratio: number, lash: number): number => Math.max(0, lobe * ratio - lash);

/**
 * A scan that was read with one ratio as it would be with another: its least is looked for again.
 *
 * Equation: g₂(θ) = g₁(θ) − (h₂(θ) − h₁(θ)), h = max(0, l(θ)·r − lash), l the lobe's lift there
 *
 * Validity: the same cam timing; at each crank angle that was read, and only as far as the scan went. Estimated, to be
 * measured.
 * Source: common practice, no published source: a ratio change costs lobe lift at that angle times the change.
 */
export function scanMoved(scan: ScanBefore, from: number, to: number, lobeAt: LobeAt): ScanMoved {
  const { stations, error, lash } = scan;
  const lobes = lobeAt(stations.map(({ crankAngle }) => crankAngle));
  const moved = stations.map(({ crankAngle, gap }, index) => {
    const lobe = lobes[index] ?? 0;
    return { crankAngle, gap: gap - (lifted(lobe, to, lash) - lifted(lobe, from, lash)) };
  });
  return { before: leastOf(stationsOf(stations), error), after: leastOf(stationsOf(moved), error) };
}

/** What the ratio takes from the least gap of a scan, with both ratios' intervals and the cam's own place. */
export function changeByScan(
  scan: ScanBefore,
  before: RatioFigure,
  after: RatioFigure,
  lobeAt: LobeAt,
): Calculated {
  const found = scanMoved(scan, before.value, after.value, lobeAt);
  const where = found.after.crankAngle;
  const off = allowance('cam-timing');
  const [there = 0, early = 0, late = 0] = lobeAt([where, where - off, where + off]);
  const ofTiming =
    Math.max(Math.abs(early - there), Math.abs(late - there)) * Math.abs(after.value - before.value);
  return {
    value: found.after.least - found.before.least,
    halfWidth: together(there * before.halfWidth, there * after.halfWidth, ofTiming),
  };
}
