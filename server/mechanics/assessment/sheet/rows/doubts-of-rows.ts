import type { AssessedQuestion } from '../../assessment.ts';
import { inDoubt } from '../../common/asked.ts';
import { placeOf } from '../../common/said.ts';
import { doubtedLifts } from './doubted.ts';
import { isOf } from './row-detail.ts';
import type { SheetRow } from './rows.ts';

/** What is in doubt of each row: `doubtful` are the places of those rows, `doubted` the lifts that do not count till then. */
export function doubtsOfRows(rows: readonly SheetRow[], raised: readonly AssessedQuestion[]) {
  const doubtsOf = (row: SheetRow) => raised.filter((each) => inDoubt(each) && isOf(each, row));
  return {
    doubtsOf,
    doubtful: new Set(rows.filter((row) => doubtsOf(row).length > 0).map(placeOf)),
    doubted: new Set(rows.flatMap((row) => doubtedLifts(row, doubtsOf(row)))),
  };
}
