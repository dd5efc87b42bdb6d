import type { LashGrowth } from '../../lash/types.ts';
import type { Bounds, LashEvidence, LimitEvidence, ValvePlace } from '../evidence.ts';

/** The log of one valve. */
export interface LashValveDetail extends ValvePlace {
  /** Oldest day first; those that stand. */
  readonly lines: readonly LashEvidence[];
  /** The lash as it is: the newest line, found or set. */
  readonly newest: Bounds;
  readonly growth?: LashGrowth;
}

export interface LashDetail {
  /** Growth that counts. */
  readonly limit: LimitEvidence;
  readonly valves: readonly LashValveDetail[];
  /** What the log raises. */
  readonly questionIds: readonly string[];
}
