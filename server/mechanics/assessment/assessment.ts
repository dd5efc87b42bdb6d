import type { StepName } from '../../../shared/steps.ts';
import type { Details } from './details.ts';
import type { GapName, Side, ValvePlace } from './evidence.ts';
import type { NotCovered } from './gear/detail.ts';
import type { ExplanationResult } from './ratio/compared/explanation.ts';
import type { PassKind } from './ratio/read/detail.ts';
import type { Chances } from './ratio/told/chances.ts';
import type { JudgementWord } from './words.ts';

/** A part in the hand: the first of a build has no id, and no name until it is given one. */
export interface PartSubject {
  readonly of: 'part';
  readonly partId?: string;
  readonly name?: string;
}

/** What a quantity, judgement or question is about. */
export type Subject =
  | { readonly of: 'build' }
  | PartSubject
  | (ValvePlace & { readonly of: 'valve' })
  /** `others`: those of the side that nothing was read of, beside those that something was. */
  | { readonly of: 'side'; readonly valve: Side; readonly others?: boolean }
  | (ValvePlace & { readonly of: 'set-up'; readonly setUpId: string; readonly number: number })
  | { readonly of: 'arm'; readonly armId: string; readonly name: string };

export type Basis = 'measured' | 'calculated' | 'drawn' | 'stated' | 'planned';
export type Dimension = 'ratio' | 'length' | 'load' | 'angle';

/** A value with its 95 % interval, the conditions it holds under and the entries it rests on. SI; a ratio is bare. */
export interface AssessedQuantity {
  /** Stable: made of what it is and what it is about, never of an order. */
  readonly id: string;
  /** In the trade's words: `Light-spring ratio`, `Net lift`, `Piston to valve`. */
  readonly name: string;
  readonly about: Subject;
  readonly dimension: Dimension;
  readonly value?: number;
  readonly low?: number;
  readonly high?: number;
  readonly basis: Basis;
  /** What it holds for: `light spring`, `lash at zero`, `solid lifter`. */
  readonly conditions: readonly string[];
  /** What must be known or done before it can be given, or believed. */
  readonly lacks: readonly string[];
  /** Ids of entries. */
  readonly restsOn: readonly string[];
}

export type Against =
  | { readonly to: 'mark' | 'sold-as' | 'planned' | 'nominal' | 'card'; readonly ratio: number }
  | { readonly to: 'limit'; readonly gap: GapName; readonly limit: number; readonly source: string }
  | { readonly to: 'card-lobe'; readonly lobeLift: number }
  | { readonly to: 'usual-deflection'; readonly low: number; readonly high: number; readonly source: string }
  | { readonly to: 'siblings' }
  | { readonly to: 'least-sweep'; readonly limit: number; readonly source: string };

/** One thing set against another, in a sentence that can be read aloud. */
export interface Judgement {
  readonly id: string;
  readonly about: Subject;
  readonly against: Against;
  /** Left out while the conditions of the reading, or what is known, allow none. */
  readonly word?: JudgementWord;
  readonly sentence: string;
  readonly lacks: readonly string[];
  /** Why all that it rests on is read again, where what is next goes by that. */
  readonly again?: 'lash-in';
  readonly restsOn: readonly string[];
}

/** What is done once it was answered so, and whether the entries that it was asked of are corrected for it. */
export interface Leads {
  readonly todo: string;
  readonly corrects: boolean;
  /** The engine is turned for it. */
  readonly turns: boolean;
}

/** One of the answers that a question may have, and what it would change. */
export interface AnswerChoice {
  readonly code: string;
  readonly label: string;
  readonly changes: string;
  /** It settles nothing yet: what it asks for is done first. Any other answer of its own ends the doubt. */
  readonly holds?: true;
  /** What it leads to where it found a doubt to be so; left out, what it was asked of is entered again. */
  readonly leadsTo?: Leads | 'nothing';
  /** The one valve that it is may go with it. */
  readonly takesValve?: boolean;
  /** An amount may go with it. */
  readonly takesValue?: boolean;
  /** How far the plunger leaned may go with it, as an angle. */
  readonly takesLean?: boolean;
  /** The amount that it stands for, SI: kept with the answer. */
  readonly value?: number;
}

