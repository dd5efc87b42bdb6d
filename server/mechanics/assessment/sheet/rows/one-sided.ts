import type { AssessedQuestion } from '../../assessment.ts';
import { placeOf } from '../../common/said.ts';
import type { SheetRow } from './rows.ts';

/** Guesses at one slip of a whole side. */
const GUESSES: ReadonlySet<string> = new Set(['hand-read-backwards', 'valve-swapped']);

/** What is to be read again, as was answered, is guessed at no more: nobody asks which slip it was. */
export function withoutGuessesAt(
  left: ReadonlySet<string>,
  raised: readonly AssessedQuestion[],
  rows: readonly SheetRow[],
): readonly AssessedQuestion[] {
  const ids = new Set(
    rows
      .filter((row) => left.has(placeOf(row)))
      .flatMap(({ lifts }) => lifts.flatMap(({ readings }) => readings.map(({ id }) => id))),
  );
  return raised.filter(
    ({ answered, restsOn }) =>
      answered !== undefined || restsOn.length === 0 || !restsOn.every((id) => ids.has(id)),
  );
}

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
