import { sideOfValve } from '../../../../shared/schemas/words.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { asked } from '../common/asked.ts';
import type { Evidence, Side } from '../evidence.ts';
import type { SheetRow } from './rows.ts';

const SIDES: readonly Side[] = ['intake', 'exhaust'];
/** As many valves as this are no slip of one of them. */
const MANY = 3;

/** Doubts of one kind, in one wording, about valves of a side. */
const kindOf = ({ code, weight, id, about }: AssessedQuestion): string =>
  about.of === 'valve'
    ? `${code} ${weight} ${id.replace(`:${about.cylinder}-${about.valve}:`, ':')}`
    : `${code} ${id}`;

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
    const own = questions.filter(({ about }) => about.of === 'valve' && sideOfValve(about.valve) === side);
    const read = rows.filter(
      ({ valve, lobes, everyLift }) => sideOfValve(valve) === side && lobes.length + everyLift.length > 0,
    ).length;
    return [...new Set(own.map(kindOf))].flatMap((kind) => {
      const alike = own.filter((question) => kindOf(question) === kind && question.answered === undefined);
      const [first] = alike;
      if (first === undefined || alike.length < MANY || 2 * alike.length <= read) return [];
      const question = asked(
        {
          code: first.code,
          weight: first.weight,
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
        },
      );
      return [{ question, instead: alike }];
    });
  });
  const gone = new Set(merged.flatMap(({ instead }) => instead));
  return [...questions.filter((each) => !gone.has(each)), ...merged.map(({ question }) => question)];
}
