import { antisymmetric } from './law.ts';

/**
 * 3-4-5 polynomial: velocity and acceleration begin and end at zero.
 *
 * Equation: s = 10u³ − 15u⁴ + 6u⁵; v = 30u²(1 − u)²; a = 60u(1 − u)(1 − 2u); j = 60(1 − 6u + 6u²)
 *
 * Validity: finite jerk, which steps at both ends.
 * Source: R. L. Norton, Design of Machinery, chapter 8 (from memory; the derivatives follow by calculus).
 */
export const polynomial345 = antisymmetric((u) => ({
  s: u ** 3 * (10 + u * (6 * u - 15)),
  v: 30 * (u * (1 - u)) ** 2,
  a: 60 * u * (1 - u) * (1 - 2 * u),
  j: 60 * (1 - 6 * u * (1 - u)),
}));

/**
 * 4-5-6-7 polynomial: velocity, acceleration and jerk begin and end at zero.
 *
 * Equation: s = 35u⁴ − 84u⁵ + 70u⁶ − 20u⁷; v = 140u³(1 − u)³; a = 420u²(1 − u)²(1 − 2u); j = 840u(1 − u)(1 − 5u + 5u²)
 *
 * Validity: continuous jerk all over.
 * Source: R. L. Norton, Design of Machinery, chapter 8 (from memory; the derivatives follow by calculus).
 */
export const polynomial4567 = antisymmetric((u) => ({
  s: u ** 4 * (35 + u * (u * (70 - 20 * u) - 84)),
  v: 140 * (u * (1 - u)) ** 3,
  a: 420 * (u * (1 - u)) ** 2 * (1 - 2 * u),
  j: 840 * u * (1 - u) * (1 - 5 * u * (1 - u)),
}));
