import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { SIDES } from '../../../../shared/sides.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import type { Evidence } from '../evidence.ts';
import type { SheetRow } from './rows.ts';

/** As many valves as this are no slip of one of them. */
const MANY = 3;

/** Nobody has the digits of a whole side the wrong way round: it is chance, and what siblings say against it counts. */
const NEVER_OF_ALL: ReadonlySet<string> = new Set(['digits-swapped']);

/** Of a whole side it is one guess among others (lash, dial, another set), however well the figures fit. */
const GUESS_OF_ALL: ReadonlySet<string> = new Set(['hand-read-backwards']);

/** Doubts of one kind, in one wording, about valves of a side. */
const kindOf = ({ code, id, about }: AssessedQuestion): string =>
  about.of === 'valve' ? `${code} ${id.replace(`:${about.cylinder}-${about.valve}:`, ':')}` : `${code} ${id}`;

/**
 * What most valves of a side are asked alike is one slip: of the card, of the dial, or of how it was read. It is asked
 * once, of the side, and rests on all of those readings.
 */
export function onceOfSide(
  { answers }: Evidence,
  rows: readonly SheetRow[],
  questions: readonly AssessedQuestion[],
): AssessedQuestion[] {
  const merged = SIDES.flatMap((side) => {
    const own = questions.filter(
      ({ about, code }) =>
        about.of === 'valve' && sideOfValve(about.valve) === side && !NEVER_OF_ALL.has(code),
    );
    const read = rows.filter(
      ({ valve, lobes, everyLift }) => sideOfValve(valve) === side && lobes.length + everyLift.length > 0,
    ).length;
    return [...new Set(own.map(kindOf))].flatMap((kind) => {
      const alike = own.filter((question) => kindOf(question) === kind && question.answered === undefined);
      // One that is strong on most of them is strong; of these the first speaks.
      const strong = alike.filter(({ weight }) => weight === 'strong');
      const [first] =
        2 * strong.length > alike.length ? strong : alike.filter(({ weight }) => weight === 'weak');
      if (first === undefined || alike.length < MANY || 2 * alike.length <= read) return [];
      const question = asked(
        {
          code: first.code,
          weight: GUESS_OF_ALL.has(first.code) ? 'weak' : first.weight,
          ask: first.ask,
          size: `It is so on ${alike.length} of ${read} ${side} valves: one slip, or the card is another cam’s. ${first.size ?? ''}`.trim(),
          test: first.test,
          restsOn: alike.flatMap(({ restsOn }) => restsOn),
        },
        {
          about: { of: 'side', valve: side },
          step: 'sheet',
          among: kind.split(':').slice(1, -1).join('-'),
          answers,
          choices: first.answers,
        },
      );
      return [{ question, instead: alike }];
    });
  });
  const gone = new Set(merged.flatMap(({ instead }) => instead));
  return [...questions.filter((each) => !gone.has(each)), ...merged.map(({ question }) => question)];
}
