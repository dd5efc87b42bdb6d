import { InputFaults } from '../../../shared/problems/faults.ts';
import { CAN_BE } from '../../../shared/schemas/can-be.ts';
import { crankAngle } from '../../../shared/schemas/crank-angle.ts';
import { gauged } from '../../../shared/schemas/gauged.ts';
import type { ScanReading } from './gap-scan-table.ts';

const ANGLE = crankAngle('crank angle');
const GAP = gauged('the gap', CAN_BE.gap);

/** What is wrong with one row of the text. */
interface RowFault {
  readonly line: number;
  readonly column: 'crank angle' | 'gap' | 'row';
  readonly detail: string;
  readonly received: string;
}

export interface ScanRows {
  readonly readings: readonly (ScanReading & { readonly line: number })[];
  readonly faults: readonly RowFault[];
}

/** A heading may name the unit of its column: `gap, mm`. */
const HEADING = /^[^\d]*(?:crank|angle|deg|gap|clearance|valve|piston)[^\d]*$/i;
const UNIT_OF_HEADING = /\b(in|inch|inches|thou|mm)\b\s*\)?\s*$/i;

/** `4 2,41` and `4, 2,41`: the comma between digits is the decimal one, and what stands before them parts the columns. */
const DECIMAL_COMMA = /^([^,]*[^\s,])(?:\s+|,\s+)([-−]?\d*,\d+[^\d,]*)$/;

/** A tab or a semicolon parts the columns, else a comma; else the blank before the gap. A spreadsheet may quote cells. */
function split(row: string): string[] {
  if (/^"[^"]*"\s*[\t;,]\s*"[^"]*"$/.test(row))
    return [...row.matchAll(/"([^"]*)"/g)].map(([, cell = '']) => cell.trim());
  const text = row.replaceAll('"', '');
  const clear = ['\t', ';'].find((each) => text.includes(each));
  const [, angle, gap] = clear === undefined ? (DECIMAL_COMMA.exec(text) ?? []) : [];
  if (angle !== undefined && gap !== undefined) return [angle, gap];
  const mark = clear ?? (text.includes(',') ? ',' : undefined);
  if (mark !== undefined) return text.split(mark).map((cell) => cell.trim());
  const found =
    /^(.*?(?:tdc|before|after|°|deg|\d))\s+((?:more|less|over|under|between)?\s*[-−.\d].*)$/i.exec(text);
  return found === null ? [text] : [found[1] ?? '', found[2] ?? ''];
}

function readRow(text: string, line: number, unit: string): ScanRows {
  const cells = split(text).filter((cell, index, all) => cell !== '' || index < all.length - 1);
  const wrong = (column: RowFault['column'], detail: string, received: string): ScanRows => ({
    readings: [],
    faults: [{ line, column, detail, received }],
  });
  const [at = '', gap = '', ...more] = cells;
  if (gap === '' || more.length > 0)
    return wrong('row', 'must have two columns, the crank angle and the gap there', text.slice(0, 80));
  const angle = ANGLE.safeParse({ typed: at, assume: 'deg' });
  const read = GAP.safeParse({ typed: gap, assume: unit });
  const said = (issues: readonly { readonly message: string }[]) =>
    issues.map(({ message }) => message).join('; ');
  const faults: RowFault[] = [
    ...(angle.success
      ? []
      : [{ line, column: 'crank angle' as const, detail: said(angle.error.issues), received: at }]),
    ...(read.success
      ? []
      : [{ line, column: 'gap' as const, detail: said(read.error.issues), received: gap }]),
  ];
  return angle.success && read.success
    ? { readings: [{ line, crankAngle: angle.data, gap: read.data }], faults: [] }
    : { readings: [], faults };
}

const unitOfHeading = (text: string): string | undefined => {
  const word = UNIT_OF_HEADING.exec(text)?.[1]?.toLowerCase();
  return word === undefined ? undefined : word.startsWith('inch') ? 'in' : word;
};

/** A first row without a figure, written or said, in whatever language its columns are named. */
const isHeading = (text: string): boolean =>
  HEADING.test(text) ||
  (!/\d/.test(text) && !ANGLE.safeParse({ typed: split(text)[0] ?? '', assume: 'deg' }).success);

const MOST_ROWS = 400;

/** Reads rows of crank angle and gap; empty rows are passed over, and a first row without a figure heads the columns. */
export function readScanRows(text: string, unit: string): ScanRows {
  const rows = text
    .split(/\r?\n/)
    .map((each, index) => ({ text: each.trim(), line: index + 1 }))
    .filter((row) => row.text !== '');
  const [first] = rows;
  const headed = first !== undefined && isHeading(first.text);
  const given = headed ? rows.slice(1) : rows;
  const counts = headed ? (unitOfHeading(first.text) ?? unit) : unit;
  if (given.length === 0)
    return {
      readings: [],
      faults: [
        {
          line: 1,
          column: 'row',
          detail: 'has no reading: a crank angle and a gap in each row',
          received: '',
        },
      ],
    };
  if (given.length > MOST_ROWS)
    return {
      readings: [],
      faults: [
        {
          line: given[MOST_ROWS]?.line ?? 1,
          column: 'row',
          detail: `is past the ${MOST_ROWS} rows that a scan may have`,
          received: `${given.length} rows`,
        },
      ],
    };
  const read = given.map((row) => readRow(row.text, row.line, counts));
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
