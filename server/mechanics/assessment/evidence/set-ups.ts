import type { LiftTool, LOBE_SOURCES } from '../../../../shared/schemas/words.ts';
import type { EvidenceEntry, LashState, LifterState, Spring, ValvePlace } from './common.ts';

/* Arms, set-ups and the passes that were read in them. */

export interface ArmEvidence {
  readonly id: string;
  readonly name: string;
  readonly ratioStamp: string;
  readonly otherNumber: string;
  readonly boxLabel: string;
  /** What a box says that was found to be of another arm; `boxLabel` is empty then. */
  readonly boxOfAnother?: string;
}

/** An arm on a valve at some time, with all valves that it was ever put on: a reading may be entered long after it. */
export interface SatThen extends ValvePlace {
  readonly armId: string;
  readonly everOn: readonly ValvePlace[];
}

/** How a set of passes is read. */
export interface SetUpEvidence extends ValvePlace {
  readonly id: string;
  readonly number: number;
  readonly armId?: string;
  /** The arm is taken from where it was placed later: none was on record there when it was set up. */
  readonly putOnLater?: string;
  /** It was read with an arm that nobody named, and that came off for the one on record. */
  readonly comesOff?: true;
  readonly spring: Spring;
  readonly lifter: LifterState;
  readonly lash: LashState;
  readonly lashSetting?: number;
  readonly restsOn: 'not-said' | 'retainer-flat' | 'retainer-edge' | 'valve-tip' | 'spring-seat';
  readonly alignment: 'not-said' | 'parallel' | 'leaning';
  readonly graduation: number;
  readonly perTurn: number;
  readonly travel?: number;
  readonly pushedIn?: number;
  readonly errorLimit: number;
  /** What the valve lift is read with; left out, a dial indicator. */
  readonly tool?: LiftTool;
  readonly lobeSource: keyof typeof LOBE_SOURCES;
  readonly lobeErrorLimit: number;
  /** Where each arm sat by the record when it was set up. */
  readonly satThen?: readonly SatThen[];
  /** What the rockers were sold as when it was read, where that is another ratio now and the arms were changed since. */
  readonly soldAsThen?: number;
}

/** What may be learnt of a set-up after its readings, or put right. */
export type SetUpFact = Exclude<
  keyof SetUpEvidence,
  'id' | 'number' | 'satThen' | 'soldAsThen' | 'putOnLater' | 'comesOff'
>;

/** Something that was said of a set-up later: it holds for the readings already there. Only what was said is in it. */
export interface SetUpStatementEvidence {
  readonly id: string;
  readonly line: number;
  readonly setUpId: string;
  readonly says: Partial<Pick<SetUpEvidence, SetUpFact>>;
  /** Facts that are not known after all. */
  readonly notKnown: readonly ('armId' | 'lashSetting' | 'travel' | 'pushedIn')[];
}

export type PassKind =
  | 'valve-lift'
  | 'lobe-lift'
  | 'valve-lift-at'
  | 'stated-valve-lift'
  | 'stated-lobe-lift';

export interface PassEvidence extends EvidenceEntry {
  readonly setUpId: string;
  readonly kind: PassKind;
  /** Number of the pass within its set-up and kind: the order in which it was read on the engine. */
  readonly pass: number;
  readonly value: number;
  readonly zeroReturn?: number;
  readonly atLobeLift?: number;
  /** The small hand was read, and which way the hand ran. */
  readonly counted: boolean;
  readonly readAs: string;
  /** Found wrong by an answer, and taken again since. */
  readonly readAgain?: true;
  /** The day it was entered, `2026-03-14`. */
  readonly day?: string;
}
