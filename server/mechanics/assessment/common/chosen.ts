import { isAnswer } from '../../../../shared/begins-with.ts';
import type { AnswerChoice, AssessedQuestion } from '../assessment.ts';

type Answered = Pick<AssessedQuestion, 'answers' | 'answered'>;

/** The answer that a question was given, of those that were offered: the one its words begin with, else its yes or no. */
export function choiceOf({ answers, answered }: Answered): AnswerChoice | undefined {
  if (answered === undefined) return undefined;
  const fitting = answers.filter(({ code }) => isAnswer(answered.answer, code));
  const longest = fitting.toSorted((a, b) => b.code.length - a.code.length)[0];
  if (longest !== undefined || answered.found === undefined) return longest;
  const code = answered.found ? 'found' : 'not-found';
  return answers.find((each) => each.code === code);
}

/** Its code. */
export const chosenOf = (question: Answered): string | undefined => choiceOf(question)?.code;

/** The answer in the label that it was offered under, else as it was said. */
export const answerSaid = (question: Answered): string =>
  choiceOf(question)?.label ?? question.answered?.answer ?? '';
