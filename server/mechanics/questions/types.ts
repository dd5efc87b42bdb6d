/** One pass of the indicator, in inches. */
export interface Pass {
  readonly id: string;
  /** Its number within its set-up and kind, where it has one: it is named by it. */
  readonly number?: number | undefined;
  readonly lift: number;
  /** Where the hand stood back on the base circle; left out when nobody looked. */
  readonly zeroReturn?: number | undefined;
}

/** Everything the questions are asked from: lengths in inches, ratios bare. What is left out is not known. */
export interface QuestionInput {
  readonly valvePasses: readonly Pass[];
  readonly lobePasses: readonly Pass[];
  /** Lifts that somebody states or used in a sum of their own. */
  readonly statedValveLift?: number | undefined;
  readonly statedLobeLift?: number | undefined;
  readonly spring: 'not-said' | 'light' | 'running';
  readonly lifter: 'not-said' | 'solid' | 'locked' | 'hydraulic';
  readonly lash: 'not-said' | 'zero' | 'set';
  readonly lashSetting?: number | undefined;
  readonly restsOn: 'not-said' | 'retainer-flat' | 'retainer-edge' | 'valve-tip' | 'spring-seat';
  readonly alignment: 'not-said' | 'parallel' | 'leaning';
  /** How far it leans, radians, where somebody looked. */
  readonly lean?: number | undefined;
  readonly perTurn: number;
  /** The figures were read and typed in millimetres: digits are theirs. */
  readonly inMillimetres?: boolean | undefined;
  readonly graduation: number;
  readonly travel?: number | undefined;
  readonly pushedIn?: number | undefined;
  /** Lifts read part of the way up. */
  readonly stations?: readonly { readonly atLobeLift: number; readonly lift: number }[] | undefined;
  /** What the engine itself has. */
  readonly engineLifter?: 'solid' | 'hydraulic' | undefined;
  readonly lobeSource: 'card' | 'indicator' | 'caliper';
  /** From the card in force when the readings were taken: this lobe, and the other lobe of the cylinder. */
  readonly cardLobeLift?: number | undefined;
  readonly otherCardLobeLift?: number | undefined;
  /** One of the two is no figure of a card: it is the middle of the lobes of its side. */
  readonly lobesBySiblings?: boolean | undefined;
  readonly cardValveLift?: number | undefined;
  readonly cardLash?: number | undefined;
  /** What the log has of this valve, of days up to that of the readings. */
  readonly otherLashes?: readonly number[] | undefined;
  readonly cardRatio?: number | undefined;
  /** What the arm is held to be: the ratio stamped on it, else what the rockers are sold as. */
  readonly nominalRatio?: number | undefined;
  /** Which of the two that is; left out, sold as. */
  readonly nominalFrom?: 'mark' | 'sold-as' | undefined;
  /** What it is held to be beside that: stamped as one thing and sold as another. */
  readonly alsoHeldAs?: readonly number[] | undefined;
  /** Ratios that arms of such valve gear are made in: what a lift is set against where nobody says what the arm is. */
  readonly madeIn?: readonly number[] | undefined;
  /** Ratios of the same valve on the other spring, if read. */
  readonly lightRatio?: number | undefined;
  readonly runningRatio?: number | undefined;
  readonly lightLash?: 'not-said' | 'zero' | 'set' | undefined;
  readonly runningLash?: 'not-said' | 'zero' | 'set' | undefined;
  /** Peaks read on other valves of this engine. */
  readonly otherPeaks?: readonly number[] | undefined;
}

/** Stable words for the doubts, each with its answers. */
export type QuestionCode =
  | 'caliper-on-lobe'
  | 'card-ratio'
  | 'copied-reading'
  | 'decimal-slip'
  | 'digits-swapped'
  | 'drifting-passes'
  | 'falling-passes'
  | 'gross-lift-as-lobe'
  | 'hand-read-backwards'
  | 'lash-formula'
  | 'lash-left-in'
  | 'lash-setting-not-said'
  | 'lash-not-said'
  | 'lifter-of-engine'
  | 'lifter-sunk'
  | 'lifter-not-said'
  | 'lifts-exchanged'
  | 'alignment-not-said'
  | 'out-of-travel'
  | 'pass-of-other-lift'
  | 'plunger-tilted'
  | 'rests-on-not-said'
  | 'short-at-top'
  | 'spring-mixed'
  | 'spring-not-said'
  | 'springs-at-different-lash'
  | 'springs-swapped'
  | 'stated-not-read'
  | 'turn-miscounted'
  | 'unit-mixed'
  | 'valve-swapped'
  | 'zero-not-returned';

/** A doubt put to a person: never a verdict, and it changes no entry. */
export interface Question {
  readonly code: QuestionCode;
  /** `strong` when the figures fit it within the tight tolerance, else `weak`. */
  readonly weight: 'strong' | 'weak';
  /** The question, short enough to read aloud. */
  readonly ask: string;
  /** The same without what changes with later passes: it is known by these words. Left out, by those of the question. */
  readonly knownBy?: string;
  /** Of which lift it is asked, where both may be asked of; left out, of the valve’s. */
  readonly of?: 'lobe';
  /** How much it would change, with its unit, e.g. `.100 less would make it 1.55`. */
  readonly size: string;
  /** The test that settles it, as an instruction. */
  readonly test: string;
  /** The same for whoever stands at the engine, where the desk only asks. */
  readonly testAtBench?: string;
  /** It is asked before anything more is read: it costs nothing, and may give the passes that would be read next. */
  readonly beforeReading?: true;
  /** Ids of the passes it rests on. */
  readonly restsOn: readonly string[];
}
