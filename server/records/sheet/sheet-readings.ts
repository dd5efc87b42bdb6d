import type { Insertable } from 'kysely';
import type { z } from 'zod';
import type { correctSheetReading, NewSheetReadings } from '../../../shared/schemas/sheet.ts';
import { author, type Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import type { ValveReadingTable } from '../../database/tables/sheet.ts';
import { changeBuild } from '../../events/change-build.ts';
import { listPlacements, nowOnValves } from '../arms/placements.ts';
import type { TurningCheck } from '../calls/stop-signs.ts';
import { listEntries, shown } from '../corrections/entries.ts';
import { replaceEntry } from '../corrections/replace.ts';
import { SHEET_EVENTS } from './events.ts';
import { columnsOf, SHEET_READINGS, type SheetReading } from './sheet-table.ts';

/** Which arm sits on each valve now, as far as that is on record. */
async function armsNow(tx: Tx, principal: Principal, buildId: string): Promise<ReadonlyMap<string, string>> {
  const now = nowOnValves(await listPlacements(tx, principal, buildId));
  return new Map(now.map(({ cylinder, valve, armId }) => [`${cylinder} ${valve}`, armId]));
}

/**
 * Readings with the arms before are history, and a lobe under a caliper is one of a loose cam: neither takes turning the
 * engine now.
 */
const takesTurning = ({ arms, tool, readings }: NewSheetReadings): boolean =>
  arms === 'these' && !(tool === 'caliper' && readings.every(({ kind }) => kind === 'lobe-lift'));

/** Keeps readings of several valves that were taken the same way: all of them, under one event. */
export async function keepSheetReadings(
  tx: Tx,
  principal: Principal,
  buildId: string,
  input: NewSheetReadings,
  refuseTurning: TurningCheck,
): Promise<SheetReading[]> {
  return changeBuild(tx, principal, buildId, async ({ emit }) => {
    if (takesTurning(input)) await refuseTurning(tx, principal, buildId);
    const { spring, lifter, tool, arms } = input;
    const sits = await armsNow(tx, principal, buildId);
    const seq = await emit(SHEET_EVENTS['sheet-readings-kept'], {
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
        shop_id: principal.shopId,
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
        ...author(principal),
      }),
    );
    const kept = await tx.insertInto('valve_reading').values(rows).returningAll().execute();
    return kept.sort((a, b) => a.place - b.place).map((row) => shown(SHEET_READINGS, row));
  });
}

/** Replaces a reading of the sheet, or strikes it out, with the reason; the old one stays where it was. */
export async function replaceSheetReading(
  tx: Tx,
  principal: Principal,
  buildId: string,
  readingId: string,
  { reading, reason }: z.output<typeof correctSheetReading>,
): Promise<SheetReading> {
  return replaceEntry(SHEET_READINGS, tx, principal, { buildId, id: readingId, reason }, (old, was, said) => {
    const { cylinder, valve, kind } = was;
    const struck = { cylinder, valve, kind, ...said };
    return {
      struck,
      replaced: reading === undefined ? undefined : { ...struck, readAs: reading.readAs },
      keep: (columns) => {
        const { id: _, created_at: __, ...same } = old;
        return tx
          .insertInto('valve_reading')
          .values({ ...same, ...(reading === undefined ? {} : columnsOf(reading)), place: 0, ...columns })
          .returningAll()
          .executeTakeFirstOrThrow();
      },
    };
  });
}

/** Every reading of the sheet in the order of entry, replaced and struck ones included. */
export const listSheetReadings = (tx: Tx, principal: Principal, buildId: string): Promise<SheetReading[]> =>
  listEntries(SHEET_READINGS, tx, principal, buildId);
