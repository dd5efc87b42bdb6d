import { foundSaid } from '../../../../../shared/begins-with.ts';
import { isAskedAs } from '../../common/asked.ts';
import type { AnswerEvidence } from '../../evidence.ts';

interface Asked {
  readonly id: string;
  readonly code: string;
  readonly ask: string;
}

/** The word of the question: a program may give it as the question itself. */
export const codeOf = (answer: AnswerEvidence): string =>
  answer.code === '' ? answer.question : answer.code;

/** Answers of one set-up, the earlier first: an answer given again puts the one before it right. */
export const answersOf = (setUpId: string, answers: readonly AnswerEvidence[]): AnswerEvidence[] =>
  answers.filter((answer) => answer.setUpId === setUpId).toSorted((a, b) => a.line - b.line);

/**
 * The answer to a question of a set-up: under its id, in its own words, or by its word. Figures in a question change
 * with later readings, so the word is enough where no other question of this set-up has it.
 */
export function answerTo(
  question: Asked,
  alike: readonly Asked[],
  answers: readonly AnswerEvidence[],
): AnswerEvidence | undefined {
  const only = alike.filter(({ code }) => code === question.code).length < 2;
  return answers.findLast((answer) => {
    if (answer.questionId !== undefined) return answer.questionId === question.id;
    if (isAskedAs(answer.question, question.ask)) return true;
    if (codeOf(answer) !== question.code) return false;
    const other = alike.some(({ ask }) => isAskedAs(answer.question, ask));
    return !other && (only || answer.question === question.code || answer.question === '');
  });
}

/** A yes or a no that an answer begins with; “not so” and “no idea” are neither. */
export function yesOrNo(text: string): boolean | undefined {
  const said = text.trim().toLowerCase();
  return /^yes\b/.test(said) ? true : /^no($|[,.;:])/.test(said) ? false : undefined;
}

/** Whether something was found wrong; undefined where the answer does not say. */
export function foundBy(answer: AnswerEvidence): boolean | undefined {
  if (answer.found !== undefined) return answer.found;
  return foundSaid(answer.answer) ?? yesOrNo(answer.answer);
}

/** The one pass that it was found on, by its number: `pass-2`. */
export function passNamed({ answer }: Pick<AnswerEvidence, 'answer'>): number | undefined {
  const number = /^pass[- ](\d{1,2})\b/.exec(answer)?.[1];
  return number === undefined ? undefined : Number(number);
}

/** The state that an answer says: the word it begins with (`zero: feeler out`), else the first of these that it has. */
export function stateIn<Word extends string>(text: string, words: readonly Word[]): Word | undefined {
  const said = text.trim().toLowerCase();
  return (
    words.find((word) => said === word || said.startsWith(`${word}:`)) ??
    words.find((word) => new RegExp(`\\b${word}\\b`).test(said))
  );
}
