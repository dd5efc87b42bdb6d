import { siIf } from '../../../shared/schemas/entered.ts';
import { sideOfValve } from '../../../shared/schemas/words.ts';
import type { Assessment, Judgement } from '../../mechanics/assessment/assessment.ts';
import type { SheetCellDetail, SheetRowDetail } from '../../mechanics/assessment/sheet/rows/detail.ts';
import { medianKnown } from '../../mechanics/valve-sheet/siblings.ts';
import type { BuildRecord } from '../../records/whole-build/build-record.ts';
import { gapJudgements } from './of-sheet.ts';

const RANK: Readonly<Record<string, number>> = { short: 0, close: 1, clear: 3 };
const UNTOLD = 2;

/** How a gap stands: by its word, then by what is left over its limit at the least. */
function standing(
  { word, id }: Judgement,
  cells: readonly SheetCellDetail[],
  limit: number,
): [number, number] {
  const cell = cells.find(({ judgementId }) => judgementId === id);
  const least = cell?.low ?? cell?.value;
  return [
    word === undefined ? UNTOLD : (RANK[word] ?? UNTOLD),
    least === undefined ? Number.NEGATIVE_INFINITY : least - limit,
  ];
}

const worse = (a: [number, number], b: [number, number]): number => a[0] - b[0] || a[1] - b[1];

/** The gaps that were read, the worst first: valves with their rows, and what is told of each. */
export function worstFirst(assessment: Assessment): {
  readonly rows: readonly SheetRowDetail[];
  readonly sentences: readonly string[];
} {
  const { rows } = assessment.details.sheet;
  const cells = rows.flatMap((row) => row.cells);
  const told = gapJudgements(assessment).map((judgement) => ({
    judgement,
    at: standing(judgement, cells, judgement.against.to === 'limit' ? judgement.against.limit : 0),
  }));
  const inOrder = told.toSorted((a, b) => worse(a.at, b.at));
  const rowOf = ({ id }: Judgement) =>
    rows.find((row) => row.cells.some(({ judgementId }) => judgementId === id));
  return {
    rows: [...new Set(inOrder.flatMap(({ judgement }) => rowOf(judgement) ?? []))],
    sentences: inOrder.map(({ judgement }) => judgement.sentence),
  };
}

interface LashRow {
  readonly row: SheetRowDetail;
  readonly cell: SheetCellDetail;
  /** Lash less what the card asks for, or less the middle of its side [m]. */
  readonly off?: number;
  readonly from: 'card' | 'side';
}

/** Lashes by valve, the farthest off first; between two gauges there is no figure to be off by, and it stands last. */
export function lashWorstFirst({ build }: BuildRecord, { details }: Assessment): LashRow[] {
  const read = details.sheet.rows.flatMap((row) =>
    row.cells.filter(({ kind }) => kind === 'lash').map((cell) => ({ row, cell })),
  );
  const found = read.map(({ row, cell }): LashRow => {
    const card = siIf(build.spec.cam?.[sideOfValve(row.valve)]?.lash);
    const side = read
      .filter((each) => sideOfValve(each.row.valve) === sideOfValve(row.valve))
      .map((each) => each.cell.value);
    const middle = card ?? medianKnown(side);
    const from = card === undefined ? 'side' : 'card';
    return cell.value === undefined || middle === undefined
      ? { row, cell, from }
      : { row, cell, from, off: cell.value - middle };
  });
  const far = ({ off }: LashRow) => (off === undefined ? -1 : Math.abs(off));
  return found.toSorted((a, b) => far(b) - far(a) || a.row.cylinder - b.row.cylinder);
}