/** A doubt put to a person: never a verdict, and it changes no entry. */
export interface AssessedQuestion {
  readonly id: string;
  readonly code: string;
  readonly about: Subject;
  /** The step it is raised, answered and settled in. */
  readonly step: StepName;
  readonly weight: 'strong' | 'weak';
  /** What is next rests on its answer. */
  readonly isNext?: true;
  readonly ask: string;
  readonly size?: string;
  /** The test that settles it, as the desk has it. */
  readonly test: string;
  /** The same for whoever stands at the engine, where the desk only asks. */
  readonly testAtBench?: string;
  /** That test takes looking alone, with nothing turned: it is not held back under a stop. */
  readonly byLooking?: boolean;
  /** Steps whose answer waits for it beside its own. */
  readonly alsoOf?: readonly StepName[] | 'every';
  /** It is asked before anything more is read: it costs nothing, and may give what would be read next. */
  readonly beforeReading?: true;
  readonly answers: readonly AnswerChoice[];
  readonly answered?: { readonly entryId: string; readonly answer: string; readonly found?: boolean };
  readonly restsOn: readonly string[];
}

/** What would explain the readings of one valve, or why that cannot be computed. */
export interface AssessedExplanation {
  readonly id: string;
  readonly about: Subject;
  /** The answer of `explain-readings` in SI; left out where it cannot be computed. */
  readonly result?: ExplanationResult;
  /** The fault and the way out, where it cannot be computed. */
  readonly refused?: string;
  readonly summary: string;
  /**
   * Whether its chances may be told: what the headline leaves open no figure beside it may close. Every face leaves the
   * answer of the inference out where they may not.
   */
  readonly chances: Chances;
  /** What would have to be true, likeliest first and without a figure, where the headline leaves it open. */
  readonly wouldBeTrue: readonly string[];
  /** The arm it is about, where it was named. */
  readonly armId?: string;
  readonly setUpIds: readonly string[];
  readonly restsOn: readonly string[];
}

/** Where something is entered: another step than the one that asks for it, a part of the step, a field of its form. */
export interface EnteredAt {
  readonly step?: StepName;
  readonly part?: string;
  /** Which form of the page, where several have a field of that name. */
  readonly form?: string;
  readonly field?: string;
}

/** The one reading or action worth most now, with its reason. */
export interface NextAction {
  readonly id: string;
  readonly action: string;
  /** The step it is done in. */
  readonly step: StepName;
  readonly about: Subject;
  /** Can be read aloud; says what to do. */
  readonly sentence: string;
  /** The same for whoever stands at the engine. */
  readonly sentenceAtBench?: string;
  /** The same where the answer stands beside it, and is not said twice. */
  readonly besideAnswer?: string;
  readonly besideAnswerAtBench?: string;
  /** Where that is shown, if the desk has something to write down that is not theirs to write. */
  readonly stepAtBench?: StepName;
  readonly reason: string;
  /** Code of the question that it settles, where the reason is not that question itself. */
  readonly settles?: string;
  /** Entries that are wrong, where it is to correct them. */
  readonly corrects?: readonly string[];
  /** What the pass is of, where it is to read one. */
  readonly reads?: PassKind;
  /** Where on its step it is entered. */
  readonly at?: EnteredAt;
  readonly minutes?: number;
  /** The call is at its end: a page of the desk leads to where it is closed. */
  readonly closes?: true;
  /** It asks for a photograph: a page leads to where one is kept. */
  readonly photograph?: true;
  /** It turns the engine: never offered under a stop. */
  readonly turns: boolean;
}

