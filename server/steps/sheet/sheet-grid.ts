import { inSpoken } from '../../../shared/quantities/authored.ts';
import { toldIn } from '../../../shared/quantities/spoken-units.ts';
import { newSheetReadings, SHEET_CAN_BE, SHEET_KINDS } from '../../../shared/schemas/sheet.ts';
import { SPRINGS } from '../../../shared/schemas/words.ts';
import type { ButtonData } from '../../../views/parts/button.examples.ts';
import { type Order, rowsInOrder } from '../../assessment/sheet/of-sheet.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import type { PageForm } from '../../call/forms.ts';
import { isStopped } from '../../call/under-stop.ts';
import type { SheetKindName, Spring } from '../../mechanics/assessment/evidence.ts';
import type { SheetDetail, SheetRowDetail } from '../../mechanics/assessment/sheet/rows/detail.ts';
import { newestDial } from '../../records/sheet/said-in-turns.ts';
import { tableComponent } from '../../web/components.ts';
import { asksOf, fieldId, rangeText } from '../../web/forms/fields.ts';
import { cellField } from './grid-fields.ts';
import { HOW, howGroup, lastHow } from './how-group.ts';
import { liftsTable } from './lifts-table.ts';
import { nextValve } from './next-valve.ts';
import { cellOf } from './sheet-text.ts';

const GRID = 'grid';

const isSpring = (text: string | undefined): text is Spring =>
  text !== undefined && Object.hasOwn(SPRINGS, text);

/** Every valve of the engine, also before anything was read. */
function gridRows(sheet: SheetDetail, order: Order): SheetRowDetail[] {
  const rows = rowsInOrder(sheet, order);
  if (rows.length > 0) return rows;
  return sheet.orders[order].flatMap((cylinder) =>
    sheet.names.map((valve) => ({
      cylinder,
      valve,
      cells: [],
      questionIds: [],
      inDoubt: false,
    })),
  );
}

/** The spring that the grid is typed in on: that of the last readings. */
export function gridSpring(context: CallContext): Spring {
  const { spring } = lastHow(context);
  return isSpring(spring) ? spring : 'not-said';
}

interface NextCell {
  readonly row: SheetRowDetail;
  readonly kind: 'lobe-lift' | 'valve-lift';
}

/** The cell that is typed into next: lobe first, then the valve. */
function nextCell(context: CallContext, sheet: SheetDetail, order: Order): NextCell | undefined {
  const next = nextValve(context, sheet, order);
  const row = gridRows(sheet, order).find(
    ({ cylinder, valve }) => cylinder === next.cylinder && valve === next.valve,
  );
  if (row === undefined) return undefined;
  return { row, kind: cellOf(row, 'lobe-lift') === undefined ? 'lobe-lift' : 'valve-lift' };
}

/** The way to that cell, where what is next is read into it and nothing is asked before. */
export function toNextCell(context: CallContext, sheet: SheetDetail, order: Order): ButtonData | undefined {
  const { next, questions } = context.assessment;
  const asked = questions.some(({ isNext, answered }) => isNext === true && answered === undefined);
  if (next?.step !== 'sheet' || next.turns !== true || next.corrects !== undefined || asked) return undefined;
  const cell = nextCell(context, sheet, order);
  return cell === undefined || isStopped(context)
    ? undefined
    : {
        label: 'Enter it',
        href: `#${fieldId(cellField(cell.row, cell.kind), { prefix: GRID })}`,
        kind: 'plain',
        key: 'n',
      };
}

/** Every valve as one table that is typed into, what was read above each entry. */
export function gridForm(context: CallContext, sheet: SheetDetail, order: Order): PageForm | undefined {
  const rows = gridRows(sheet, order);
  if (rows.length === 0) return undefined;
  const dial = newestDial(context.setUps);
  const next = nextCell(context, sheet, order);
  const spring = gridSpring(context);
  const nameOf = (row: SheetRowDetail, kind: SheetKindName) => `${SHEET_KINDS[kind]}, ${valveName(row)}`;
  const labels: Record<string, string> = { ...HOW };
  for (const row of rows)
    for (const kind of ['lobe-lift', 'valve-lift', 'lash', 'preload'] as const)
      labels[cellField(row, kind)] = nameOf(row, kind);
  return {
    name: GRID,
    action: `${context.base}/sheet/grid`,
    labels,
    schema: newSheetReadings,
    hidden: { order },
    initial: lastHow(context),
    groups: (shown) => [
      {
        hint: inSpoken(
          'A figure typed in is one more pass; what is left empty is not read. Arrow keys go from cell to cell. Between two gauges: “more than .024, less than .028”.',
        ),
        slots: [
          tableComponent(
            liftsTable(context, rows, spring, (row, kind) => {
              const name = cellField(row, kind);
              const error = shown.faults.find(({ field }) => field === name)?.detail;
              return {
                id: fieldId(name, shown),
                name,
                label: nameOf(row, kind),
                value: shown.typed[name] ?? '',
                reads: 'length',
                unit: toldIn('in'),
                canBe: rangeText(SHEET_CAN_BE[kind]),
                ...(dial === undefined ? {} : { perTurn: `${dial.value} ${dial.unit}` }),
                ...(error === undefined ? {} : { error }),
                ...asksOf(shown, name),
                ...(kind === next?.kind &&
                row.cylinder === next.row.cylinder &&
                row.valve === next.row.valve &&
                shown.faults.length === 0
                  ? { autofocus: true }
                  : {}),
              };
            }),
          ),
        ],
      },
      howGroup(context, shown, [], { folded: true }),
    ],
    buttons: [{ label: 'Save what was typed in', kind: 'primary', key: 'k' }],
  };
}
