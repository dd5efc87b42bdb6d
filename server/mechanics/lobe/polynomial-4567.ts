/**
 * Rise of the 4-5-6-7 polynomial, a flank that starts and ends with no velocity, acceleration or jerk.
 *
 * Equation: s = 35u⁴ − 84u⁵ + 70u⁶ − 20u⁷
 *
 * @param u [1] share of the flank from seat to nose, 0 to 1
 * @returns [1] share of the lift
 *
 * Validity: 0 ≤ u ≤ 1.
 * Source: R. L. Norton, Cam Design and Manufacturing Handbook (2002), chapter 2; coefficients recomputed from the
 * end conditions.
 */
export function rise4567(u: number): number {
  // From the nearer end, where the terms are small: near the nose the sum would lose its last figures.
  return u > 0.5 ? 1 - fromEnd(1 - u) : fromEnd(u);
}

const fromEnd = (u: number): number => u ** 4 * (35 + u * (-84 + u * (70 - 20 * u)));

/** Slope of the rise over its share of the flank: 140·u³·(1 − u)³. */
export const slope4567 = (u: number): number => 140 * (u * (1 - u)) ** 3;

/**
 * The share of the flank at which the 4-5-6-7 polynomial has a share of its lift.
 *
 * Equation: rise4567(u) = s, by halving
 *
 * @param share [1] of the lift, 0 to 1
 * @returns [1] 0 to 1, to the last figure of a double
 *
 * Validity: 0 ≤ share ≤ 1; the rise is monotone.
 * Source: derived here.
 */
export function inverse4567(share: number): number {
  if (share > 0.5) return 1 - inverseBelow(1 - share);
  return inverseBelow(share);
}

function inverseBelow(share: number): number {
  let [low, high] = [0, 0.5];
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return middle;
    if (fromEnd(middle) < share) low = middle;
    else high = middle;
  }
}
