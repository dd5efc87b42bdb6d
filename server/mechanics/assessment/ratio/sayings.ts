import { defined } from '../../../../shared/defined.ts';
import type { AnswerEvidence, SetUpEvidence, SetUpFact, SetUpStatementEvidence } from '../evidence.ts';
import { codeOf, foundBy, stateIn, yesOrNo } from './answers.ts';
import { armBy } from './arm-elsewhere.ts';

type Facts = Pick<SetUpEvidence, SetUpFact>;

/** The word of the question whether two springs were noted the wrong way round. */
export const SPRINGS_SWAPPED = 'springs-swapped';

/** What somebody said of a set-up after it was started: a statement of its own, or the answer to a question. */
interface Saying {
  readonly line: number;
  readonly of: (known: SetUpEvidence) => Pick<SetUpStatementEvidence, 'says' | 'notKnown'>;
}

/** The lash as an answer has it. An amount says that it was left in, and none at all that it was not. */
function lashBy(answer: AnswerEvidence): Partial<Facts> {
  const { answer: text, value } = answer;
  if (value !== undefined) return value > 0 ? { lash: 'set', lashSetting: value } : { lash: 'zero' };
  const lash = stateIn(text, ['zero', 'set'] as const);
  if (lash !== undefined) return { lash };
  // “Was the lash taken up?” is put the other way round from “Was it left in?”.
  const yes = codeOf(answer) === 'lash-not-said' ? yesOrNo(text) : undefined;
  const left = answer.found ?? (yes === undefined ? foundBy(answer) : !yes);
  return left === undefined ? {} : { lash: left ? 'set' : 'zero' };
}

/** The answer has it that the lash was out. */
export const saysZero = (answer: AnswerEvidence): boolean => lashBy(answer).lash === 'zero';

const is = <Fact extends SetUpFact>(fact: Fact, word: Facts[Fact] | undefined): Partial<Facts> =>
  word === undefined ? {} : { [fact]: word };

function alignmentBy(answer: AnswerEvidence): Partial<Facts> {
  const said = stateIn(answer.answer, ['parallel', 'leaning'] as const);
  const yes = codeOf(answer) === 'alignment-not-said' ? yesOrNo(answer.answer) : undefined;
  const found = answer.found ?? (yes === undefined ? foundBy(answer) : !yes);
  if (said !== undefined || found === undefined) return is('alignment', said);
  return { alignment: found ? 'leaning' : 'parallel' };
}

/** What the answer to a question says of how the set-up was; nothing where it is about something else. */
function saidBy(answer: AnswerEvidence): Partial<Facts> {
  const { answer: text } = answer;
  switch (codeOf(answer)) {
    case 'spring-not-said':
      return is('spring', stateIn(text, ['light', 'running'] as const));
    case 'lifter-not-said':
    case 'lifter-sunk':
    case 'lifter-of-engine':
      return is('lifter', stateIn(text, ['locked', 'solid', 'hydraulic'] as const));
    case 'lash-not-said':
    case 'lash-left-in':
    case 'lash-setting-not-said':
      return lashBy(answer);
    case 'plunger-tilted':
    case 'alignment-not-said':
      return alignmentBy(answer);
    case 'rests-on-not-said':
      return is(
        'restsOn',
        stateIn(text, ['retainer-flat', 'retainer-edge', 'valve-tip', 'spring-seat'] as const),
      );
    case 'valve-swapped':
      return is('valve', firstWord(text, ['intake', 'exhaust'] as const));
    default:
      return {};
  }
}

const OTHER: Readonly<Partial<Record<Facts['spring'], Facts['spring']>>> = {
  light: 'running',
  running: 'light',
};

/** Two springs noted the wrong way round: what was read on the one was read on the other. */
const springBy = (answer: AnswerEvidence, { spring }: Facts): Partial<Facts> =>
  codeOf(answer) === SPRINGS_SWAPPED && foundBy(answer) === true ? is('spring', OTHER[spring]) : {};

/** Only the word that it begins with: "looked, it is the intake" denies that it was another. */
const firstWord = <Word extends string>(text: string, words: readonly Word[]): Word | undefined =>
  words.find((word) => text === word || text.startsWith(`${word}:`));

/** Questions whose answer is said of the set-up as it was entered, not of what came of another answer to the same. */
const AS_ENTERED: ReadonlySet<string> = new Set(['arm-sits-elsewhere', 'valve-swapped', SPRINGS_SWAPPED]);

/** Answers that count: one given again puts the one before it right. */
const counting = (answers: readonly AnswerEvidence[]): AnswerEvidence[] => {
  const sorted = answers.toSorted((a, b) => a.line - b.line);
  return sorted.filter(
    (answer) =>
      !AS_ENTERED.has(codeOf(answer)) ||
      sorted.findLast((each) => codeOf(each) === codeOf(answer)) === answer,
  );
};

/** The set-up without these facts, each of them one that a set-up may lack. */
function without(setUp: SetUpEvidence, facts: SetUpStatementEvidence['notKnown']): SetUpEvidence {
  if (facts.length === 0) return setUp;
  const { armId, lashSetting, travel, pushedIn, ...rest } = setUp;
  const known = <Known>(fact: (typeof facts)[number], value: Known): Known | undefined =>
    facts.includes(fact) ? undefined : value;
  return {
    ...rest,
    ...defined({
      armId: known('armId', armId),
      lashSetting: known('lashSetting', lashSetting),
      travel: known('travel', travel),
      pushedIn: known('pushedIn', pushedIn),
    }),
  };
}

/** The set-up with what was said of it, a later word before an earlier one. */
export function withSayings(
  setUp: SetUpEvidence,
  statements: readonly SetUpStatementEvidence[],
  answers: readonly AnswerEvidence[],
): SetUpEvidence {
  const sayings: Saying[] = [
    ...statements
      .filter(({ setUpId }) => setUpId === setUp.id)
      .map((each) => ({ line: each.line, of: () => each })),
    ...counting(answers).map((answer) => ({
      line: answer.line,
      of: (known: SetUpEvidence) => {
        const { says, notKnown } = armBy(answer, known);
        return { says: { ...saidBy(answer), ...springBy(answer, known), ...says }, notKnown };
      },
    })),
  ];
  let known = setUp;
  for (const { of } of sayings.toSorted((a, b) => a.line - b.line)) {
    const { says, notKnown } = of(known);
    known = without({ ...known, ...says }, notKnown);
  }
  return known;
}
