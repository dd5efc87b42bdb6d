import { asEntered } from '../../../shared/quantities/as-entered.ts';
import { SHEET_KINDS } from '../../../shared/schemas/sheet.ts';
import type { CellInput, TableCell, TableData } from '../../../views/parts/table.examples.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { cardId } from '../../call/question-form.ts';
import { inches } from '../../mechanics/assessment/common/said.ts';
import type { SheetKindName, Spring } from '../../mechanics/assessment/evidence.ts';
import type { SheetCellDetail, SheetRowDetail } from '../../mechanics/assessment/sheet/rows/detail.ts';
import { allowance } from '../../mechanics/kit/allowances.ts';
import { cellOf, ON_SPRING, RATIO_ON, sayCell, sayPasses, sayRatio } from './sheet-text.ts';

/** What a figure is asked while nobody has looked, with the way to its card; of a whole column it stands above alone. */
function asksOf(
  { assessment }: CallContext,
  row: SheetRowDetail,
  { entryIds }: SheetCellDetail,
): NonNullable<TableCell['asks']> {
  return assessment.questions
    .map((question, at) => ({ question, at }))
    .filter(
      ({ question: { id, about, answered, restsOn } }) =>
        about.of === 'valve' &&
        row.questionIds.includes(id) &&
        answered?.found !== false &&
        restsOn.some((entry) => entryIds.includes(entry)),
    )
    .map(({ question, at }) => ({ text: question.ask, href: `#${cardId(at)}` }));
}

function leftOut({ record }: CallContext, { apart, readAgain = [] }: SheetCellDetail): string {
  const out = record.sheetReadings.filter(
    ({ id }) => readAgain.includes(id) || apart.some(({ entryId }) => entryId === id),
  );
  return out.length === 0
    ? ''
    : `left out: ${out.map(({ reading }) => asEntered(reading.readAs)).join(', ')}`;
}

function figureCell(context: CallContext, row: SheetRowDetail, cell: SheetCellDetail | undefined): TableCell {
  if (cell === undefined) return { text: '' };
  const why = [sayPasses(cell), leftOut(context, cell), ...cell.lacks];
  const newest = context.record.sheetReadings.findLast(({ id }) => cell.entryIds.includes(id));
  return {
    text: sayCell(cell),
    ...(newest === undefined ? {} : { href: `${context.base}/sheet/readings/${newest.id}` }),
    ...(why.every((text) => text === '') ? {} : { why: why.filter((text) => text !== '').join('; ') }),
    asks: asksOf(context, row, cell),
  };
}

/** What is typed into the cells of a sheet: the entry of one figure of one valve. */
type EntryOf = (row: SheetRowDetail, kind: SheetKindName) => CellInput;

/** Valves with their lifts on one spring, each figure a link to its newest reading; `entryOf` makes it a grid. */
export function liftsTable(
  context: CallContext,
  rows: readonly SheetRowDetail[],
  spring: Spring,
  entryOf?: EntryOf,
): TableData {
  const { sides, ratios } = context.assessment.details.sheet;
  const odd = sides.filter((side) => side.spring === spring).flatMap((side) => side.odd);
  const ratioOf = (row: SheetRowDetail) =>
    ratios.find((each) => each.spring === spring && valveName(each) === valveName(row));
  // A grid has no more columns than stand beside one another; lash and gaps have tables of their own below it.
  const extra = (['lash', 'preload'] as const).filter(
    (kind) => entryOf === undefined && rows.some((row) => cellOf(row, kind) !== undefined),
  );
  const figure = (row: SheetRowDetail, kind: SheetKindName, on?: Spring): TableCell => ({
    ...figureCell(context, row, cellOf(row, kind, on)),
    ...(entryOf === undefined ? {} : { input: entryOf(row, kind) }),
  });
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
        figure(row, 'lobe-lift'),
        figure(row, 'valve-lift', spring),
        ratioCell(ratioOf(row)),
        ...extra.map((kind) => figure(row, kind)),
      ],
    })),
    note: `Intakes are set against intakes, exhausts against exhausts; a valve is marked past ${inches(allowance('odd-beyond'))} from the median of the others (common practice, no published source).`,
  };
}

function ratioCell(ratio: Parameters<typeof sayRatio>[0] & { lobeFrom?: 'read' | 'card' } = {}): TableCell {
  return { text: sayRatio(ratio), ...(ratio.lobeFrom === 'card' ? { why: 'over the card’s lobe' } : {}) };
}
