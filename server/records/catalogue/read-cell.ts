import type { FaultCode } from '../../../shared/problems/faults.ts';
import { formatNumber } from '../../../shared/quantities/format.ts';
import { readNumber } from '../../../shared/quantities/read-number.ts';
import { UNITS } from '../../../shared/quantities/units.ts';
import type { Column } from './columns.ts';
import { unguarded } from './csv-text.ts';

type CellReading =
  | { readonly ok: true; readonly value: string | number | null }
  | { readonly ok: false; readonly code: FaultCode; readonly detail: string };

const no = (code: FaultCode, detail: string): CellReading => ({ ok: false, code, detail });
const yes = (value: string | number | null): CellReading => ({ ok: true, value });

function text(cell: string, column: Extract<Column, { holds: 'text' }>): CellReading {
  const plain = unguarded(column.required ? cell.trim() : cell);
  if (column.required && plain === '') return no('required', 'must not be empty');
  if (plain.length > column.most)
    return no('out-of-range', `has ${plain.length} characters; ${column.most} at the most`);
  return yes(plain);
}

function word(cell: string, column: Extract<Column, { holds: 'word' }>): CellReading {
  const plain = cell.trim().toLowerCase();
  if (plain === '' || Object.hasOwn(column.words, plain)) return yes(plain);
  return no('not-allowed', `must be one of ${Object.keys(column.words).join(', ')}, or empty`);
}

/** `.4375`, `7/16` and `11.11 mm` are the same cell; a number without a unit is in inches, as the column says. */
function length(cell: string, column: Extract<Column, { holds: 'length' }>): CellReading {
  if (cell.trim() === '') return yes(null);
  const read = readNumber(cell, { kind: 'length', assume: 'in' });
  if (!read.ok) {
    if (read.fault) return no(read.fault.code, read.fault.detail);
    return no('not-allowed', `can be read as ${read.ambiguities.map((each) => each.readAs).join(' or as ')}`);
  }
  const unit = read.unit ?? 'in';
  const inches = unit === 'in' ? read.value : (read.value * UNITS[unit].toSi) / UNITS.in.toSi;
  if (inches >= column.least && inches <= column.most) return yes(inches);
  const bound = (value: number) => formatNumber(value, 3);
  return no('out-of-range', `must be ${bound(column.least)} to ${bound(column.most)} in`);
}

function number(cell: string, column: Extract<Column, { holds: 'number' }>): CellReading {
  if (cell.trim() === '') return yes(null);
  const read = readNumber(cell, { kind: 'ratio' });
  if (!read.ok) return no(read.fault?.code ?? 'not-a-number', read.fault?.detail ?? 'must be a number');
  if (read.value > column.above && read.value <= column.most) return yes(read.value);
  return no('out-of-range', `must be above ${column.above} and at most ${column.most}`);
}

/** One cell by its column: empty is not known, anything else is read or told what is wrong with it. */
export function readCell(cell: string, column: Column): CellReading {
  if (column.holds === 'text') return text(cell, column);
  if (column.holds === 'word') return word(cell, column);
  return column.holds === 'length' ? length(cell, column) : number(cell, column);
}
