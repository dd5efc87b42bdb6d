import type { ValveName } from '../../../../../shared/schemas/words.ts';
import { byText } from '../../../kit/by-text.ts';
import type { AssessedQuestion } from '../../assessment.ts';
import { answerSaid } from '../../common/chosen.ts';
import { isAsked } from '../../common/is-asked.ts';

/** Which of the two lifts it is about. */
export type LiftRead = 'lobe' | 'valve';

/** There is no more to them than what they are. */
interface Plain {
  readonly code:
    | 'which-spring'
    | 'which-lifter'
    /** Whether it was a hydraulic one at all is asked before another lifter is put in. */
    | 'which-lifter-was'
    | 'lash-not-said'
    | 'lash-in-unknown'
    /** How much is known: a ratio may be calculated with it put back, and no word stands on that. */
    | 'lash-in-known'
    | 'plunger-leans'
    /** A step, a slope, a lock or another part is no face that goes straight along the stem with the valve. */
    | 'rests-elsewhere'
    /** Which of the entries was wrong is not said, so that they are read back once more. */
    | 'read-back-wrong'
    /** A mean of falling passes is no ratio, whatever its interval (common practice, no published source). */
    | 'sinking'
    /**
     * A hydraulic lifter that is not locked can sink before its first pass, under a light spring too: passes that
     * repeat do not show that it held, and an arm of more ratio then reads as one of less (common practice, no
     * published source).
     */
    | 'may-have-sunk';
}

/** Nothing that was read can stand against a mark: the reading that could, and why where the passes sink. */
interface LightSpringFirst {
  readonly code: 'light-spring-first';
  readonly sinks: boolean;
}

/** Nothing of this lift was read that counts. */
interface NotRead {
  readonly code: 'guessed' | 'no-pass' | 'none-back-at-zero';
  readonly lift: LiftRead;
}

/** Passes that lie apart, and nobody can say which of them is right. */
type NotRepeated =
  | {
      readonly code: 'one-more-pass';
      readonly lift: LiftRead;
      readonly smallHand: boolean;
      readonly why: string;
    }
  | { readonly code: 'passes-apart'; readonly lift: LiftRead; readonly apart: number }
  | { readonly code: 'passes-scatter'; readonly passes: number; readonly apart: number };

/** A pass by its number and its lift: lobe and valve have passes of one number. */
export interface PassOf {
  readonly lift: LiftRead;
  readonly pass: number;
}

/**
 * A reading that only a person enters again or strikes out. `passes`: which, each once; none where the reading is one
 * of another set-up. `byOthers`: it reads otherwise than the passes beside it.
 */
export interface EnteredAgain {
  readonly code: 'enter-again';
  readonly passes: readonly PassOf[];
  /** The entries themselves. */
  readonly entryIds: readonly string[];
  readonly byOthers: boolean;
  readonly why: string;
}

/** No lobe lift of the card, or one that somebody stated and nobody knows where it is from. */
type NoLobe =
  | { readonly code: 'lobe-lift'; readonly valve: ValveName }
  | { readonly code: 'lobe-lift-from'; readonly value: number };

/** What was asked is not answered, or was answered so that an entry has to be put right. */
interface OfQuestion {
  readonly ask: string;
  /** The question, by its code and its own words without figures. */
  readonly of: string;
}

type OfAnswer =
  | (OfQuestion & {
      readonly code: 'answer';
      /** Its code, and whether something has to be turned for its answer. */
      readonly question: string;
      readonly turns: boolean;
    })
  | (OfQuestion & {
      readonly code: 'card-lobe-wrong' | 'card-wrong' | 'sold-as-other';
      /** The answer, as it was offered. */
      readonly label: string;
    });

/** Set-ups of one arm on one valve that came out otherwise, by how they are called: `set-ups 1 and 3`. */
interface OfSetUps {
  readonly code: 'which-arm' | 'what-moves' | 'same-as';
  readonly setUps: string;
}

