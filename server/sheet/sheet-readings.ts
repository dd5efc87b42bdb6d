import type { Insertable, Selectable } from 'kysely';
import type { z } from 'zod';
import { isUnit, type Unit } from '../../shared/quantities/units.ts';
import type { Gauged } from '../../shared/schemas/gauged.ts';
import {
  type correctSheetReading,
  type NewSheetReadings,
  SHEET_ARMS,
  SHEET_KINDS,
  type SheetKind,
  TOOLS,
} from '../../shared/schemas/sheet.ts';
import { keysOf, LIFTERS, SPRINGS } from '../../shared/schemas/words.ts';
import { author, type Caller, requireBuild } from '../access/caller.ts';
import { listPlacements, nowOnValves } from '../builds/builds.ts';
import { refuseWhileHeld } from '../calls/calls.ts';
import type { Tx } from '../database/database.ts';
import type { ValveReadingTable } from '../database/tables.ts';
import { Failure, notFound } from '../problems/failure.ts';
import { listedOf } from '../record/readable.ts';
import { onBuild } from '../record/record.ts';

/** One reading of the sheet as it was entered. It is never changed; a correction is a later one that names it. */
export interface SheetReading {
  readonly id: string;
  readonly seq: number;
  readonly cylinder: number;
  readonly valve: 'intake' | 'exhaust';
  readonly kind: SheetKind;
  readonly reading: Gauged;
  readonly tool: keyof typeof TOOLS;
  readonly spring: keyof typeof SPRINGS;
  readonly lifter: keyof typeof LIFTERS;
  readonly arms: keyof typeof SHEET_ARMS;
  readonly armId: string | undefined;
  readonly replaces: string | undefined;
  readonly replacedBy: string | undefined;
  readonly struck: boolean;
  readonly reason: string;
  readonly by: string;
  readonly at: Date;
}

/** A stored word of a list; the list only grows, so that one it does not have is a fault of the program. */
function wordOf<const T extends Record<string, string>>(words: T, text: string): Extract<keyof T, string> {
  const found = keysOf(words).find((word) => word === text);
  if (found === undefined) throw new Error(`a stored sheet reading has the unknown word ${text}`);
  return found;
}

function unitOf(text: string): Unit {
  if (isUnit(text)) return text;
  throw new Error(`a stored sheet reading has the unknown unit ${text}`);
}

function toReading(row: Selectable<ValveReadingTable>, replacedBy: string | undefined): SheetReading {
  return {
    id: row.id,
    seq: row.seq,
    cylinder: row.cylinder,
    valve: row.valve === 'exhaust' ? 'exhaust' : 'intake',
    kind: wordOf(SHEET_KINDS, row.kind),
    reading: {
      typed: row.typed,
      readAs: row.read_as,
      unit: unitOf(row.unit),
      ...(row.value === null ? {} : { value: row.value }),
      ...(row.low === null ? {} : { low: row.low }),
      ...(row.high === null ? {} : { high: row.high }),
    },
    tool: wordOf(TOOLS, row.tool),
    spring: wordOf(SPRINGS, row.spring),
    lifter: wordOf(LIFTERS, row.lifter),
    arms: wordOf(SHEET_ARMS, row.arms),
    armId: row.arm_id ?? undefined,
    replaces: row.replaces ?? undefined,
    replacedBy,
    struck: row.struck,
    reason: row.reason,
    by: row.by_name,
    at: row.created_at,
  };
}

const columnsOf = ({ typed, readAs, unit, value, low, high }: Gauged) => ({
  typed,
  read_as: readAs,
  unit,
  value: value ?? null,
  low: low ?? null,
  high: high ?? null,
});

/** Which arm sits on each valve now, as far as that is on record. */
async function armsNow(tx: Tx, caller: Caller, buildId: string): Promise<ReadonlyMap<string, string>> {
  const now = nowOnValves(await listPlacements(tx, caller, buildId));
  return new Map(now.map(({ cylinder, valve, armId }) => [`${cylinder} ${valve}`, armId]));
}

