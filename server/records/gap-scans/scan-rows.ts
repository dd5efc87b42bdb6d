import { InputFaults } from '../../../shared/problems/faults.ts';
import { CAN_BE } from '../../../shared/schemas/can-be.ts';
import { crankAngle } from '../../../shared/schemas/crank-angle.ts';
import { gauged } from '../../../shared/schemas/gauged.ts';
import type { ScanReading } from './gap-scan-table.ts';
import { cellsIn, partsOf } from './scan-cells.ts';
import {
  HEADINGS_ALLOWED,
  LONGEST_HEADING,
  readBlankHeading,
  readScanHeading,
  type ScanColumn,
} from './scan-headings.ts';

const ANGLE = crankAngle('crank angle');
const GAP = gauged('the gap', CAN_BE.gap);

/** What is wrong with one row of the text. */
interface RowFault {
  readonly line: number;
  readonly column: 'crank angle' | 'gap' | 'row' | 'heading';
  readonly detail: string;
  readonly received: string;
}

export interface ScanRows {
  readonly readings: readonly (ScanReading & { readonly line: number })[];
  readonly faults: readonly RowFault[];
}

/** No row of two figures is longer; what is longer is looked at no further. */
const LONGEST_ROW = 200;

interface Row {
  readonly text: string;
  readonly line: number;
}

const fault = (line: number, column: RowFault['column'], detail: string, received: string): RowFault => ({
  line,
  column,
  detail,
  received: received.slice(0, LONGEST_HEADING),
});

/** Angle and gap, where nothing heads the columns, or one of each is headed. */
const USUAL: readonly ScanColumn[] = [{ holds: 'angle' }, { holds: 'gap' }];

/** The cells of a row; of more columns than two each has its place, empty or not. */
function cellsOf(text: string, columns: readonly ScanColumn[]): string[] {
  if (columns.length === 2)
    return cellsIn(text).filter((cell, at, all) => cell !== '' || at < all.length - 1);
  return partsOf(text);
}

function readRow({ text, line }: Row, columns: readonly ScanColumn[], unit: string): ScanRows {
  const wrong = (column: RowFault['column'], detail: string, received: string): ScanRows => ({
    readings: [],
    faults: [fault(line, column, detail, received)],
  });
  if (text.length > LONGEST_ROW) return wrong('row', `is longer than ${LONGEST_ROW} signs`, text);
  const cells = cellsOf(text, columns);
  const filled = columns.flatMap((column, at) => {
    const cell = cells[at] ?? '';
    return cell === '' ? [] : [{ column, cell }];
  });
  const angles = filled.flatMap(({ column, cell }) =>
    column.holds === 'angle' ? [{ ...column, cell }] : [],
  );
  const gaps = filled.flatMap(({ column, cell }) => (column.holds === 'gap' ? [{ ...column, cell }] : []));
  const [at, gap] = [angles[0], gaps[0]];
  if (
    at === undefined ||
    gap === undefined ||
    angles.length + gaps.length > 2 ||
    cells.length > columns.length
  )
    return wrong('row', 'must have two columns, the crank angle and the gap there', text);
  // At top dead centre itself there is no side.
  const side = at.side === undefined || /^t\.?d/i.test(at.cell) ? '' : ` ${at.side}`;
  const angle = ANGLE.safeParse({ typed: `${at.cell}${side}`, assume: 'deg' });
  const read = GAP.safeParse({ typed: gap.cell, assume: gap.unit ?? unit });
  const said = (issues: readonly { readonly message: string }[]) =>
    issues.map(({ message }) => message).join('; ');
  if (angle.success && read.success)
    return { readings: [{ line, crankAngle: angle.data, gap: read.data }], faults: [] };
  return {
    readings: [],
    faults: [
      ...(angle.success ? [] : [fault(line, 'crank angle', said(angle.error.issues), at.cell)]),
      ...(read.success ? [] : [fault(line, 'gap', said(read.error.issues), gap.cell)]),
    ],
  };
}

/** A first row without a figure, written or said. */
function isHeading(text: string): boolean {
  if (text.length > LONGEST_ROW) return !/\d/.test(text.slice(0, LONGEST_ROW));
  if (/\d/.test(text)) return false;
  const cells = cellsIn(text);
  const [first = ''] = cells;
  const isAngle = !/^t\.?d/i.test(first) && ANGLE.safeParse({ typed: first, assume: 'deg' }).success;
  return !isAngle && !cells.slice(1).some((cell) => GAP.safeParse({ typed: cell, assume: 'in' }).success);
}

type Headed = { readonly columns: readonly ScanColumn[] } | { readonly faults: readonly RowFault[] };

/** The columns by their headings; one that is not known is named, since it could change what a figure means. */
function headedBy({ text, line }: Row): Headed {
  const wrong = (detail: string, received: string): Headed => ({
    faults: [fault(line, 'heading', detail, received)],
  });
  if (text.length > LONGEST_ROW)
    return wrong(`is longer than ${LONGEST_ROW} signs; ${HEADINGS_ALLOWED}`, text);
  const blank = readBlankHeading(text);
  const cells = partsOf(text);
  if (cells.length === 1 && blank !== undefined) return { columns: blank };
  const columns: ScanColumn[] = [];
  for (const cell of cells.at(-1) === '' ? cells.slice(0, -1) : cells) {
    const column = readScanHeading(cell);
    if (column === undefined) return wrong(`“${cell}” is no heading of a scan; ${HEADINGS_ALLOWED}`, cell);
    columns.push(column);
  }
  const gaps = columns.filter(({ holds }) => holds === 'gap').length;
  if (gaps !== 1 || columns.length < 2)
    return wrong(`must head one column of gaps and one or two of crank angles; ${HEADINGS_ALLOWED}`, text);
  return { columns };
}

const MOST_ROWS = 400;

/** Reads rows of crank angle and gap; empty rows are passed over, and a first row without a figure heads the columns. */
export function readScanRows(text: string, unit: string): ScanRows {
  const rows = text
    .split('\n')
    .map((each, index) => ({ text: each.trim(), line: index + 1 }))
    .filter((row) => row.text !== '');
  const [first] = rows;
  const isHeaded = first !== undefined && isHeading(first.text);
  const headed: Headed = isHeaded ? headedBy(first) : { columns: USUAL };
  if ('faults' in headed) return { readings: [], faults: headed.faults };
  const given = isHeaded ? rows.slice(1) : rows;
  const none = (line: number, detail: string, received: string): ScanRows => ({
    readings: [],
    faults: [fault(line, 'row', detail, received)],
  });
  if (given.length === 0) return none(1, 'has no reading: a crank angle and a gap in each row', '');
  if (given.length > MOST_ROWS)
    return none(
      given[MOST_ROWS]?.line ?? 1,
      `is past the ${MOST_ROWS} rows that a scan may have`,
      `${given.length} rows`,
    );
  const read = given.map((row) => readRow(row, headed.columns, unit));
  return { readings: read.flatMap(({ readings }) => readings), faults: read.flatMap(({ faults }) => faults) };
}

export const sayRowFault = ({ line, column, detail }: RowFault): string =>
  `line ${line}, ${column}: ${detail}`;

/** The readings of a text; with a row that can't be read none of it is kept. */
export function readingsOfText(text: string, unit: string): ScanReading[] {
  const { readings, faults } = readScanRows(text, unit);
  if (faults.length > 0)
    throw new InputFaults(
      faults.map((fault) => ({
        pointer: '/text',
        code: 'not-allowed',
        detail: sayRowFault(fault),
        received: fault.received,
      })),
    );
  return readings.map(({ line: _, ...reading }) => reading);
}
