import { antisymmetric, type MotionState } from './law.ts';
import { EIGHTH, quarterSine } from './quarter-sine.ts';

const { PI } = Math;
const FAST = 4 * PI;
const PEAK = (8 * PI) / (PI + 2);

const atEighth = quarterSine(PEAK, EIGHTH);

function constantPart(u: number): MotionState {
  const w = u - EIGHTH;
  return {
    s: atEighth.s + atEighth.v * w + (PEAK * w * w) / 2,
    v: atEighth.v + PEAK * w,
    a: PEAK,
    j: 0,
  };
}

const atThreeEighths = constantPart(3 * EIGHTH);

function fallingPart(u: number): MotionState {
  const w = u - 3 * EIGHTH;
  return {
    s: atThreeEighths.s + atThreeEighths.v * w + (2 * PEAK * Math.sin((FAST * w) / 2) ** 2) / FAST ** 2,
    v: atThreeEighths.v + (PEAK * Math.sin(FAST * w)) / FAST,
    // cos 4πw as the sine of what is left to mid-flank: zero there exactly.
    a: PEAK * Math.sin(FAST * (0.5 - u)),
    j: -PEAK * FAST * Math.sin(FAST * w),
  };
}

/**
 * Modified trapezoid: constant acceleration whose corners are rounded by quarter sine waves.
 *
 * Equation: with C = 8π/(π + 2): a = C·sin 4πu for u ≤ ⅛; a = C for ⅛ to ⅜; a = C·cos 4π(u − ⅜) for ⅜ to ½; v and s by
 * integrating from rest, so that v(½) = 2 and s(½) = ½; j by differentiating
 *
 * Validity: finite jerk, which steps at each joint.
 * Source: derived here from the shape of the acceleration; R. L. Norton, Design of Machinery, table 8-3 (from memory)
 * gives the peak acceleration as 4.888.
 */
export const modifiedTrapezoid = antisymmetric((u) => {
  if (u < EIGHTH) return quarterSine(PEAK, u);
  return u < 3 * EIGHTH ? constantPart(u) : fallingPart(u);
});
