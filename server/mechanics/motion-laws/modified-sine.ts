import { antisymmetric, type MotionState } from './law.ts';
import { EIGHTH, quarterSine } from './quarter-sine.ts';

const { PI } = Math;
const SLOW = (4 * PI) / 3;
const PEAK = (4 * PI ** 2) / (PI + 4);

const atEighth = quarterSine(PEAK, EIGHTH);

function slowPart(u: number): MotionState {
  const w = u - EIGHTH;
  return {
    s: atEighth.s + atEighth.v * w + (2 * PEAK * Math.sin((SLOW * w) / 2) ** 2) / SLOW ** 2,
    v: atEighth.v + (PEAK * Math.sin(SLOW * w)) / SLOW,
    // cos(4πw/3) as the sine of what is left to mid-flank: zero there exactly.
    a: PEAK * Math.sin(SLOW * (0.5 - u)),
    j: -PEAK * SLOW * Math.sin(SLOW * w),
  };
}

/**
 * Modified sine: a quick quarter sine at each end, and one slow half wave of acceleration between.
 *
 * Equation: with C = 4π²/(π + 4): a = C·sin 4πu for u ≤ ⅛; a = C·cos (4π/3)(u − ⅛) for ⅛ to ½; v and s by integrating
 * from rest, so that v(½) = 4π/(π + 4) and s(½) = ½; j by differentiating
 *
 * Validity: finite jerk, which steps at each joint.
 * Source: derived here from the shape of the acceleration; R. L. Norton, Design of Machinery, table 8-3 (from memory)
 * gives the peak velocity as 1.760 and the peak acceleration as 5.528.
 */
export const modifiedSine = antisymmetric((u) => (u < EIGHTH ? quarterSine(PEAK, u) : slowPart(u)));
