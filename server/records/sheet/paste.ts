import type { Quantity } from '../../../shared/quantities/units.ts';
import { type Gauged, gauged } from '../../../shared/schemas/gauged.ts';
import {
  isOfNut,
  type NewSheetReadings,
  type PasteSheet,
  SHEET_ASKED_LATER,
  SHEET_CAN_BE,
  SHEET_KINDS,
  type SheetKind,
} from '../../../shared/schemas/sheet.ts';
import { keysOf, type ValveName, valveSaid } from '../../../shared/schemas/words.ts';
import { type CutRow, type CutRows, cutRows } from '../pasted/cut-rows.ts';
import { type Column, readHeading, readValveName, readValveOnly } from './paste-headings.ts';

type Entry = Omit<NewSheetReadings['readings'][number], 'reading'> & { readonly reading: Gauged };

export interface PastedReading extends Entry {
  readonly line: number;
}

/** What is wrong with one cell, by the line of the text and the heading of its column. */
export interface PasteFault {
  readonly line: number;
  readonly column: string;
  readonly detail: string;
  readonly received: string;
}

export interface Pasted {
  readonly readings: readonly PastedReading[];
  readonly faults: readonly PasteFault[];
}

const MOST_ROWS = 40;
const placeOf = (kind: SheetKind) => ({ asksLater: SHEET_ASKED_LATER.includes(kind), ofNut: isOfNut(kind) });
const READINGS = new Map(
  keysOf(SHEET_KINDS).map(
    (kind) => [kind, gauged(SHEET_KINDS[kind], SHEET_CAN_BE[kind], placeOf(kind))] as const,
  ),
);
const EMPTY = /^[-–—?]*$/;

function delimiterOf(text: string): string {
  if (text.includes('\t')) return '\t';
  return text.includes(';') ? ';' : ',';
}

type Row = CutRow;

/** Many times a row with every kind of reading for every valve of its cylinder. */
const LONGEST_ROW = 4_000;
/** More faults than anybody mends in one go. */
const MOST_FAULTS = 100;

const rowsOf = (text: string): CutRows =>
  cutRows(text.replaceAll('\r\n', '\n').replaceAll('\r', '\n'), {
    delimiter: delimiterOf(text),
    rowEnd: '\n',
    longestRow: LONGEST_ROW,
    skipsEmpty: true,
    asTyped: true,
  });

interface Heading {
  readonly text: string;
  readonly column: Column;
}

function headingsOf(first: Row | undefined): {
  headings: readonly (Heading | undefined)[];
  faults: PasteFault[];
} {
  const faults: PasteFault[] = [];
  const headings = (first?.cells ?? []).map((text) => {
    if (text === '') return undefined;
    const read = readHeading(text);
    if (read.ok) return { text, column: read.column };
    const named = text.slice(0, 80);
    faults.push({ line: first?.line ?? 1, column: named, detail: read.detail, received: named });
    return undefined;
  });
  const known = headings.filter((heading) => heading !== undefined);
  const line = first?.line ?? 1;
  const fault = (column: string, detail: string) => faults.push({ line, column, detail, received: '' });
  if (!known.some(({ column }) => column.holds === 'figure') && faults.length === 0)
    fault(
      'headings',
      'the first row must head the columns, and one of them must be a reading such as lobe lift',
    );
  if (!known.some(({ column }) => column.holds !== 'figure'))
    fault('cylinder', 'is missing: a column that says which cylinder');
  return { headings, faults };
}

/** Which cylinder a row is about, and which valve where it names one. */
function whereOf(
  row: Row,
  headings: readonly (Heading | undefined)[],
): { cylinder?: number; valve?: ValveName } {
  let found: { cylinder?: number; valve?: ValveName } = {};
  const ofCylinder = headings.some((heading) => heading?.column.holds === 'cylinder');
  for (const [index, heading] of headings.entries()) {
    if (heading === undefined || heading.column.holds === 'figure') continue;
    const cell = row.cells[index] ?? '';
    const ofValve = heading.column.holds === 'valve' && ofCylinder;
    found = { ...found, ...(ofValve ? readValveOnly(cell) : readValveName(cell)) };
  }
  return found;
}

