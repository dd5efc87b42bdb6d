import type { Quantity } from '../../../shared/quantities/units.ts';
import { newSheetReadings, SHEET_KINDS, type SheetKind } from '../../../shared/schemas/sheet.ts';
import type { ValvePlace } from '../../mechanics/assessment/evidence.ts';
import { type Fields, type FormReading, readForm } from '../../web/forms/read-form.ts';

/** The name of the entry of one figure of one valve. */
export const cellField = ({ cylinder, valve }: ValvePlace, kind: SheetKind): string =>
  `grid.${cylinder}-${valve}.${kind}`;

const CELL = /^grid\.(\d{1,2})-((?:intake|exhaust)(?:-[23])?)\.([a-z-]+)$/;
const isKind = (text: string | undefined): text is SheetKind =>
  text !== undefined && Object.hasOwn(SHEET_KINDS, text);

/** The fields of a grid under the names that the schema of readings has, with the entry that each is from. */
function asReadings(fields: Fields): { readonly fields: Fields; readonly names: readonly string[] } {
  const cells = Object.entries(fields).flatMap(([name, text]) => {
    const [, cylinder = '', valve = '', kind] = CELL.exec(name) ?? [];
    return !isKind(kind) || text.trim() === '' ? [] : [{ name, text, cylinder, valve, kind }];
  });
  const named = cells.flatMap(({ text, cylinder, valve, kind }, index) => [
    [`readings.${index}.cylinder`, cylinder],
    [`readings.${index}.valve`, valve],
    [`readings.${index}.kind`, kind],
    [`readings.${index}.reading`, text],
  ]);
  return { fields: { ...fields, ...Object.fromEntries(named) }, names: cells.map(({ name }) => name) };
}

const READING = /^readings\.(\d+)\b/;

/** A fault of a reading, at the entry of the grid that it is from. */
const atCells =
  (names: readonly string[]) =>
  <Fault extends { readonly field: string }>(fault: Fault): Fault => {
    const index = READING.exec(fault.field)?.[1];
    const name = index === undefined ? undefined : names[Number(index)];
    return name === undefined ? fault : { ...fault, field: name };
  };

type Readings = typeof newSheetReadings;

/** The grid by the schema that its JSON twin has; each fault stands at its own cell. */
export function readGrid(
  fields: Fields,
  perTurn: Quantity | undefined,
): { readonly names: readonly string[]; readonly read: FormReading<ReturnType<Readings['parse']>> } {
  const { fields: given, names } = asReadings(fields);
  const read = readForm(newSheetReadings, given, {
    lengths: 'in',
    ...(perTurn === undefined ? {} : { perTurn }),
  });
  if (read.ok) return { names, read };
  return { names, read: { ok: false, faults: read.faults.map(atCells(names)) } };
}
