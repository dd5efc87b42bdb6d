import type { Slot } from '../../../../views/parts/part.ts';
import type { Explained } from '../../../readings/explain.ts';
import { ASK } from '../../../readings/pages/cause-words.ts';
import { explanationsTable, leadSlot } from '../../../readings/pages/explained-slots.ts';
import { nextReadingSlots } from '../../../readings/pages/next-reading.ts';
import type { SetUpRatio } from '../../../readings/ratio.ts';
import type { Sight } from '../../pages/sight.ts';
import { said, textOf, withoutNote } from '../slots.ts';

/** The likeliest few; the step shows more. */
const MOST = 3;

/** What would have to be true, and the next reading worth taking with what each outcome would mean. */
export function explainedSlots(sight: Sight, found: SetUpRatio, explained: Explained | undefined): Slot[] {
  if (explained === undefined) return [];
  const likely = { ...explained, explanations: explained.explanations.slice(0, MOST) };
  const next = nextReadingSlots(sight, found.setUp, explained, undefined);
  return [
    // What follows the first of the next reading’s leads to a form, and paper has none.
    ...said('What would explain the readings', [
      textOf(leadSlot(explained, found.setUp.method.spring)),
      ...next.slots.slice(0, 1).map(textOf),
    ]),
    withoutNote(explanationsTable(likely)),
  ];
}

/** The next reading of a set-up as one sentence. */
export const nextOfSetUp = ({ nextReading: next }: Explained): string | undefined =>
  next === undefined ? undefined : `${ASK[next.action]} About ${next.minutes} min.`;
