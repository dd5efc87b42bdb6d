import { putRightBy } from './entries.ts';
import type { Tolerances } from './tolerances.ts';
import type { Question, QuestionInput } from './types.ts';
import { ENTER_AGAIN, inch } from './words.ts';

/** Row 6: a number that fits once its point is moved by one place. */
export function decimalSlip(input: QuestionInput, tolerances: Tolerances): Question[] {
  return putRightBy(input, tolerances, [10, 0.1]).map(({ entry, lift, fits }) => ({
    code: 'decimal-slip',
    weight: fits ? 'strong' : 'weak',
    ask: `Could the point be misplaced in the ${entry.name}, ${inch(entry.lift)}?`,
    size: `Moved one place it makes ${inch(lift)}.`,
    test: ENTER_AGAIN,
    restsOn: entry.restsOn,
  }));
}
