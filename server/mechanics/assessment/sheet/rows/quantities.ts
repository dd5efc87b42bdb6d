import { defined } from '../../../../../shared/defined.ts';
import type { AssessedQuantity } from '../../assessment.ts';
import { valveSubject } from '../../common/said.ts';
import type { SheetCellDetail, SheetRowDetail } from './detail.ts';

const HOW: Readonly<Record<string, string>> = { light: 'light spring', running: 'running spring' };

/** The ends of a figure: as they are known, else as far as its tool may be off. */
function endsOf({ value, low, high, half }: SheetCellDetail) {
  if (value === undefined || low !== undefined || high !== undefined) return { ...defined({ low, high }) };
  return { low: value - half, high: value + half };
}

function quantityOf(row: SheetRowDetail, cell: SheetCellDetail): AssessedQuantity {
  const { kind, spring, value } = cell;
  return {
    id: ['sheet', kind, ...(spring === undefined ? [] : [spring]), `${row.cylinder}-${row.valve}`].join(':'),
    name: cell.title,
    about: valveSubject(row),
    dimension: 'length',
    ...defined({ value }),
    ...endsOf(cell),
    basis: 'measured',
    conditions: spring === undefined ? [] : [HOW[spring] ?? 'spring not said', 'lash not said'],
    lacks: cell.lacks,
    restsOn: [...cell.entryIds].sort(),
  };
}

/** Every figure of the sheet that was read. */
export const rowQuantities = (rows: readonly SheetRowDetail[]): AssessedQuantity[] =>
  rows.flatMap((row) => row.cells.map((cell) => quantityOf(row, cell)));
