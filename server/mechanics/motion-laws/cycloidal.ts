import { antisymmetric } from './law.ts';
import { angleLessSine } from './sine-less.ts';

const TURN = 2 * Math.PI;

/**
 * Cycloidal rise: one full sine wave of acceleration.
 *
 * Equation: s = u − sin(2πu)/2π; v = 1 − cos 2πu = 2·sin² πu; a = 2π·sin 2πu; j = 4π²·cos 2πu
 *
 * Validity: finite jerk all over.
 * Source: R. L. Norton, Design of Machinery, chapter 8 (from memory; the derivatives follow by calculus).
 */
export const cycloidal = antisymmetric((u) => ({
  s: angleLessSine(TURN * u) / TURN,
  v: 2 * Math.sin(Math.PI * u) ** 2,
  // sin 2πu as sin π(1 − 2u): zero at mid-flank exactly.
  a: TURN * Math.sin(Math.PI * (u < 0.25 ? 2 * u : 1 - 2 * u)),
  j: TURN ** 2 * Math.cos(TURN * u),
}));
