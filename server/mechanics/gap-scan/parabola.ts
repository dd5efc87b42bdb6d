/** The parabola through three readings whose middle one is no higher than the others. */
interface Dip {
  /** How far its least lies below the middle reading, not negative [as the readings]. */
  readonly below: number;
  /** Where that is, from the middle reading on [as the steps]. */
  readonly shift: number;
  /** What an error in one reading alone does to the least: before, middle, after [1]. */
  readonly weights: readonly [number, number, number];
  /** The parabola rises by this times the square of the way from its least [readings per step²]. */
  readonly bend: number;
}

const FLAT: Dip = { below: 0, shift: 0, weights: [0, 1, 0], bend: 0 };

/**
 * The least of the parabola through three readings at any steps, of which the middle one is no higher than the others.
 *
 * Equation: with w = h₁/(h₁ + h₂), v = 1 − w, a and b how much higher the outer readings are:
 * τ = (a·v² − b·w²)/(2·(a·v + b·w)), below = τ²·(a·v + b·w)/(w·v), shift = τ·(h₁ + h₂); the weights are Lagrange's
 * polynomials at τ, since at a least the place itself makes no difference
 *
 * @param rises [any] a and b, not negative
 * @param steps [any] h₁ and h₂, above zero
 * @returns below [as the readings], shift [as the steps], weights [1] that add up to one, bend [readings per step²]
 *
 * Validity: three readings all alike have no least of their own: the middle one stands.
 * Source: interpolation by Lagrange, NIST Digital Library of Mathematical Functions, 3.3(i); the least derived here.
 */
export function dipOf(
  rises: readonly [before: number, after: number],
  steps: readonly [before: number, after: number],
): Dip {
  const [a, b] = rises;
  const whole = steps[0] + steps[1];
  const [w, v] = [steps[0] / whole, steps[1] / whole];
  const bend = a * v + b * w;
  if (bend === 0) return FLAT;
  const at = (a * v * v - b * w * w) / (2 * bend);
  return {
    below: (at * at * bend) / (w * v),
    shift: at * whole,
    bend: bend / (w * v * whole * whole),
    weights: [(at * (at - v)) / w, ((at + w) * (v - at)) / (w * v), (at * (at + w)) / v],
  };
}
