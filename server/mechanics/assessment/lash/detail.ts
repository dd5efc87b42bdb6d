import type { LashGrowth } from '../../lash/types.ts';
import type { SettingPosition } from '../../setting-order/setting-order.ts';
import type { Bounds, LashEvidence, LimitEvidence, ValvePlace } from '../evidence.ts';

/** The log of one valve. */
export interface LashValveDetail extends ValvePlace {
  /** Oldest day first; those that stand. */
  readonly lines: readonly LashEvidence[];
  /** The lash as it is: the newest line, found or set. */
  readonly newest: Bounds;
  readonly growth?: LashGrowth;
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

export interface LashDetail {
  /** Growth that counts. */
  readonly limit: LimitEvidence;
  readonly valves: readonly LashValveDetail[];
  /** What the log raises. */
  readonly questionIds: readonly string[];
  readonly setting: SettingDetail;
}
