/*
 * Computations that were kept with the build, and that say what is set, ordered or fitted: their figures in SI. What
 * else was kept stays figures alone.
 */

/** The thread of an adjuster, as it goes into a sum. */
export interface ThreadEvidence {
  /** `7/16-20` */
  readonly thread: string;
  readonly pitch: number;
  /** The size before the pitch: `7/16`; left out where the pitch alone was said. */
  readonly size?: string | undefined;
  readonly mount: 'stud-nut' | 'cup-screw' | 'valve-end-screw';
  readonly ratio: number;
  readonly zeroFoundBy?: 'up-and-down' | 'spin' | 'feeler';
}

/** What turns past zero lash press the plunger of a hydraulic lifter. */
export interface PreloadEvidence extends ThreadEvidence {
  readonly of: 'preload';
  /** Turns past zero lash. */
  readonly turns: number;
  readonly preload: number;
  readonly inBand: 'within' | 'under' | 'over';
  readonly from: number;
  readonly to: number;
  /** The band was asked for; else it is the usual one. */
  readonly wanted: boolean;
  /** Whole travel of the plunger, where it was said. */
  readonly travel?: number;
  /** It was not said: that is the most that is usual, and these turns go past it. */
  readonly travelUnsaid?: true;
  /** The build says solid lifters: no plunger gives way, and past zero lash the valve is held open. */
  readonly solid?: true;
}

/** What turns of an adjuster do, or the turns that a preload or a lash takes; tightening positive. */
export interface TurnsEvidence extends ThreadEvidence {
  readonly of: 'turns';
  readonly turns: number;
  readonly lifter: 'hydraulic' | 'solid';
  /** The turns that a wanted preload needs: worked out, and not counted on the engine. */
  readonly byPreload?: true;
  readonly preload?: number;
  readonly lashChange?: number;
  readonly lashFound?: number;
  readonly lashWanted?: number;
}

/** The pushrod to order, by a checking pushrod, and the nearest one in stock. */
export interface PushrodEvidence {
  readonly of: 'pushrod';
  readonly length: number;
  readonly told: 'as-read' | 'overall' | 'effective';
  /** Preload that was added, and whether a lash was taken off. */
  readonly added?: number;
  readonly lashOff?: true;
  /** That lash, at the valve with the ratio it was divided by, or at the pushrod. */
  readonly lash?: number;
  readonly ratio?: number;
  readonly less?: number;
  readonly nearest?: { readonly length: number; readonly difference: number };
}

/** How far a stand is to be raised, lowered where negative, and the nearest shim. */
export interface StandEvidence {
  readonly of: 'stand';
  readonly netLift: number;
  readonly pivotToTip: number;
  readonly shim: number;
  readonly nearest?: { readonly shim: number; readonly difference: number };
}

/** The gap that goes with a hot one on the cold engine, by the metals; a first figure. */
export interface HeatEvidence {
  readonly of: 'heat';
  readonly ratio: number;
  readonly hot: number;
  readonly cold: number;
  readonly found?: { readonly cold: number; readonly hot: number };
}

/** A ratio from the arms of a follower, with its 95 % interval. */
interface RatioOfArms {
  readonly ratio: number;
  readonly low: number;
  readonly high: number;
}

/** What the arms of a follower under the cam come to: what to expect, and no reading. */
export interface FollowerEvidence {
  readonly of: 'follower';
  readonly shut: RatioOfArms;
  readonly open?: RatioOfArms;
}

export type SetEvidence =
  | PreloadEvidence
  | TurnsEvidence
  | PushrodEvidence
  | StandEvidence
  | HeatEvidence
  | FollowerEvidence;
