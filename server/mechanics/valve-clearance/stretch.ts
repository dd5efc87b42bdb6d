import { DEG } from '../kit/si.ts';
import type { LiftCurve } from '../lobe/lift-curve.ts';
import type { GapCurve } from './gap-curve.ts';

interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** An angle within this of a whole degree is that degree. */
const NEAR = 1e-9;

/**
 * The crank angles over which the gap is known and can be least: the whole time the valve is open, and top dead
 * centre too, where a closed valve comes nearest.
 */
export function knownStretch(lobe: LiftCurve): Stretch {
  return {
    from: lobe.closedBefore ? Math.min(lobe.from, 0) : lobe.from,
    to: lobe.closedAfter ? Math.max(lobe.to, 0) : lobe.to,
  };
}

/**
 * The whole crank degrees at which the curve is told: while the valve is open, one more at either end, on to top dead
 * centre where it is outside that, and no further than the gap is known. Where less than a degree is known, its ends.
 */
export function wholeDegrees(known: Stretch, curve: GapCurve): number[] {
  const [first, last] = [Math.ceil(known.from / DEG - NEAR), Math.floor(known.to / DEG + NEAR)];
  const all = Array.from({ length: Math.max(0, last - first + 1) }, (_, index) => (first + index) * DEG);
  const open = (angle: number | undefined): boolean => angle !== undefined && curve.valveLiftAt(angle) > 0;
  const told = all.flatMap((angle, index) => {
    const nearOpen = open(angle) || open(all[index - 1]) || open(all[index + 1]);
    return nearOpen || angle === 0 ? [index] : [];
  });
  const [start, end] = [told[0], told.at(-1)];
  return start === undefined || end === undefined ? [known.from, known.to] : all.slice(start, end + 1);
}
