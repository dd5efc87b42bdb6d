import type { Selectable } from 'kysely';
import { isUnit, type Unit } from '../../../shared/quantities/units.ts';
import type { Gauged } from '../../../shared/schemas/gauged.ts';
import { SHEET_ARMS, SHEET_KINDS, type SheetKind, TOOLS } from '../../../shared/schemas/sheet.ts';
import type { ValveName } from '../../../shared/schemas/words.ts';
import { LIFTERS, SPRINGS, storedWord, VALVES } from '../../../shared/schemas/words.ts';
import type { Tx } from '../../database/database.ts';
import type { ValveReadingTable } from '../../database/tables/sheet.ts';
import type { Entry } from '../corrections/entries.ts';
import { SHEET_EVENTS } from './events.ts';

/** One reading of the sheet as it was entered. */
export interface SheetReading extends Entry {
  readonly cylinder: number;
  readonly valve: ValveName;
  readonly kind: SheetKind;
  readonly reading: Gauged;
  readonly tool: keyof typeof TOOLS;
  readonly spring: keyof typeof SPRINGS;
  readonly lifter: keyof typeof LIFTERS;
  readonly arms: keyof typeof SHEET_ARMS;
  readonly armId: string | undefined;
}

function unitOf(text: string): Unit {
  if (isUnit(text)) return text;
  throw new Error(`a stored sheet reading has the unknown unit ${text}`);
}

/** The sheet's table of entries; readings of one entry keep the order they were given in. */
export const SHEET_READINGS = {
  events: { replaced: SHEET_EVENTS['sheet-reading-replaced'], struck: SHEET_EVENTS['sheet-reading-struck'] },
  query: (tx: Tx) => tx.selectFrom('valve_reading').selectAll().orderBy('seq').orderBy('place'),
  show: (row: Selectable<ValveReadingTable>, entry: Entry): SheetReading => ({
    ...entry,
    cylinder: row.cylinder,
    valve: storedWord(VALVES, row.valve),
    kind: storedWord(SHEET_KINDS, row.kind),
    reading: {
      typed: row.typed,
      readAs: row.read_as,
      unit: unitOf(row.unit),
      ...(row.value === null ? {} : { value: row.value }),
      ...(row.low === null ? {} : { low: row.low }),
      ...(row.high === null ? {} : { high: row.high }),
    },
    tool: storedWord(TOOLS, row.tool),
    spring: storedWord(SPRINGS, row.spring),
    lifter: storedWord(LIFTERS, row.lifter),
    arms: storedWord(SHEET_ARMS, row.arms),
    armId: row.arm_id ?? undefined,
  }),
};

export const columnsOf = ({ typed, readAs, unit, value, low, high }: Gauged) => ({
  typed,
  read_as: readAs,
  unit,
  value: value ?? null,
  low: low ?? null,
  high: high ?? null,
});
