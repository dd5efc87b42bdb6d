/* What the card prints of a lobe, and what is taken once on the engine. */

export interface LobeCard {
  readonly lobeLift?: number;
  readonly valveLift?: number;
  readonly centreline?: number;
  readonly lash?: number;
  readonly durations?: readonly { readonly atLift: number; readonly duration: number }[];
}

/** Gaps that are taken once on the engine and that others are calculated from. */
export interface TakenOnEngine {
  readonly closedGapAtTdc?: number;
  readonly pistonFloor?: 'pocket' | 'flat';
  /** Rise of the lifter where valve and piston were found closest. */
  readonly lobeLiftAtClosest?: number;
  readonly pushrodToHead?: number;
}