/** Keeps readings of several valves that were taken the same way: all of them, under one event. */
export async function keepSheetReadings(
  tx: Tx,
  caller: Caller,
  buildId: string,
  input: NewSheetReadings,
): Promise<SheetReading[]> {
  return onBuild(tx, caller, buildId, async ({ emit }) => {
    await refuseWhileHeld(tx, caller, buildId);
    const { spring, lifter, tool, arms } = input;
    const sits = await armsNow(tx, caller, buildId);
    const seq = await emit('sheet-readings-kept', {
      spring,
      lifter,
      tool,
      arms,
      count: input.readings.length,
      readings: input.readings.map(({ cylinder, valve, kind, reading }) => ({
        cylinder,
        valve,
        kind,
        readAs: reading.readAs,
      })),
    });
    const rows = input.readings.map(
      ({ cylinder, valve, kind, reading }, place): Insertable<ValveReadingTable> => ({
        shop_id: caller.shopId,
        build_id: buildId,
        seq,
        place,
        cylinder,
        valve,
        kind,
        ...columnsOf(reading),
        tool,
        spring,
        lifter,
        arms,
        arm_id: arms === 'before' ? null : (sits.get(`${cylinder} ${valve}`) ?? null),
        replaces: null,
        ...author(caller),
      }),
    );
    const kept = await tx.insertInto('valve_reading').values(rows).returningAll().execute();
    return kept.sort((a, b) => a.place - b.place).map((row) => toReading(row, undefined));
  });
}

async function readingRow(
  tx: Tx,
  caller: Caller,
  buildId: string,
  id: string,
): Promise<Selectable<ValveReadingTable>> {
  const row = await tx
    .selectFrom('valve_reading')
    .selectAll()
    .where('shop_id', '=', caller.shopId)
    .where('build_id', '=', buildId)
    .where('id', '=', id)
    .executeTakeFirst();
  if (row === undefined) throw notFound('reading');
  return row;
}

async function refuseReplaced(tx: Tx, caller: Caller, old: Selectable<ValveReadingTable>): Promise<void> {
  const later = await tx
    .selectFrom('valve_reading')
    .select('id')
    .where('shop_id', '=', caller.shopId)
    .where('replaces', '=', old.id)
    .executeTakeFirst();
  if (later !== undefined) throw new Failure('conflict', 'this reading has been replaced already');
  if (old.struck)
    throw new Failure('conflict', 'this line strikes a reading out; keep a new reading instead');
}

/** Replaces a reading of the sheet, or strikes it out, with the reason; the old one stays where it was. */
export async function replaceSheetReading(
  tx: Tx,
  caller: Caller,
  buildId: string,
  readingId: string,
  input: z.output<typeof correctSheetReading>,
): Promise<SheetReading> {
  return onBuild(tx, caller, buildId, async ({ emit }) => {
    const old = await readingRow(tx, caller, buildId, readingId);
    await refuseReplaced(tx, caller, old);
    const struck = input.reading === undefined;
    const { cylinder, valve, kind } = old;
    const seq = await emit(struck ? 'sheet-reading-struck' : 'sheet-reading-replaced', {
      cylinder,
      valve,
      kind,
      replaces: old.read_as,
      replacesId: old.id,
      reason: input.reason,
      ...(input.reading === undefined ? {} : { readAs: input.reading.readAs }),
    });
    const { id: _, created_at: __, ...same } = old;
    const row = await tx
      .insertInto('valve_reading')
      .values({
        ...same,
        ...(input.reading === undefined ? {} : columnsOf(input.reading)),
        seq,
        place: 0,
        replaces: old.id,
        struck,
        reason: input.reason,
        ...author(caller),
      })
      .returningAll()
      .executeTakeFirstOrThrow();
    return toReading(row, undefined);
  });
}

/** Every reading of the sheet in the order of entry, replaced and struck ones included. */
export async function listSheetReadings(tx: Tx, caller: Caller, buildId: string): Promise<SheetReading[]> {
  requireBuild(caller, buildId, 'read');
  const rows = await tx
    .selectFrom('valve_reading')
    .selectAll()
    .where('shop_id', '=', caller.shopId)
    .where('build_id', '=', buildId)
    .orderBy('seq')
    .orderBy('place')
    .execute();
  const replacedBy = new Map(
    rows.flatMap((row) => (row.replaces === null ? [] : [[row.replaces, row.id] as const])),
  );
  return (await listedOf(tx, caller, buildId, rows)).map((row) => toReading(row, replacedBy.get(row.id)));
}

/** The readings that stand: neither replaced nor a striking-out. */
export const standingOnSheet = (readings: readonly SheetReading[]): SheetReading[] =>
  readings.filter((reading) => reading.replacedBy === undefined && !reading.struck);
