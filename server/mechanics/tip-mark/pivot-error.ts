import { IN } from '../kit/si.ts';

/** Finer than this nobody shims a stand or cuts a pushrod. */
const FINEST = 0.0001 * IN;

/** Across the stem, of a roller whose pivot is so far off the height that half the lift gives it. */
export function sweepOff(arm: number, lift: number, off: number): number {
  const reach = (height: number) => Math.sqrt(Math.max(0, arm ** 2 - height ** 2));
  const [open, closed] = [Math.abs(off) - lift / 2, Math.abs(off) + lift / 2];
  // While the arm passes square the furthest it reaches is its whole length.
  return (open <= 0 ? arm : reach(open)) - reach(closed);
}

/**
 * How far the pivot may be off its height, from the width of a mark: the most that it can be, since an ink mark holds the
 * contact line's own width too. Which way it is off the width can't say: too high and too low sweep alike.
 *
 * Equation: the e at which sweep(e) = width; sweep = R − √(R² − (|e| + h/2)²) while |e| ≤ h/2, else
 * √(R² − (|e| − h/2)²) − √(R² − (|e| + h/2)²)
 *
 * @param arm [m] pivot to the roller's centre R
 * @param lift [m] net lift h
 * @param width [m] of the mark
 * @returns [m] not negative; undefined where no height sweeps as much
 *
 * Validity: pivot standing still, flat stem end square to the valve.
 * Source: derived here, the inverse of roller-sweep.
 */
export function pivotErrorOf(arm: number, lift: number, width: number): number | undefined {
  const furthest = arm - lift / 2;
  if (furthest <= 0 || sweepOff(arm, lift, furthest) < width) return undefined;
  if (sweepOff(arm, lift, 0) >= width) return 0;
  let [low, high] = [0, furthest];
  while (high - low > FINEST / 10) {
    const middle = (low + high) / 2;
    if (sweepOff(arm, lift, middle) < width) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
