/** Heights along the valvetrain with the engine cold, in SI. */
interface TrainHeights {
  /** Camshaft's datum up to the deck. */
  readonly block: number;
  /** Deck up to the rocker's pivot. */
  readonly head: number;
  /** Deck up to the valve seat. */
  readonly seat: number;
  /** Valve seat up to the valve's tip. */
  readonly valve: number;
  /** Camshaft's datum up to the pushrod's cup at the rocker: lifter and pushrod. */
  readonly pushrod: number;
}

/** Mean linear expansions [1/K]. */
interface TrainExpansions {
  readonly block: number;
  readonly head: number;
  readonly pushrod: number;
  readonly valve: number;
}

/**
 * How much the lash at the valve tip grows when the whole engine warms up.
 *
 * Equation: Δlash = ΔT·[r·α_b·H_b + α_h·((1 + r)·H_h − h_s) − r·α_p·L_p − α_v·L_v], from
 * lash = (1 + r)·pivot − r·cup − tip, pivot = H_b + H_h, cup = L_p, tip = H_b + h_s + L_v
 *
 * @param ratio [1] rocker ratio r, above zero
 * @param heights [m] block H_b, head H_h, seat h_s, valve L_v, pushrod L_p
 * @param expansions [1/K] α of block, head, pushrod and valve
 * @param temperatureRise [K] the same for every part
 * @returns [m] positive where the gap grows
 *
 * Validity: every part at one temperature; a rigid rocker whose own growth does not matter, arms square to the valve.
 * Source: derived here.
 */
export function lashGrowth(
  ratio: number,
  heights: TrainHeights,
  expansions: TrainExpansions,
  temperatureRise: number,
): number {
  const lifting =
    ratio * expansions.block * heights.block + expansions.head * ((1 + ratio) * heights.head - heights.seat);
  const closing = ratio * expansions.pushrod * heights.pushrod + expansions.valve * heights.valve;
  return temperatureRise * (lifting - closing);
}
