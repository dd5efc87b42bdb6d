import type { AssessedQuestion } from '../../assessment.ts';

/** Guesses at one slip of a whole side. */
const GUESSES: ReadonlySet<string> = new Set(['hand-read-backwards', 'valve-swapped']);

/** Where both sides are off alike, a slip that would make it of one of them alone is no guess worth a question. */
export function withoutOneSided(
  raised: readonly AssessedQuestion[],
  told: readonly AssessedQuestion[],
): readonly AssessedQuestion[] {
  if (!told.some(({ code, about }) => code === 'side-off' && about.of === 'build')) return raised;
  const isGuess = ({ code, about, weight, answered }: AssessedQuestion) =>
    GUESSES.has(code) && about.of === 'side' && weight === 'weak' && answered === undefined;
  const guesses = raised.filter(isGuess);
  return raised.filter(
    (each) => !isGuess(each) || guesses.filter(({ code }) => code === each.code).length > 1,
  );
}
