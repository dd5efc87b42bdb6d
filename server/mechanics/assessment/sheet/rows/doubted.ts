import type { AssessedQuestion } from '../../assessment.ts';
import type { SheetRow } from './rows.ts';

/** The lifts that doubts of a row are about; where they are about its lobe or the card, all of them. */
export function doubtedLifts({ everyLift }: SheetRow, doubts: readonly AssessedQuestion[]): string[] {
  const lifts = everyLift.flatMap(({ readings }) => readings.map(({ id }) => id));
  return doubts.flatMap(({ restsOn }) => {
    const own = lifts.filter((id) => restsOn.includes(id));
    return own.length > 0 ? own : lifts;
  });
}
