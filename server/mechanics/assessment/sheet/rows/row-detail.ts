import { defined } from '../../../../../shared/defined.ts';
import { sideOfValve } from '../../../../../shared/schemas/words.ts';
import type { AssessedQuestion } from '../../assessment.ts';
import { inDoubt } from '../../common/asked.ts';
import { placeOf } from '../../common/said.ts';
import type { Evidence } from '../../evidence.ts';
import { WHOSE_VALVE } from '../../ratio/compared/lobe-low.ts';
import { figureCells, type GapCell, inColumns } from './cells.ts';
import type { SheetRowDetail } from './detail.ts';
import type { SheetRow } from './rows.ts';

const readingsOf = ({ lobes, everyLift }: SheetRow): string[] =>
  [...lobes, ...everyLift.flatMap(({ readings }) => readings)].map(({ id }) => id);

/** Asked of rows of both sides at once, and resting on what was read there. */
const OF_SHEET: ReadonlySet<string> = new Set(['copied-reading', 'lifts-exchanged']);

/** Whether a question doubts a row: it is of that valve, or of its side and rests on what was read there. */
export function isOf({ about, code, restsOn }: AssessedQuestion, row: SheetRow): boolean {
  if (about.of === 'side')
    return about.valve === sideOfValve(row.valve) && readingsOf(row).some((id) => restsOn.includes(id));
  // Of the whole sheet: rows that are others entered twice, or whose columns are exchanged.
  if (about.of === 'build' && OF_SHEET.has(code)) return readingsOf(row).some((id) => restsOn.includes(id));
  if (about.of !== 'valve') return false;
  // Of both valves of a cylinder, taken for one another.
  const isOfBoth = code === WHOSE_VALVE && about.cylinder === row.cylinder;
  return placeOf(about) === placeOf(row) || (isOfBoth && readingsOf(row).some((id) => restsOn.includes(id)));
}

/** A row as pages show it: its figures, what it is asked, and whether that keeps it from its siblings. */
export function rowDetail(
  evidence: Evidence,
  row: SheetRow,
  gaps: readonly GapCell[],
  questions: readonly AssessedQuestion[],
): SheetRowDetail {
  const own = questions.filter((question) => isOf(question, row));
  const armName = evidence.arms.find(({ id }) => id === row.armId)?.name;
  return {
    cylinder: row.cylinder,
    valve: row.valve,
    ...defined({ armId: row.armId, armName }),
    cells: inColumns([...figureCells(evidence, row), ...gaps.map(({ cell }) => cell)]),
    questionIds: own.map(({ id }) => id),
    inDoubt: own.some(inDoubt),
  };
}