/** Of a cell: what was read, the unit of a figure that names none, and the dial that turns are counted on. */
interface CellsAre {
  readonly kind: SheetKind;
  readonly unit: string;
  readonly perTurn: Quantity | undefined;
}

function readCell(
  text: string,
  { kind, unit, perTurn }: CellsAre,
): { ok: true; value: Gauged } | { ok: false; detail: string } {
  const dial = perTurn === undefined ? {} : { perTurn: { value: perTurn.value, unit: perTurn.unit } };
  const reading = READINGS.get(kind) ?? gauged(kind, SHEET_CAN_BE[kind], placeOf(kind));
  const read = reading.safeParse({ typed: text, assume: unit, ...dial });
  return read.success
    ? { ok: true, value: read.data }
    : { ok: false, detail: read.error.issues.map((issue) => issue.message).join('; ') };
}

function readRow(
  row: Row,
  headings: readonly (Heading | undefined)[],
  cells: Omit<CellsAre, 'kind'>,
): Pasted {
  const where = whereOf(row, headings);
  const { cylinder } = where;
  const first = row.cells.join(' ').slice(0, 80);
  const wrong = (column: string, detail: string, received: string): Pasted => ({
    readings: [],
    faults: [{ line: row.line, column, detail, received }],
  });
  if (cylinder === undefined || cylinder < 1 || cylinder > 16)
    return wrong('cylinder', 'must be a cylinder number from 1 to 16', first);
  const readings: PastedReading[] = [];
  const faults: PasteFault[] = [];
  for (const [index, heading] of headings.entries()) {
    const text = row.cells[index] ?? '';
    if (heading === undefined || heading.column.holds !== 'figure' || EMPTY.test(text)) continue;
    const { kind, valve = where.valve } = heading.column;
    const at = { line: row.line, column: heading.text, received: text };
    if (valve === undefined) return wrong('valve', 'must say intake or exhaust', first);
    const read = readCell(text, { ...cells, kind, unit: heading.column.unit ?? cells.unit });
    if (read.ok) readings.push({ line: row.line, cylinder, valve, kind, reading: read.value });
    else faults.push({ ...at, detail: read.detail });
  }
  return { readings, faults };
}

/** A valve's reading that stands in the text twice: which of the two counts is for the person to say. */
function twice(readings: readonly PastedReading[]): PasteFault[] {
  const first = new Map<string, number>();
  return readings.flatMap(({ line, cylinder, valve, kind, reading: { typed } }) => {
    const key = `${cylinder} ${valve} ${kind}`;
    const before = first.get(key);
    if (before === undefined) {
      first.set(key, line);
      return [];
    }
    const column = kind.replaceAll('-', ' ');
    return [
      {
        line,
        column,
        detail: `${cylinder} ${valveSaid(valve)} stands on line ${before} already`,
        received: typed,
      },
    ];
  });
}

/** Reads rows of a spreadsheet: a heading row, then a row for each valve, or for each cylinder with both sides. */
export function readPasted(
  { text, unit }: Pick<PasteSheet, 'text' | 'unit'>,
  perTurn: Quantity | undefined,
): Pasted {
  const cut = rowsOf(text);
  if (!cut.ok) {
    const { line, detail } = cut;
    return { readings: [], faults: [{ line, column: 'row', detail, received: '' }] };
  }
  const [first, ...rows] = cut.rows;
  const { headings, faults } = headingsOf(first);
  if (faults.length > 0) return { readings: [], faults: faults.slice(0, MOST_FAULTS) };
  if (rows.length > MOST_ROWS) {
    const detail = `has ${rows.length} rows; ${MOST_ROWS} at the most`;
    return { readings: [], faults: [{ line: 1, column: 'rows', detail, received: '' }] };
  }
  const read = rows.map((row) => readRow(row, headings, { unit, perTurn }));
  const readings = read.flatMap((each) => each.readings);
  const found = [...read.flatMap((each) => each.faults), ...twice(readings)];
  if (readings.length === 0 && found.length === 0)
    return {
      readings,
      faults: [{ line: 1, column: 'rows', detail: 'there is no reading below the headings', received: '' }],
    };
  return { readings, faults: found.sort((a, b) => a.line - b.line).slice(0, MOST_FAULTS) };
}
