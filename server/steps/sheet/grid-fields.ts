import { z } from 'zod';
import { defined } from '../../../shared/defined.ts';
import type { Quantity } from '../../../shared/quantities/units.ts';
import { gaugedOrTurns } from '../../../shared/schemas/gauged.ts';
import {
  type NewSheetReadings,
  newSheetReadings,
  SHEET_CAN_BE,
  SHEET_KINDS,
  type SheetKind,
} from '../../../shared/schemas/sheet.ts';
import { VALVES, type ValveName } from '../../../shared/schemas/words.ts';
import type { ValvePlace } from '../../mechanics/assessment/evidence.ts';
import { type Fields, type FormOptions, type FormReading, readForm } from '../../web/forms/read-form.ts';

/** The name of the entry of one figure of one valve. */
export const cellField = ({ cylinder, valve }: ValvePlace, kind: SheetKind): string =>
  `grid.${cylinder}-${valve}.${kind}`;

const CELL = /^grid\.(\d{1,2})-([a-z]+(?:-\d)?)\.([a-z-]+)$/;
const isValve = (text: string | undefined): text is ValveName =>
  text !== undefined && Object.hasOwn(VALVES, text);
const isKind = (text: string | undefined): text is SheetKind =>
  text !== undefined && Object.hasOwn(SHEET_KINDS, text);

/** A cell of the grid that has something in it. */
interface Cell {
  readonly name: string;
  readonly row: string;
  readonly cylinder: number;
  readonly valve: ValveName;
  readonly kind: SheetKind;
}

function cellsOf(fields: Fields): Cell[] {
  return Object.entries(fields).flatMap(([name, text]) => {
    const [, cylinder = '', valve, kind] = CELL.exec(name) ?? [];
    if (!isValve(valve) || !isKind(kind) || text.trim() === '') return [];
    return [{ name, row: `${cylinder}-${valve}`, cylinder: Number(cylinder), valve, kind }];
  });
}

const asTyped = newSheetReadings.omit({ readings: true });

/** The cells that are filled in, each by what a reading of its kind can be. */
function schemaOf(cells: readonly Cell[]) {
  const rows = new Map<string, Record<string, ReturnType<typeof gaugedOrTurns>>>();
  for (const { row, kind } of cells)
    rows.set(row, { ...rows.get(row), [kind]: gaugedOrTurns(SHEET_KINDS[kind], SHEET_CAN_BE[kind]) });
  const grid = Object.fromEntries([...rows].map(([row, kinds]) => [row, z.strictObject(kinds)]));
  return asTyped.extend({ grid: z.strictObject(grid).optional() });
}

const MOST_CYLINDERS = 16;

/** The grid by the schemas that its JSON twin has; each fault stands at its own cell. */
export function readGrid(
  fields: Fields,
  perTurn: Quantity | undefined,
  lengths: FormOptions['lengths'],
): { readonly names: readonly string[]; readonly read: FormReading<NewSheetReadings> } {
  const cells = cellsOf(fields);
  const names = cells.map(({ name }) => name);
  const wrong = cells.filter(({ cylinder }) => cylinder < 1 || cylinder > MOST_CYLINDERS);
  if (wrong.length > 0) {
    const detail = `is of no cylinder from 1 to ${MOST_CYLINDERS}`;
    return { names, read: { ok: false, faults: wrong.map(({ name }) => ({ field: name, detail })) } };
  }
  const read = readForm(schemaOf(cells), fields, { lengths, ...defined({ perTurn }) });
  if (!read.ok) return { names, read };
  const { grid = {}, ...how } = read.data;
  const readings = cells.flatMap(({ row, kind, cylinder, valve }) => {
    const reading = grid[row]?.[kind];
    return reading === undefined ? [] : [{ cylinder, valve, kind, reading }];
  });
  return { names, read: { ok: true, data: { ...how, readings } } };
}
