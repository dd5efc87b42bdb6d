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

/** The answer in its own label, with what was said beside it: never the word that it is kept under. */
export function answerSaid(question: AssessedQuestion): string {
  const { answers, answered } = question;
  const code = chosenOf(question);
  const label = answers.find((each) => each.code === code)?.label;
  const said = answered?.answer ?? '';
  if (code === undefined || label === undefined) return said;
  const words = beginsWith(said, code)
    ? said
        .trim()
        .slice(code.length)
        .replace(/^[\s:,.]+/, '')
    : said;
  return words === '' ? label : `${label}: ${words}`;
}
