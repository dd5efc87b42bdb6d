import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import type { AssessedQuestion } from '../../assessment.ts';

/** Guesses at one slip of the dial or of the card, which a column entered twice makes by itself. */
const GUESSES: ReadonlySet<string> = new Set([
  'valve-swapped',
  'turn-miscounted',
  'hand-read-backwards',
  'gross-lift-as-lobe',
  'card-against-itself',
  'copied-reading',
]);

/** What is asked of a side without guesses at its lifts, or at its card, while its column may be another’s. */
export function besidesCopies(
  questions: readonly AssessedQuestion[],
  copies: readonly AssessedQuestion[],
): AssessedQuestion[] {
  const strong = copies.filter(({ weight, answered }) => weight === 'strong' && answered === undefined);
  const isGuess = ({ code, about, answered, restsOn }: AssessedQuestion): boolean =>
    GUESSES.has(code) &&
    answered === undefined &&
    strong.some(
      (copy) =>
        (about.of === 'side' || about.of === 'valve') &&
        copy.about.of === 'side' &&
        sideOfValve(about.valve) === copy.about.valve &&
        (restsOn.every((id) => copy.restsOn.includes(id)) || code === 'gross-lift-as-lobe'),
    );
  // That one number stands down a column is asked once, by where the number is from.
  const isSame = ({ code, answered, restsOn }: AssessedQuestion): boolean =>
    code === 'copied-reading' &&
    answered === undefined &&
    copies.some(
      (copy) =>
        restsOn.every((id) => copy.restsOn.includes(id)) ||
        // Rows that were entered twice make equal figures down each column.
        (copy.about.of === 'build' && restsOn.some((id) => copy.restsOn.includes(id))),
    );
  return [...copies, ...questions.filter((question) => !isGuess(question) && !isSame(question))];
}
