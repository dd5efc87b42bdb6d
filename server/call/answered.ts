import type { Question } from '../mechanics/questions/types.ts';
import type { Answer } from '../records/answers/answers.ts';

const LONGEST = 100;

/** What a question is answered under: its own words, so that the record can be read without the page. */
export function questionKey(question: Pick<Question, 'ask'>): string {
  return question.ask.length <= LONGEST ? question.ask : `${question.ask.slice(0, LONGEST - 1)}…`;
}

/** The newest answer to a question of a set-up. A program may have answered it by its code. */
export function answerOf(
  answers: readonly Answer[],
  setUpId: string,
  question: Pick<Question, 'ask' | 'code'>,
): Answer | undefined {
  return answers.findLast(
    (answer) =>
      answer.setUpId === setUpId &&
      (answer.question === questionKey(question) || answer.question === question.code),
  );
}
