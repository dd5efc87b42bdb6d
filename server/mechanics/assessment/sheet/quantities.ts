import type { AssessedQuantity } from '../assessment.ts';
import { valveSubject } from '../common/said.ts';
import type { SheetCellDetail, SheetRowDetail } from './detail.ts';

const HOW: Readonly<Record<string, string>> = { light: 'light spring', running: 'running spring' };

function quantityOf(row: SheetRowDetail, cell: SheetCellDetail): AssessedQuantity {
  const { kind, spring, value, low, high } = cell;
  return {
    id: ['sheet', kind, ...(spring === undefined ? [] : [spring]), `${row.cylinder}-${row.valve}`].join(':'),
    name: cell.title,
    about: valveSubject(row),
    dimension: 'length',
    ...(value === undefined ? {} : { value }),
    ...(low === undefined ? {} : { low }),
    ...(high === undefined ? {} : { high }),
    basis: 'measured',
    conditions: spring === undefined ? [] : [HOW[spring] ?? 'spring not said', 'lash not said'],
    lacks: cell.lacks,
    restsOn: [...cell.entryIds].sort(),
  };
}

/** Every figure of the sheet that was read. */
export const rowQuantities = (rows: readonly SheetRowDetail[]): AssessedQuantity[] =>
  rows.flatMap((row) => row.cells.map((cell) => quantityOf(row, cell)));