/** Why nobody turns it. */
export interface StopReason {
  readonly id: string;
  readonly code:
    | 'held'
    | 'contact'
    | 'gap-short'
    | 'lash-grew-again'
    | 'lobe-worn'
    | 'mark-at-the-edge'
    | 'part-damaged'
    | 'plunger-bottomed'
    | 'sign-of-damage';
  readonly about: Subject;
  /** The step that it is answered in, where it is not that of every stop of its kind. */
  readonly step?: StepName;
  readonly sentence: string;
  /** What was found or told, as a clause: other sentences about it are made of this. */
  readonly why?: string;
  /** What a person has to do before it may be lifted. */
  readonly wayOut: string;
  /** The same without what only the desk can do. */
  readonly wayOutAtBench?: string;
  /** What is done at once with nothing turned, where it is not what every stop of its kind has. */
  readonly first?: string;
  /** What raised it has been answered, so that a person may lift it. */
  readonly answered: boolean;
  /** It is of arms that are off since. */
  readonly armsOff?: true;
  /** A person set it, or the readings raise it. */
  readonly from: 'person' | 'readings';
  readonly entryId?: string;
  readonly line?: number;
  readonly since?: string;
  /** Ids of the entries without which it would not stand: only the desk strikes these out or replaces them. */
  readonly restsOn: readonly string[];
}

/** Why nobody runs it as it is, or fits what is planned; measuring by hand is not forbidden by it. */
export interface NotToRun {
  readonly id: string;
  /** The engine as it is, or parts that are not fitted yet. */
  readonly what: 'run' | 'fit';
  readonly about: Subject;
  readonly sentence: string;
  readonly wayOut: string;
  readonly wayOutAtBench?: string;
  /** It is done at once, under a stop too. */
  readonly atOnce?: boolean;
  /** What is read or measured to know whether it may run. */
  readonly todo?: Pick<NextAction, 'action' | 'step' | 'settles'>;
  /** Of a ratio that is thought of beside the one that is to be fitted: nothing is done about it first. */
  readonly beside?: true;
  /** Nothing more is read for it: it is said before anything is planned. */
  readonly saidFirst?: true;
  /** Its stop was lifted for one more reading: the entry that raised it. */
  readonly toReadAgain?: string;
  /** Open questions whose answer may take it away, each answered with nothing turned. */
  readonly hangsOn?: readonly string[];
}

/** One thing that is not known or not done yet. `must`: the answer of the call waits for it. */
export interface Missing {
  readonly id: string;
  readonly step: StepName;
  readonly sentence: string;
  readonly must: boolean;
}

/** One thing that a step asks for, there or not. */
export interface StepNeed {
  readonly id: string;
  readonly step: StepName;
  /** Named as a thing: `the intake lobe lift on the cam card`. */
  readonly what: string;
  readonly have: boolean;
  /** The answer of the call waits for it. */
  readonly must: boolean;
}

/** Everything that is said about a build. Every face shows parts of it and judges nothing by itself. */
export interface Assessment {
  readonly quantities: readonly AssessedQuantity[];
  readonly judgements: readonly Judgement[];
  readonly questions: readonly AssessedQuestion[];
  readonly explanations: readonly AssessedExplanation[];
  /** The fewest names that the arm may have, where names are weighed; by valve. */
  readonly remaining: readonly { readonly about: Subject; readonly names: readonly number[] }[];
  readonly next?: NextAction;
  /** What is still missing for what the call is about, in the order of its steps. */
  readonly missing: readonly Missing[];
  /** All that the steps ask for, also what the goal is not about. */
  readonly needs: readonly StepNeed[];
  readonly stop: readonly StopReason[];
  /** Gaps that come out short by calculation. */
  readonly notToRun: readonly NotToRun[];
  /** What is not worked out for this engine, with what is done instead. */
  readonly notCovered: readonly NotCovered[];
  /** The answer in one line for each valve that was read, and for each other thing that was asked. */
  readonly headlines: readonly Headline[];
  /** Figures behind the above, for tables and drawings. */
  readonly details: Details;
}

/** The answer in one line; it names the mark or what the part is sold as, where there is one. */
export interface Headline {
  readonly id: string;
  readonly about: Subject;
  readonly step: StepName;
  readonly sentence: string;
  /** The judgement it is made of, if any. */
  readonly judgementId?: string;
  readonly quantityId?: string;
}
