import type { FaultCode } from '../../../shared/problems/faults.ts';
import { COLUMNS, type Column } from './columns.ts';
import { readCsv } from './csv-text.ts';
import { readCell } from './read-cell.ts';

/** What is wrong with a file, and where: the header is row 1. */
export interface RowFault {
  readonly row: number;
  /** The column; empty when it is the row as a whole. */
  readonly field: string;
  readonly code: FaultCode;
  readonly detail: string;
  readonly typed: string;
}

/** A row without a fault: the columns that the file has, and no others. */
export interface FileRow {
  readonly row: number;
  readonly code: string;
  readonly values: Readonly<Record<string, string | number | null>>;
}

interface FileReading {
  readonly rows: readonly FileRow[];
  readonly faults: readonly RowFault[];
  /** Rows below the header that are not empty. */
  readonly count: number;
  /** The file as a whole can't be read, so that no row of it can be taken by itself. */
  readonly unreadable: boolean;
}

const MOST_ROWS = 5000;
const MOST_FAULTS = 500;
/** A header with more that is wrong is no header of such a file. */
const MOST_HEAD_FAULTS = 40;
/** Letters of a row that a fault quotes. */
const TOLD = 200;

const isBlank = (cells: readonly string[]) => cells.every((cell) => cell.trim() === '');

function headFaults(names: readonly string[]): RowFault[] {
  const fault = (field: string, code: FaultCode, detail: string): RowFault => ({
    row: 1,
    field,
    code,
    detail,
    typed: field,
  });
  const allowed = COLUMNS.map((column) => column.name);
  const before = new Set<string>();
  const wrong = names.flatMap((name) => {
    if (!allowed.includes(name))
      return [
        fault(name.slice(0, TOLD), 'unknown-field', `is no column; the columns are ${allowed.join(', ')}`),
      ];
    if (before.has(name)) return [fault(name, 'not-allowed', 'stands there twice')];
    before.add(name);
    return [];
  });
  return [
    ...wrong.slice(0, MOST_HEAD_FAULTS),
    ...COLUMNS.filter((column) => column.holds === 'text' && column.required)
      .filter((column) => !names.includes(column.name))
      .map((column) => ({ ...fault(column.name, 'required', 'is a column that must be there'), typed: '' })),
  ];
}

type Cells = { readonly values: Record<string, string | number | null>; readonly faults: RowFault[] };

function cellsOf(row: number, cells: readonly string[], columns: readonly Column[]): Cells {
  const values: Record<string, string | number | null> = {};
  const faults: RowFault[] = [];
  if (cells.length !== columns.length) {
    const detail = `has ${cells.length} cells; the header has ${columns.length}`;
    return {
      values,
      faults: [{ row, field: '', code: 'not-allowed', detail, typed: cells.join(',').slice(0, TOLD) }],
    };
  }
  columns.forEach((column, index) => {
    const typed = cells[index] ?? '';
    const read = readCell(typed, column);
    if (read.ok) values[column.name] = read.value;
    else
      faults.push({
        row,
        field: column.name,
        code: read.code,
        detail: read.detail,
        typed: typed.slice(0, TOLD),
      });
  });
  return { values, faults };
}

/** Reads the catalogue's file; every fault is told with its row, column, code and the text that stands there. */
export function readFile(text: string): FileReading {
  const cut = readCsv(text);
  if (!cut.ok) {
    const fault: RowFault = { row: cut.line, field: '', code: 'not-allowed', detail: cut.detail, typed: '' };
    return { rows: [], faults: [fault], count: 0, unreadable: true };
  }
  const names = (cut.rows[0]?.cells ?? []).map((name) => name.trim().toLowerCase());
  const body = cut.rows.map(({ cells }, index) => ({ row: index + 1, cells })).slice(1);
  const filled = body.filter(({ cells }) => !isBlank(cells));
  const head = headFaults(names);
  if (head.length > 0) return { rows: [], faults: head, count: filled.length, unreadable: true };
  if (filled.length > MOST_ROWS) {
    const detail = `has ${filled.length} rows; ${MOST_ROWS} at the most`;
    return {
      rows: [],
      faults: [{ row: 1, field: '', code: 'too-many', detail, typed: '' }],
      count: filled.length,
      unreadable: true,
    };
  }
  const columns = names.flatMap((name) => COLUMNS.filter((column) => column.name === name));
  return { ...rowsOf(filled, columns), count: filled.length, unreadable: false };
}

function rowsOf(
  filled: readonly { readonly row: number; readonly cells: readonly string[] }[],
  columns: readonly Column[],
): Pick<FileReading, 'rows' | 'faults'> {
  const rows: FileRow[] = [];
  const faults: RowFault[] = [];
  const firstAt = new Map<string, number>();
  for (const { row, cells } of filled) {
    const read = cellsOf(row, cells, columns);
    const code = String(read.values.code ?? '');
    const before = code === '' ? undefined : firstAt.get(code);
    if (before !== undefined) {
      const detail = `stands in row ${before} too`;
      read.faults.push({ row, field: 'code', code: 'not-allowed', detail, typed: code });
    } else if (code !== '') firstAt.set(code, row);
    faults.push(...read.faults);
    if (read.faults.length === 0) rows.push({ row, code, values: read.values });
  }
  return { rows, faults: faults.slice(0, MOST_FAULTS) };
}
