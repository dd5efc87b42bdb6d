import type { AssessedQuestion } from '../../assessment.ts';
import { answerSaid, chosenOf } from '../../common/chosen.ts';
import type { AnswerEvidence, Evidence } from '../../evidence.ts';
import type { SetUpKnown } from './known.ts';
import { setUpsSaid, whichHolds } from './which-holds.ts';

/** What was answered while fewer set-ups were there. */
interface ChosenBefore {
  readonly question: AssessedQuestion;
  readonly own: readonly SetUpKnown[];
}

const IN_ID = /-(\d+(?:-\d+)*):[a-z-]+$/;

/** The set-ups that a question was about: by its id, else by its words. */
function numbersIn({ questionId, question }: AnswerEvidence): readonly number[] {
  const found =
    questionId === undefined
      ? [...question.matchAll(/\bset-up (\d+)/g)].flatMap(([, number]) => number ?? [])
      : (IN_ID.exec(questionId)?.[1]?.split('-') ?? []);
  return found.map(Number);
}

/** Answers to which of some of these set-ups holds; of those about more and more of them, the ones about the most. */
export function chosenBefore(evidence: Evidence, own: readonly SetUpKnown[]): ChosenBefore[] {
  const sets = new Map(
    evidence.answers.map((answer) => {
      const numbers = numbersIn(answer);
      const some = own.filter(({ read }) => numbers.includes(read.setUp.number));
      return [setUpsSaid(some), some];
    }),
  );
  const answered = [...sets.values()].flatMap((some): ChosenBefore[] => {
    if (some.length < 2 || some.length === own.length) return [];
    const question = whichHolds(evidence, some, { most: [], elsewhere: [] });
    return question.answered === undefined ? [] : [{ question, own: some }];
  });
  const most = Math.max(0, ...answered.map(({ own: some }) => some.length));
  return answered.filter(({ own: some }) => some.length === most);
}

/** `Of set-ups 1 and 2 alone it was said: Set-up 1 holds, 1.601.` */
export const beforeSaid = (before: readonly ChosenBefore[]): string =>
  before
    .map(({ question, own }) => ` Of ${setUpsSaid(own)} alone it was said: ${answerSaid(question)}.`)
    .toSorted()
    .join('');

/** What was said then is what most of them come to now. */
export const isBorneOut = (before: readonly ChosenBefore[], most: readonly SetUpKnown[]): boolean =>
  before.every(
    ({ question }) =>
      // That now the one comes up and now the other has named none: what they come to since says it.
      chosenOf(question) === 'both' ||
      most.some(({ read }) => chosenOf(question) === `set-up-${read.setUp.number}`),
  );
