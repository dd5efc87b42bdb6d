import type { Selectable } from 'kysely';
import { z } from 'zod';
import { defined } from '../../../shared/defined.ts';
import { isUnit, UNITS, type Unit } from '../../../shared/quantities/units.ts';
import { crankText } from '../../../shared/schemas/crank-angle.ts';
import type { Entered } from '../../../shared/schemas/entered.ts';
import type { NewGapScan, ScanReadingInput } from '../../../shared/schemas/gap-scan.ts';
import { SHEET_ARMS, TOOLS } from '../../../shared/schemas/sheet.ts';
import {
  LASH_STATES,
  LIFTERS,
  SPRINGS,
  storedWord,
  VALVES,
  type ValveName,
} from '../../../shared/schemas/words.ts';
import type { Tx } from '../../database/database.ts';
import type { GapScanTable } from '../../database/tables/gap-scans.ts';
import type { Entry } from '../corrections/entries.ts';
import { GAP_SCAN_EVENTS } from './events.ts';

export type ScanReading = ScanReadingInput;

/** A scan of one valve over the crank, as it was entered. */
export interface GapScan extends Entry {
  readonly cylinder: number;
  readonly valve: ValveName;
  readonly readings: readonly ScanReading[];
  readonly readAs: string;
  readonly tool: keyof typeof TOOLS;
  readonly spring: keyof typeof SPRINGS;
  readonly lifter: keyof typeof LIFTERS;
  readonly lash: keyof typeof LASH_STATES;
  readonly lashSetting: Entered | undefined;
  readonly arms: keyof typeof SHEET_ARMS;
  readonly armId: string | undefined;
}

const unit = z.custom<Unit>((text) => typeof text === 'string' && isUnit(text));
const stored = z.array(
  z.object({
    crankAngle: z.object({ typed: z.string(), readAs: z.string(), value: z.number(), unit }),
    gap: z.object({
      typed: z.string(),
      readAs: z.string(),
      unit,
      value: z.number().optional(),
      low: z.number().optional(),
      high: z.number().optional(),
    }),
  }),
);

const readingsOf = (kept: unknown): ScanReading[] =>
  stored.parse(kept).map(({ crankAngle, gap: { value, low, high, ...gap } }) => ({
    crankAngle,
    gap: { ...gap, ...defined({ value, low, high }) },
  }));

type Row = Selectable<GapScanTable>;

function settingOf(row: Row): Entered | undefined {
  const { lash_setting_value: value, lash_setting_unit: found } = row;
  if (value === null || found === null) return undefined;
  if (!isUnit(found)) throw new Error(`a stored scan has the unknown unit ${found}`);
  return {
    value,
    unit: found,
    typed: row.lash_setting_typed ?? '',
    readAs: row.lash_setting_read_as ?? '',
  };
}

export const GAP_SCANS = {
  events: { replaced: GAP_SCAN_EVENTS['gap-scan-replaced'], struck: GAP_SCAN_EVENTS['gap-scan-struck'] },
  query: (tx: Tx) => tx.selectFrom('gap_scan').selectAll().orderBy('seq'),
  show: (row: Row, entry: Entry): GapScan => ({
    ...entry,
    cylinder: row.cylinder,
    valve: storedWord(VALVES, row.valve),
    readings: readingsOf(row.readings),
    readAs: row.read_as,
    tool: storedWord(TOOLS, row.tool),
    spring: storedWord(SPRINGS, row.spring),
    lifter: storedWord(LIFTERS, row.lifter),
    lash: storedWord(LASH_STATES, row.lash),
    lashSetting: settingOf(row),
    arms: storedWord(SHEET_ARMS, row.arms),
    armId: row.arm_id ?? undefined,
  }),
};

const inOrder = (readings: readonly ScanReading[]): ScanReading[] =>
  readings.toSorted((a, b) => a.crankAngle.value - b.crankAngle.value);

const siOf = ({ gap: { value, high, low, unit: of } }: ScanReading): number =>
  (value ?? high ?? low ?? 0) * UNITS[of].toSi;

/** `7 gaps from 2° to 20° after TDC, least read .090 in at 8° after TDC` */
export function scanReadAs(readings: readonly ScanReading[]): string {
  const ordered = inOrder(readings);
  const [first, last] = [ordered[0], ordered.at(-1)];
  const least = ordered.toSorted((a, b) => siOf(a) - siOf(b))[0];
  if (first === undefined || last === undefined || least === undefined) return 'no gaps';
  const at = ({ crankAngle }: ScanReading) => crankText(crankAngle.value);
  const read = `least read ${least.gap.readAs} at ${at(least)}`;
  return readings.length === 1
    ? `one gap, ${read}`
    : `${readings.length} gaps from ${at(first)} to ${at(last)}, ${read}`;
}

type Scanned = Pick<NewGapScan, 'spring' | 'lifter' | 'lash' | 'tool' | 'arms'> &
  Pick<GapScan, 'cylinder' | 'valve' | 'readings'> & { readonly lashSetting?: Entered | undefined };

/** What was read and how, as the columns of a row. */
export const columnsOf = (scan: Scanned) => ({
  cylinder: scan.cylinder,
  valve: scan.valve,
  readings: JSON.stringify(scan.readings),
  read_as: scanReadAs(scan.readings),
  tool: scan.tool,
  spring: scan.spring,
  lifter: scan.lifter,
  lash: scan.lash,
  lash_setting_value: scan.lashSetting?.value ?? null,
  lash_setting_unit: scan.lashSetting?.unit ?? null,
  lash_setting_typed: scan.lashSetting?.typed ?? null,
  lash_setting_read_as: scan.lashSetting?.readAs ?? null,
  arms: scan.arms,
});
