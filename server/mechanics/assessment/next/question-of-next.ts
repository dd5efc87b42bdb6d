import type { AssessedQuestion, NextAction } from '../assessment.ts';
import { keyOf } from '../common/said.ts';

/** The open question that what is next settles: its own test, its ask as the reason, or one of its code. */
function questionOf(
  questions: readonly AssessedQuestion[],
  { id, action, about, reason, settles }: NextAction,
): AssessedQuestion | undefined {
  const open = questions.filter(({ answered }) => answered === undefined);
  const isHere = (question: AssessedQuestion): boolean =>
    about.of === 'build' || keyOf(question.about) === keyOf(about);
  return (
    open.find((question) => id === `next:${question.id}`) ??
    open.find((question) => question.ask === reason && isHere(question)) ??
    open.find((question) => [settles, action].includes(question.code) && isHere(question))
  );
}

/**
 * The question that what is next rests on stands before all others, and is no weaker than any: the whole call waits for
 * its answer, however many ways there are to have made the same figures.
 */
export function withNextFirst(
  questions: readonly AssessedQuestion[],
  next: NextAction | undefined,
): readonly AssessedQuestion[] {
  const first = next === undefined ? undefined : questionOf(questions, next);
  if (first === undefined) return questions;
  return [{ ...first, weight: 'strong', isNext: true }, ...questions.filter((each) => each !== first)];
}
