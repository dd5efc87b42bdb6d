import { formatNumber, formatQuantity } from '../../../shared/quantities/format.ts';
import { putRightBy } from './entries.ts';
import type { Tolerances } from './tolerances.ts';
import type { Question, QuestionInput } from './types.ts';
import { ENTER_AGAIN, inch } from './words.ts';

const MM_PER_INCH = 25.4;

/** What was divided by 25.4 once too often is so small that a thousandth more is told: as it was typed. */
const small = (value: number): string =>
  formatQuantity({ value: Number(value.toPrecision(12)), unit: 'in' }, { places: 4 });

/** Row 5: millimetres taken for inches, or turned into inches once too often. */
export function unitMixed(input: QuestionInput, tolerances: Tolerances): Question[] {
  return putRightBy(input, tolerances, [1 / MM_PER_INCH, MM_PER_INCH]).map(({ entry, lift, fits }) => ({
    code: 'unit-mixed',
    weight: fits ? 'strong' : 'weak',
    ask:
      lift < entry.lift
        ? `Could the ${entry.name} of ${formatNumber(entry.lift, 2)} be millimetres?`
        : `Could the ${entry.name}, ${small(entry.lift)}, have been inches already before it was divided by 25.4?`,
    size: `That makes ${inch(lift)}.`,
    test: ENTER_AGAIN,
    restsOn: entry.restsOn,
  }));
}
