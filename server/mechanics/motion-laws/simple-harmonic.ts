import { antisymmetric } from './law.ts';

const { PI } = Math;

/**
 * Simple harmonic rise: the motion of a circle seen from its side.
 *
 * Equation: s = ½·(1 − cos πu) = sin²(πu/2); v = (π/2)·sin πu; a = (π²/2)·cos πu; j = −(π³/2)·sin πu
 *
 * Validity: the acceleration steps at both ends, where the jerk has no bound. With a flank of half a turn of the
 * cam it is an eccentric of half the lift.
 * Source: H. A. Rothbart (ed.), Cam Design Handbook (2004), basic curves (from memory; the derivatives follow by
 * calculus).
 */
export const simpleHarmonic = antisymmetric((u) => ({
  s: Math.sin((PI * u) / 2) ** 2,
  v: (PI / 2) * Math.sin(PI * u),
  // cos πu written so that it is zero at mid-flank, not a rounding either side of it.
  a: (PI ** 2 / 2) * Math.sin(PI * (0.5 - u)),
  j: (-(PI ** 3) / 2) * Math.sin(PI * u),
}));
