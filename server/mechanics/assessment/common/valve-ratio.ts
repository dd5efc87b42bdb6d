import type { ValvePlace } from '../evidence.ts';
import type { Lack } from './lack.ts';

/** A ratio that was read on one valve, as the ratio part of the assessment has it. SI; the ratio is bare. */
export interface ValveRatio extends ValvePlace {
  readonly setUpId: string;
  readonly armId?: string;
  /** Of an arm that nobody named, and that came off for the one on record. */
  readonly comesOff?: true;
  /** What the arms that are off since were sold as, where it was read with one of them. */
  readonly soldAsThen?: number;
  readonly value: number;
  /** Its 95 % interval. */
  readonly low: number;
  readonly high: number;
  readonly spring: 'light' | 'running';
  readonly basis: 'measured' | 'calculated';
  /**
   * What of the lash is in the lift it was taken from: `none` read at zero lash, or there is none; `put-back` read with
   * a known setting, which was added; `left-in` read with the lash set and the setting not known; `not-said` nobody
   * said which.
   */
  readonly lashIn: 'none' | 'put-back' | 'left-in' | 'not-said';
  /** The lobe lift it was taken over. */
  readonly lobeLift: number;
  /** What must be known or done before it is believed; no word stands while there is any. */
  readonly lacks: readonly Lack[];
  /** Nobody knows yet whether this one holds or another reading of the same arm: it is the highest of them. */
  readonly open?: true;
  /** Ids of entries. */
  readonly restsOn: readonly string[];
  /** It is of the per-valve sheet, not of a set-up. */
  readonly ofSheet?: true;
  /** It is of so many valves that the sheet read alike: its interval holds that of each. */
  readonly many?: number;
}

/** What a reading that is not to be calculated with yet gives as it stands. */
export interface AsRead {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** Lash, a loaded train or a lifter that sinks may be in it: the arm has this ratio or more. */
  readonly orMore: boolean;
}

/** A ratio that was read on one valve and is not to be calculated with yet. */
export interface WithheldRatio extends ValvePlace {
  readonly armId?: string;
  readonly comesOff?: true;
  readonly soldAsThen?: number;
  readonly lacks: readonly Lack[];
  readonly asRead?: AsRead;
  /** It is of the per-valve sheet: the valve is told by itself only where that denies what is held of it. */
  readonly ofSheet?: true;
}
