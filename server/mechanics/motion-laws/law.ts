/** Where a follower is on its way from zero to full lift, per unit of lift and of flank. */
export interface MotionState {
  /** Displacement: 0 on the seat, 1 at full lift. */
  readonly s: number;
  /** ds/du. */
  readonly v: number;
  /** d²s/du²: positive while the flank speeds the follower up, negative toward the nose. */
  readonly a: number;
  /** d³s/du³ between the steps of the acceleration; at a step itself it has no bound. */
  readonly j: number;
}

/** A rise from dwell to dwell over one flank. */
export interface MotionLaw {
  /**
   * The motion at `u`, the share of the flank gone through: 0 on the seat, 1 at full lift. Before and after lies
   * the dwell, where nothing moves. At a step of the acceleration the value after the step is given, at the two
   * ends the one inside the flank.
   */
  at(u: number): MotionState;
}

const SEAT: MotionState = { s: 0, v: 0, a: 0, j: 0 };
const NOSE: MotionState = { s: 1, v: 0, a: 0, j: 0 };

/**
 * A law from its first half: all of these laws slow the follower down as they sped it up.
 *
 * Equation: s(u) = 1 − s(1 − u); v(u) = v(1 − u); a(u) = −a(1 − u); j(u) = j(1 − u), for u ≥ ½
 *
 * @param firstHalf the motion for 0 ≤ u ≤ ½
 * @returns the law over the whole flank, and the dwell on either side
 *
 * Validity: laws that are antisymmetric about mid-flank.
 * Source: derived here.
 */
export function antisymmetric(firstHalf: (u: number) => MotionState): MotionLaw {
  return {
    at(u) {
      if (u < 0) return SEAT;
      if (u > 1) return NOSE;
      if (u < 0.5) return firstHalf(u);
      const { s, v, a, j } = firstHalf(1 - u);
      return { s: 1 - s, v, a: 0 - a, j };
    },
  };
}
