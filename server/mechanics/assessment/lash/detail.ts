import type { AdjusterKind } from '../../lash/adjuster-words.ts';
import type { LashGrowth } from '../../lash/types.ts';
import type { SettingPosition } from '../../setting-order/setting-order.ts';
import type { AssessedQuestion } from '../assessment.ts';
import type { FoundTwice } from '../common/found-twice.ts';
import type { Lack } from '../common/lack.ts';
import type { Bounds, LashEvidence, LimitEvidence, ValvePlace } from '../evidence.ts';

/** The log of one valve. */
export interface LashValveDetail extends ValvePlace {
  /** Oldest day first; those that stand. */
  readonly lines: readonly LashEvidence[];
  /** The lash as it is: the newest line that counts, found or set. */
  readonly newest: Bounds;
  /** Which of two lines of one day came first. */
  readonly order: readonly AssessedQuestion[];
  /** It was found as two gaps, with nothing set between. */
  readonly twice?: FoundTwice;
  /** A gap was found at a hydraulic lifter. */
  readonly hydraulic?: AssessedQuestion;
  readonly growth?: LashGrowth;
  /** The line at which it had grown again after a reset, whose stop nobody has lifted since. */
  readonly grewAgain?: LashEvidence;
}

/** Which valve is set when; angles in degrees of the crank, by tens, after the first of the firing order fired. */
export interface SettingDetail {
  readonly said: readonly string[];
  readonly lacks: readonly string[];
  readonly rows: readonly {
    readonly cylinder: number;
    /** Where it stands in the engine: `bank 2, 3rd from the front`. */
    readonly stands?: string;
    readonly setIntakeAt: number;
    readonly setExhaustAt: number;
  }[];
  readonly twoPositions?: readonly [SettingPosition, SettingPosition];
}

/** The shim of one valve: what is in, what is wanted, and the one that goes in. */
export interface ShimRow extends ValvePlace {
  readonly fitted?: number;
  readonly found: Bounds;
  readonly wanted?: number;
  /** Thickness that gives the wanted lash. */
  readonly shim?: number;
  readonly choice?: {
    readonly shim: number;
    /** The lash that it gives. */
    readonly lash: number;
    /** What the feelers leave of that, where the gap was found between two. */
    readonly between?: { readonly low: number; readonly high: number };
    readonly from: 'own' | 'stock' | 'valve';
    readonly fromValve?: ValvePlace;
  };
  /** Its gap may stay as it is. */
  readonly right?: true;
  /** The valve that its own shim goes to. */
  readonly givesTo?: ValvePlace;
  /** No shim that is there brings the lash near enough to what is wanted: one of this thickness is to be had first. */
  readonly toHave?: number;
  /** Where one is to be had: the next thinner and the next thicker in stock that leave a gap, with the lash each gives. */
  readonly beside?: readonly { readonly shim: number; readonly lash: number }[];
  readonly lacks: readonly Lack[];
  readonly sentence: string;
  /** The line of the log that it rests on. */
  readonly entryId: string;
}

export interface ShimsDetail {
  /** A lash this near to what is wanted is left. */
  readonly within: number;
  readonly rows: readonly ShimRow[];
}

export interface LashDetail {
  readonly shims: ShimsDetail;
  /** What sets the gap: the log is told in its words. */
  readonly adjuster: AdjusterKind;
  /** Growth that counts. */
  readonly limit: LimitEvidence;
  readonly valves: readonly LashValveDetail[];
  /** What the log raises. */
  readonly questionIds: readonly string[];
  readonly setting: SettingDetail;
}
