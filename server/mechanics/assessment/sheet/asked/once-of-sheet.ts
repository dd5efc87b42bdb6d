import type { AssessedQuestion } from '../../assessment.ts';
import { asked } from '../../common/asked.ts';
import type { Evidence } from '../../evidence.ts';

/** The word of the question whether lobe and valve lift stand under one another’s name. */
export const EXCHANGED = 'lifts-exchanged';

/** Two columns are exchanged on the whole sheet: what both sides are asked of it is asked once. */
export function onceOfSheet(
  { answers }: Evidence,
  questions: readonly AssessedQuestion[],
): AssessedQuestion[] {
  const ofSides = questions.filter(
    ({ code, about, answered }) => code === EXCHANGED && about.of === 'side' && answered === undefined,
  );
  const [first] = ofSides;
  if (first === undefined) return [...questions];
  const which = first.about.of === 'side' && ofSides.length === 1 ? `${first.about.valve} ` : '';
  const question = asked(
    {
      code: EXCHANGED,
      weight: first.weight,
      ask: `Could the columns of the ${which}lobe and valve lifts be exchanged?`,
      knownBy: 'could the columns of the lobe and valve lifts be exchanged',
      size: first.size?.replace(/^It is so on [^:]*: [^.]*\. /, '') ?? '',
      test: 'Ask which column is which: what was read at the lifter, and what at the retainer.',
      testAtBench: 'Say which column is which: what was read at the lifter, and what at the retainer.',
      restsOn: ofSides.flatMap(({ restsOn }) => restsOn),
    },
    {
      about: ofSides.length > 1 ? { of: 'build' } : first.about,
      step: 'sheet',
      answers,
      choices: first.answers,
    },
  );
  return [...questions.filter((each) => !ofSides.includes(each)), question];
}
