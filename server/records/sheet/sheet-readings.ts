import type { Insertable } from 'kysely';
import { defined } from '../../../shared/defined.ts';
import { siOf } from '../../../shared/schemas/entered.ts';
import { columnOf, type NewSheetReadings, type SheetKind } from '../../../shared/schemas/sheet.ts';
import { author, type Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import type { ValveReadingTable } from '../../database/tables/sheet.ts';
import { changeBuild } from '../../events/change-build.ts';
import { rowOfBuild } from '../../events/rows-of-build.ts';
import { listPlacements, nowOnValves } from '../arms/placements.ts';
import { refuseStale } from '../builds/revisions.ts';
import { SEND_LATER, type TurningCheck } from '../calls/stop-signs.ts';
import { listEntries, shown } from '../corrections/entries.ts';
import { SHEET_EVENTS } from './events.ts';
import { allAsLengths, dialOf } from './said-in-turns.ts';
import { columnsOf, SHEET_READINGS, type SheetReading } from './sheet-table.ts';

/** Which arm sits on each valve now, as far as that is on record. */
async function armsNow(tx: Tx, principal: Principal, buildId: string): Promise<ReadonlyMap<string, string>> {
  const now = nowOnValves(await listPlacements(tx, principal, buildId));
  return new Map(now.map(({ cylinder, valve, armId }) => [`${cylinder} ${valve}`, armId]));
}

/** The arm that was read: the one that is named; else the one that sits there, unless the arms before were on. */
export const armRead = (
  arms: NewSheetReadings['arms'],
  named: string | undefined,
  sitting: string | undefined,
): string | undefined => named ?? (arms === 'before' ? undefined : sitting);

/** How one reading was taken: as its column was, else as the rest. */
export function howOf(
  { spring, lifter, tool, columns }: Omit<NewSheetReadings, 'readings'>,
  kind: SheetKind,
): Pick<SheetReading, 'spring' | 'lifter' | 'tool'> {
  const own = columns?.[columnOf(kind)];
  return {
    spring: own?.spring ?? spring,
    lifter: own?.lifter ?? lifter,
    tool: own?.tool ?? tool,
  };
}

/**
 * Readings with the arms before are history, and a lobe under a caliper is one of a loose cam: neither takes turning the
 * engine now.
 */
const takesTurning = (input: NewSheetReadings): boolean =>
  input.arms === 'these' &&
  !input.readings.every(({ kind }) => kind === 'lobe-lift' && howOf(input, kind).tool === 'caliper');

/** A stop refuses a sheet in whole, and says so once, with what may be entered all the same. */
async function refuseWhole(
  tx: Tx,
  principal: Principal,
  buildId: string,
  count: number,
  refuseTurning: TurningCheck,
): Promise<void> {
  const none = count === 1 ? 'The reading was not kept.' : `None of the ${count} readings was kept.`;
  await refuseTurning(
    tx,
    principal,
    buildId,
    `${none} ${SEND_LATER} What was read with the arms fitted before, or a lobe under a caliper, needs no turning and can be entered.`,
  );
}

/** Arms that readings are said to have been taken with must be arms of the build. */
async function refuseOtherArms(
  tx: Tx,
  principal: Principal,
  buildId: string,
  readings: NewSheetReadings['readings'],
): Promise<void> {
  for (const armId of new Set(readings.flatMap((reading) => reading.armId ?? [])))
    await rowOfBuild(principal, buildId, armId, 'arm', tx.selectFrom('arm').select('id'));
}

/** Keeps readings of several valves that were taken the same way: all of them, under one event. */
export async function keepSheetReadings(
  tx: Tx,
  principal: Principal,
  buildId: string,
  input: NewSheetReadings,
  refuseTurning: TurningCheck,
  expectedRevision?: number,
): Promise<SheetReading[]> {
  return changeBuild(tx, principal, buildId, async ({ build, emit }) => {
    refuseStale(build, expectedRevision);
    if (takesTurning(input)) await refuseWhole(tx, principal, buildId, input.readings.length, refuseTurning);
    await refuseOtherArms(tx, principal, buildId, input.readings);
    const { spring, lifter, tool, arms, columns, perTurn } = input;
    const dial = await dialOf(tx, principal, buildId, perTurn);
    const readings = allAsLengths(input.readings, dial);
    const sits = await armsNow(tx, principal, buildId);
    const seq = await emit(SHEET_EVENTS['sheet-readings-kept'], {
      spring,
      lifter,
      tool,
      arms,
      columns: defined({ ...columns }),
      ...(perTurn === undefined ? {} : { perTurn: siOf(perTurn) }),
      count: readings.length,
      readings: readings.map(({ cylinder, valve, kind, reading }) => ({
        cylinder,
        valve,
        kind,
        readAs: reading.readAs,
      })),
    });
    const rows = readings.map(
      ({ cylinder, valve, kind, reading, armId }, place): Insertable<ValveReadingTable> => ({
        shop_id: principal.shopId,
        build_id: buildId,
        seq,
        place,
        cylinder,
        valve,
        kind,
        ...columnsOf(reading),
        ...howOf(input, kind),
        arms,
        arm_id: armRead(arms, armId, sits.get(`${cylinder} ${valve}`)) ?? null,
        replaces: null,
        ...author(principal),
      }),
    );
    const kept = await tx.insertInto('valve_reading').values(rows).returningAll().execute();
    return kept.sort((a, b) => a.place - b.place).map((row) => shown(SHEET_READINGS, row));
  });
}

/** Every reading of the sheet in the order of entry, replaced and struck ones included. */
export const listSheetReadings = (tx: Tx, principal: Principal, buildId: string): Promise<SheetReading[]> =>
  listEntries(SHEET_READINGS, tx, principal, buildId);
