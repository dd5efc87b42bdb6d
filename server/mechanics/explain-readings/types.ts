import type { AssumptionChanges } from './assumptions.ts';

/** What can have gone wrong, or be true of the arm, beside "nothing". */
export const CAUSES = [
  'turn-too-many',
  'turn-too-few',
  'hand-read-backwards',
  'lash-left-in',
  'plunger-tilted',
  'zero-moved',
  'wrong-card-row',
  'wrong-valve',
  'valve-lift-as-lobe',
  'card-not-this-lobe',
  'slip',
  'unit-or-decimal',
  'unlisted-fault',
  'passes-scatter',
  'ratio-not-listed',
] as const;

export type Cause = (typeof CAUSES)[number];

/** Everything that can be done next, a reading or a question. */
export const ACTIONS = [
  'read-back',
  'one-more-pass',
  'lash-to-zero',
  'align-plunger',
  'valve-lift-at-.200',
  'lobe-at-lifter',
  'light-spring-solid-lifter',
  'rocker-on-another-valve',
] as const;

export type Action = (typeof ACTIONS)[number];

type Spring = 'light' | 'running';
type Lifter = 'solid' | 'hydraulic';

/** One reading as it was taken. Lengths in inches. */
export interface ExplainReading {
  readonly of: 'valve-lift' | 'lobe-lift';
  readonly value: number;
  /** Which pass of this kind it was, from 1. */
  readonly pass: number;
  /** Not said: taken as running, and asked for. */
  readonly spring?: Spring;
  /** Not said: taken as hydraulic, and asked for. */
  readonly lifter?: Lifter;
  /** One higher whenever the indicator was set up again; 0 for the first set-up. */
  readonly setUp: number;
  /** Valve lift read at this lobe lift instead of at full lift. */
  readonly atLobeLift?: number;
  /** Lash taken out for this reading. */
  readonly lashSet?: boolean;
  /** Plunger made parallel to the stem for this reading. */
  readonly aligned?: boolean;
  /** Small hand read and the direction of the hand known for this reading. */
  readonly counted?: boolean;
  /** The same arm on another valve. */
  readonly otherValve?: boolean;
  /** Travel per turn of the big hand: .1, or 1 mm. Left out: .1. */
  readonly perTurn?: number;
  /** How far off the tool may be, half-width; left out, a dial's. Passes of one set-up share it. */
  readonly errorLimit?: number;
  /** How many readings share that error: known once the case is opened. */
  readonly sharing?: number;
  /** How a lobe was measured. Left out: by indicator at the lifter. */
  readonly method?: 'lifter' | 'caliper';
}

export interface ExplainAnswer {
  readonly ask: 'read-back' | 'zero-return';
  /** True if something was found wrong. */
  readonly found: boolean;
}

/** Input of the inference. Lengths in inches, ratios bare. */
export interface ExplainInput {
  readonly nominals: readonly number[];
  readonly mark?: number;
  readonly cardLobeLift?: number;
  readonly otherLobeLift?: number;
  readonly lash?: 'zero' | 'set';
  readonly lashSetting?: number;
  readonly alignment?: 'parallel' | 'leaning';
  /** In the order taken. Readings struck out by a person are not given. */
  readonly readings: readonly ExplainReading[];
  readonly answers?: readonly ExplainAnswer[];
  /** Readings that the record says were taken that way already. */
  readonly notOffered?: readonly Action[];
  /** Mistakes that somebody looked for by their own test and did not find. */
  readonly ruledOut?: readonly Cause[];
  /** Mistakes that were said not to be made, by nobody who looked: weighed, but neither listed nor asked about. */
  readonly denied?: readonly Cause[];
  readonly assumptions?: AssumptionChanges;
}

/** Which entry a mistake is about: the card's lobe lift, or a reading by its index from 0. */
export type Entry = { readonly of: 'card' } | { readonly of: 'reading'; readonly index: number };

/** A question to put to the builder: a mistake with its size and the test that settles it. */
export interface Question {
  /** The entry it is about, where it is about one. */
  readonly entry?: Entry;
  /** Of a slip: what the entry would have been, inches. */
  readonly becomes?: number;
  readonly cause: Cause | 'state-not-said' | 'sinking';
  readonly text: string;
  readonly test: string;
  readonly probability: number;
}

export interface Explanation {
  /** Left out for an arm whose ratio is not on the list. */
  readonly nominal?: number;
  /** Empty: nothing went wrong. */
  readonly causes: readonly Cause[];
  readonly entry?: Entry;
  readonly probability: number;
  /** The ratio at full lift on the light spring if this explanation holds. */
  readonly ratio: number;
  /** What would have to be true. */
  readonly needs: string;
}

/** What the next reading would show if one explanation held. */
export interface Outcome {
  readonly cause: Cause | 'no-mistake';
  /** The name it goes with; left out for a ratio not listed. */
  readonly nominal?: number;
  /** What would be read, inches. Left out for a question. */
  readonly expected?: number;
  /** Half-width that 95 % of such readings keep, inches. Left out for a question. */
  readonly plusMinus?: number;
  /** Chance that asking finds something wrong. Left out for a reading. */
  readonly chanceFound?: number;
}

export interface NextReading {
  readonly action: Action;
  readonly bits: number;
  readonly minutes: number;
  readonly outcomes: readonly Outcome[];
}

export interface ExplainResult {
  readonly ratio: { readonly median: number; readonly interval95: readonly [number, number] };
  readonly nominals: readonly { readonly ratio: number; readonly probability: number }[];
  readonly notListed: number;
  readonly somethingElse: number;
  readonly noMistake: number;
  readonly explanations: readonly Explanation[];
  /** Chance of all explanations too unlikely to list. */
  readonly rest: number;
  /** The fewest names that together reach .9. */
  readonly remaining: readonly number[];
  readonly againstMark?: 'agrees' | 'differs' | 'cannot-tell';
  readonly nextReading?: NextReading;
  readonly settled: boolean;
  readonly summary: string;
  readonly questions: readonly Question[];
}
