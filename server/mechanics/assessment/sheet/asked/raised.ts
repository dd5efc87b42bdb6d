import type { Tolerances } from '../../../questions/tolerances.ts';
import type { AssessedQuestion } from '../../assessment.ts';
import type { Evidence } from '../../evidence.ts';
import type { SetUpKnown } from '../../ratio/compared/known.ts';
import { armLots } from '../rows/lots-of-swaps.ts';
import type { SheetRow } from '../rows/rows.ts';
import { besidesGroups } from '../sides/group-read.ts';
import { besidesCopies } from './besides-copies.ts';
import { columnsAlike } from './columns-alike.ts';
import { copiedColumns } from './copied.ts';
import { copiedRows } from './copied-rows.ts';
import { lashOfOne } from './lash-of-one.ts';
import { readOtherwise } from './read-otherwise.ts';
import { rowQuestions } from './row-questions.ts';
import { slipsLeft } from './slips-left.ts';

/** What the rows of a sheet, its columns, and readings that do not go together are asked. */
export function raisedByRows(
  evidence: Evidence,
  rows: readonly SheetRow[],
  known: readonly SetUpKnown[],
  tolerances?: Tolerances,
): AssessedQuestion[] {
  const lots = armLots(evidence, rows, known, new Set());
  const ofRows = [...rowQuestions(evidence, rows, tolerances), ...lashOfOne(evidence, rows)];
  return [
    ...besidesCopies(
      [
        ...besidesGroups(slipsLeft(evidence, ofRows, rows, lots), evidence, rows),
        ...copiedColumns(evidence, rows),
      ],
      [...columnsAlike(evidence, rows), ...copiedRows(evidence, rows)],
    ),
    ...readOtherwise(evidence, rows),
  ];
}