/** The running spring reads over the light one, by so much. */
interface SpringsAgainst {
  readonly code: 'springs-against';
  readonly by: number;
}

/** These figures give no ratio, or cannot be weighed. */
interface Refused {
  readonly code: 'lifts-do-not-go-together' | 'not-weighed';
  readonly why: string;
}

/**
 * What must be known or done before a word stands on a ratio that was read. Whoever asks what it is asks its code; its
 * words are made in `lack-said.ts`.
 */
export type RatioLack =
  | Plain
  | LightSpringFirst
  | NotRead
  | NotRepeated
  | EnteredAgain
  | NoLobe
  | OfAnswer
  | OfSetUps
  | SpringsAgainst
  | Refused;

/** What a lack is, whatever it is about. */
export type LackCode = RatioLack['code'];
/** One of which there is no more to say than its words. */
export type PlainLack = Plain['code'];

type Asked = Pick<AssessedQuestion, 'id' | 'code' | 'ask' | 'byLooking'>;

const ofQuestion = ({ id, code, ask }: Asked): OfQuestion => ({
  ask,
  of: `${code}-${id.split(':').at(-1) ?? ''}`,
});

/** Its answer. */
export const answerLack = (question: Asked): RatioLack => ({
  code: 'answer',
  ...ofQuestion(question),
  question: question.code,
  turns: !isAsked(question),
});

/** It was answered that the lobe lift of the card is wrong: the card is put right. */
export const cardLobeLack = (question: AssessedQuestion): RatioLack => ({
  code: 'card-lobe-wrong',
  label: answerSaid(question),
  ...ofQuestion(question),
});

/** It was answered that a figure of the card is wrong, and not which: the card is put right. */
export const cardLack = (question: AssessedQuestion): RatioLack => ({
  code: 'card-wrong',
  label: answerSaid(question),
  ...ofQuestion(question),
});

/** It was answered that they are sold as another ratio: that is put right. */
export const soldAsLack = (question: AssessedQuestion): RatioLack => ({
  code: 'sold-as-other',
  label: answerSaid(question),
  ...ofQuestion(question),
});

/** What tells a lack from another: its code and what it is about, whatever words it is said in. */
export function lackKey(lack: RatioLack): string {
  const about = Object.entries(lack)
    .filter(
      ([member]) => member !== 'byOthers' && member !== 'ask' && member !== 'label' && member !== 'turns',
    )
    .toSorted(([a], [b]) => byText(a, b));
  return JSON.stringify(about);
}

/** Two that are of the same are one thing to do. */
export const isSameLack = (one: RatioLack, other: RatioLack): boolean => lackKey(one) === lackKey(other);

/** Each once, the first of those that are the same. */
export const eachOnce = (lacks: readonly RatioLack[]): RatioLack[] => {
  const once = new Map<string, RatioLack>();
  for (const lack of lacks) if (!once.has(lackKey(lack))) once.set(lackKey(lack), lack);
  return [...once.values()];
};

/** Lash that was left in by a known amount: nothing else may be wrong with the reading. */
export const isLashKnownIn = ({ code }: RatioLack): boolean => code === 'lash-in-known';

/** States that the caller knows; everything else takes a reading. */
const SAID: ReadonlySet<LackCode> = new Set([
  'which-spring',
  'which-lifter',
  'which-lifter-was',
  'which-arm',
  'lash-not-said',
]);

/** Whether it only has to be said. */
export const isSaid = ({ code }: RatioLack): boolean => SAID.has(code);

/** Entries that are put right, or looked at once more. */
const ENTERED: ReadonlySet<LackCode> = new Set([
  'enter-again',
  'read-back-wrong',
  'card-lobe-wrong',
  'card-wrong',
  'sold-as-other',
]);

/** What needs nothing turned: to say, to answer by looking, to enter again, to read back. */
export const turnsNothing = (lack: RatioLack): boolean =>
  isSaid(lack) || ENTERED.has(lack.code) || (lack.code === 'answer' && !lack.turns);
