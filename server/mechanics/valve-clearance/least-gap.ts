import { DEG } from '../kit/si.ts';
import type { GapCurve } from './gap-curve.ts';

/** Fine enough that no lobe hides a dip between two looks; the dip itself is then found exactly. */
const STEP = 0.1 * DEG;

interface LeastGap {
  readonly crankAngle: number;
  readonly gap: number;
}

/** A look within this of a step from an end is that end: else the end's own angle would not be the one that is told. */
const AT_END = 1e-6;

/** The angles looked at: each tenth of a degree, top dead centre among them, and both ends. */
function stations(from: number, to: number): number[] {
  const [first, last] = [Math.floor(from / STEP + AT_END) + 1, Math.ceil(to / STEP - AT_END) - 1];
  const inner = Array.from({ length: Math.max(0, last - first + 1) }, (_, index) => (first + index) * STEP);
  return [from, ...inner, ...(to > from ? [to] : [])];
}

/** Where the slope turns from falling to rising, by halving to the last figure. */
function turning(slopeAt: (angle: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return middle;
    if (slopeAt(middle) < 0) low = middle;
    else high = middle;
  }
}

/**
 * The least gap over a stretch of crank angle.
 *
 * Equation: looked for at each tenth of a crank degree, then dc/dθ = 0 by halving about every dip that can be the least
 *
 * @param curve [1] gap [m] and slope [m/rad]
 * @param from [rad] start of the stretch
 * @param to [rad] its end
 * @returns gap [m] and its crank angle [rad]; of equal gaps the first
 *
 * Validity: a gap with a continuous slope but where the valve leaves or meets its seat, which is never a dip.
 * Source: derived here.
 */
export function leastGap(curve: GapCurve, from: number, to: number): LeastGap {
  const angles = stations(from, to);
  const gaps = angles.map((angle) => curve.gapAt(angle));
  const lowest = gaps.reduce((least, gap) => Math.min(least, gap), Number.POSITIVE_INFINITY);
  const gapBeside = (index: number): number => gaps[index] ?? Number.POSITIVE_INFINITY;
  let best: LeastGap = { crankAngle: angles[gaps.indexOf(lowest)] ?? from, gap: lowest };
  for (const [index, here] of gaps.entries()) {
    const [before, after] = [gapBeside(index - 1), gapBeside(index + 1)];
    // Between two looks a gap falls no further below them than it fell to them.
    if (here > before || here > after || here - lowest > Math.max(before, after) - here) continue;
    const [low, high] = [angles[index - 1] ?? from, angles[index + 1] ?? to];
    if (curve.slopeAt(low) >= 0 || curve.slopeAt(high) <= 0) continue;
    const crankAngle = turning(curve.slopeAt, low, high);
    const gap = curve.gapAt(crankAngle);
    if (gap < best.gap) best = { crankAngle, gap };
  }
  return best;
}
