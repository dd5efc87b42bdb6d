/** One pass of the indicator, in inches. */
export interface Pass {
  readonly id: string;
  readonly lift: number;
  /** Where the hand stood back on the base circle; left out when nobody looked. */
  readonly zeroReturn?: number;
}

/** Everything the questions are asked from: lengths in inches, ratios bare. What is left out is not known. */
export interface QuestionInput {
  readonly valvePasses: readonly Pass[];
  readonly lobePasses: readonly Pass[];
  /** Lifts that somebody states or used in a sum of their own. */
  readonly statedValveLift?: number;
  readonly statedLobeLift?: number;
  readonly spring: 'not-said' | 'light' | 'running';
  readonly lifter: 'not-said' | 'solid' | 'locked' | 'hydraulic';
  readonly lash: 'not-said' | 'zero' | 'set';
  readonly lashSetting?: number;
  readonly restsOn: 'not-said' | 'retainer-flat' | 'retainer-edge' | 'valve-tip' | 'spring-seat';
  readonly alignment: 'not-said' | 'parallel' | 'leaning';
  readonly perTurn: number;
  readonly graduation: number;
  readonly travel?: number;
  readonly pushedIn?: number;
  readonly lobeSource: 'card' | 'indicator' | 'caliper';
  /** From the card in force when the readings were taken: this lobe, and the other lobe of the cylinder. */
  readonly cardLobeLift?: number;
  readonly otherCardLobeLift?: number;
  readonly cardValveLift?: number;
  readonly cardLash?: number;
  readonly cardRatio?: number;
  /** The ratio the rockers are sold as. */
  readonly nominalRatio?: number;
  /** Ratios of the same valve on the other spring, if read. */
  readonly lightRatio?: number;
  readonly runningRatio?: number;
  readonly lightLash?: 'not-said' | 'zero' | 'set';
  readonly runningLash?: 'not-said' | 'zero' | 'set';
  /** Peaks read on other valves of this engine. */
  readonly otherPeaks?: readonly number[];
}

/** A doubt put to a person: never a verdict, and it changes no entry. */
export interface Question {
  /** Stable word for the doubt, e.g. `turn-miscounted`. */
  readonly code: string;
  /** `strong` when the figures fit it within the tight tolerance, else `weak`. */
  readonly weight: 'strong' | 'weak';
  /** The question, short enough to read aloud. */
  readonly ask: string;
  /** How much it would change, with its unit, e.g. `.100 less would make it 1.55`. */
  readonly size: string;
  /** The test that settles it, as an instruction. */
  readonly test: string;
  /** Ids of the passes it rests on. */
  readonly restsOn: readonly string[];
}
