import type { Lack } from '../common/lack.ts';
import type { ValvePlace } from '../evidence.ts';

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
  /** Ids of entries. */
  readonly restsOn: readonly string[];
}

/** A ratio that was read on one valve and is not to be calculated with yet. */
export interface WithheldRatio extends ValvePlace {
  readonly armId?: string;
  readonly lacks: readonly string[];
}
