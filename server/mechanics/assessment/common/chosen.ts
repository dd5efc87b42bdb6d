import { beginsWith } from '../../../../shared/begins-with.ts';
import type { AssessedQuestion } from '../assessment.ts';

/** Which of its answers a question was given: the one that its words begin with, else its yes or no. */
export function chosenOf({ answers, answered }: AssessedQuestion): string | undefined {
  if (answered === undefined) return undefined;
  const fitting = answers.filter(({ code }) => beginsWith(answered.answer, code));
  const longest = fitting.toSorted((a, b) => b.code.length - a.code.length)[0];
  if (longest !== undefined) return longest.code;
  if (answered.found === undefined) return undefined;
  const code = answered.found ? 'found' : 'not-found';
  return answers.some((each) => each.code === code) ? code : undefined;
}

/** The answer in the label that it was offered under, else as it was said. */
export function answerSaid(question: AssessedQuestion): string {
  const code = chosenOf(question);
  return question.answers.find((each) => each.code === code)?.label ?? question.answered?.answer ?? '';
}
