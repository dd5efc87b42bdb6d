import type { AssessedQuestion } from '../../assessment.ts';
import { passNamed } from '../read/answers.ts';
import type { RatioLack } from '../read/lack.ts';

/** Doubts whose yes says what a figure is instead of what was to be read: it is entered again, whatever else it might be. */
const SAYS_WHAT_IT_IS: ReadonlySet<string> = new Set([
  'gross-lift-as-lobe',
  'unit-mixed',
  'decimal-slip',
  'lifts-exchanged',
  'pass-of-other-lift',
  'digits-swapped',
  'copied-reading',
  'caliper-on-lobe',
  'turn-miscounted',
  'hand-read-backwards',
]);

const restsWithin = (ids: readonly string[], found: ReadonlySet<string>): boolean =>
  ids.length > 0 && ids.every((id) => found.has(id));

const isOfAll = ({ answered }: AssessedQuestion): boolean =>
  answered === undefined || passNamed(answered) === undefined;

/** Questions without those about figures that another answer has found wrong already: nobody asks twice what they are. */
export function withoutMoot(questions: readonly AssessedQuestion[]): AssessedQuestion[] {
  const found = questions.filter(
    ({ code, answered }) => SAYS_WHAT_IT_IS.has(code) && answered?.found === true,
  );
  // Found on one pass alone, it says nothing of the others.
  const wrong = new Set(found.filter(isOfAll).flatMap(({ restsOn }) => restsOn));
  return questions.filter(
    ({ code, answered, restsOn }) =>
      answered !== undefined || !SAYS_WHAT_IT_IS.has(code) || !restsWithin(restsOn, wrong),
  );
}

/** A pass that lies apart, and is entered again because of an answer: told once, by the answer. */
export function withoutTwice(lacks: readonly RatioLack[]): RatioLack[] {
  const answered = new Set(
    lacks.flatMap((lack) => (lack.code === 'enter-again' && !lack.byOthers ? lack.entryIds : [])),
  );
  return lacks.filter(
    (lack) => lack.code !== 'enter-again' || !lack.byOthers || !restsWithin(lack.entryIds, answered),
  );
}
