import { SHEET_KINDS } from '../../../shared/schemas/sheet.ts';
import type { TableCell, TableData } from '../../../views/parts/table.examples.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { inches } from '../../mechanics/assessment/common/said.ts';
import type { Spring } from '../../mechanics/assessment/evidence.ts';
import type { SheetCellDetail, SheetRowDetail } from '../../mechanics/assessment/sheet/detail.ts';
import { allowance } from '../../mechanics/kit/allowances.ts';
import { cellOf, ON_SPRING, RATIO_ON, sayCell, sayPasses, sayRatio } from './sheet-text.ts';

/** What a figure is asked while nobody has looked; what a whole column is asked stands above it alone. */
function asksOf({ assessment }: CallContext, row: SheetRowDetail, { entryIds }: SheetCellDetail): string[] {
  return assessment.questions
    .filter(
      ({ id, about, answered }) =>
        about.of === 'valve' && row.questionIds.includes(id) && answered?.found !== false,
    )
    .filter(({ restsOn }) => restsOn.some((id) => entryIds.includes(id)))
    .map(({ ask }) => ask);
}

function leftOut({ record }: CallContext, { apart }: SheetCellDetail): string {
  const out = record.sheetReadings.filter(({ id }) => apart.some(({ entryId }) => entryId === id));
  return out.length === 0 ? '' : `left out: ${out.map(({ reading }) => reading.readAs).join(', ')}`;
}

function figureCell(context: CallContext, row: SheetRowDetail, cell: SheetCellDetail | undefined): TableCell {
  if (cell === undefined) return { text: '' };
  const why = [sayPasses(cell), leftOut(context, cell), ...cell.lacks, ...asksOf(context, row, cell)];
  const newest = context.record.sheetReadings.findLast(({ id }) => cell.entryIds.includes(id));
  return {
    text: sayCell(cell),
    ...(newest === undefined ? {} : { href: `${context.base}/sheet/readings/${newest.id}` }),
    ...(why.every((text) => text === '') ? {} : { why: why.filter((text) => text !== '').join('; ') }),
  };
}

/** Valves with their lifts on one spring, each figure a link to its newest reading. */
export function liftsTable(context: CallContext, rows: readonly SheetRowDetail[], spring: Spring): TableData {
  const { sides, ratios } = context.assessment.details.sheet;
  const odd = sides.filter((side) => side.spring === spring).flatMap((side) => side.odd);
  const ratioOf = (row: SheetRowDetail) =>
    ratios.find((each) => each.spring === spring && valveName(each) === valveName(row));
  const extra = (['lash', 'preload'] as const).filter((kind) =>
    rows.some((row) => cellOf(row, kind) !== undefined),
  );
  return {
    caption: `Every valve, ${ON_SPRING[spring]}, inches`,
    columns: [
      { label: 'Valve' },
      { label: 'Arm on it' },
      { label: 'Lobe lift', number: true },
      { label: 'Valve lift', number: true },
      { label: RATIO_ON[spring], number: true },
      ...extra.map((kind) => ({ label: SHEET_KINDS[kind], number: true })),
    ],
    rows: rows.map((row) => ({
      ...(odd.some((each) => valveName(each) === valveName(row)) ? { odd: true } : {}),
      cells: [
        valveName(row),
        row.armName ?? '',
        figureCell(context, row, cellOf(row, 'lobe-lift')),
        figureCell(context, row, cellOf(row, 'valve-lift', spring)),
        ratioCell(ratioOf(row)),
        ...extra.map((kind) => figureCell(context, row, cellOf(row, kind))),
      ],
    })),
    note: `Intakes are set against intakes, exhausts against exhausts; a valve is marked past ${inches(allowance('odd-beyond'))} from the median of its siblings (common practice, no published source).`,
  };
}

function ratioCell(ratio: Parameters<typeof sayRatio>[0] & { lobeFrom?: 'read' | 'card' } = {}): TableCell {
  return { text: sayRatio(ratio), ...(ratio.lobeFrom === 'card' ? { why: 'over the card’s lobe' } : {}) };
}
