import { antisymmetric } from './law.ts';

/**
 * Parabolic rise: constant acceleration to mid-flank, then the same as deceleration.
 *
 * Equation: s = 2u²; v = 4u; a = 4; j = 0, for u < ½
 *
 * Validity: the acceleration steps at both ends and at mid-flank, where the jerk has no bound.
 * Source: H. A. Rothbart (ed.), Cam Design Handbook (2004), p. 35.
 */
export const parabolic = antisymmetric((u) => ({ s: 2 * u * u, v: 4 * u, a: 4, j: 0 }));
