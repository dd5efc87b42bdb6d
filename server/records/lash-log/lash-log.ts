import type { Selectable } from 'kysely';
import { InputFaults } from '../../../shared/problems/faults.ts';
import { isUnit } from '../../../shared/quantities/units.ts';
import type { Entered } from '../../../shared/schemas/entered.ts';
import { ENGINE_HEAT, LASH_MOMENTS, type NewLashLine, NUT_STATES } from '../../../shared/schemas/lash-log.ts';
import { storedWord } from '../../../shared/schemas/words.ts';
import { author, type Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { everyColumn } from '../../database/tables/every-column.ts';
import type { LashLogTable } from '../../database/tables/marks-and-lash.ts';
import type { ValveReadingTable } from '../../database/tables/sheet.ts';
import { changeBuild } from '../../events/change-build.ts';
import { inLogOrder } from '../../mechanics/lash/log-order.ts';
import { listPlacements, nowOnValves } from '../arms/placements.ts';
import type { TurningCheck } from '../calls/stop-signs.ts';
import { shown } from '../corrections/entries.ts';
import { columnsOf, SHEET_READINGS, type SheetReading } from '../sheet/sheet-table.ts';
import { isOverEverywhere } from './days.ts';
import { LASH_EVENTS } from './events.ts';

/** A lash of the sheet with what makes it a line of a log; one entered on the sheet alone says nothing of that. */
export interface LoggedLash {
  readonly reading: SheetReading;
  readonly engine: keyof typeof ENGINE_HEAT;
  readonly moment: keyof typeof LASH_MOMENTS;
  readonly nut: keyof typeof NUT_STATES;
  /** The day it is of, `2026-03-14`. */
  readonly on: string;
  /** Its number as it was first entered: one that was put right keeps its place in the log. */
  readonly entered: number;
  /** It was entered on a later day than the one it is of, wherever that was: the order of entry says nothing then. */
  readonly toldLater: boolean;
  readonly doneBy: string;
  /** The shim that was in with that gap. */
  readonly shim: Entered | undefined;
}

/**
 * A line of an earlier day tells what was found or set then: that is history, and takes no turning. One of today, or
 * without a day, was read on the base circle just now. Where the shop is nobody has said: a day is an earlier one once it
 * is over by every clock, so that this evening’s reading is none in the west either.
 */
const isHistory = ({ readOn }: NewLashLine, now: Date): boolean =>
  readOn !== '' && isOverEverywhere(readOn, now);

const HISTORY = 'A lash that was read on an earlier day needs no turning: enter it with that day.';

/** A day later than tomorrow anywhere on earth has not been yet. */
function refuseAhead(readOn: string, now: Date): void {
  const latest = new Date(now.getTime() + 86_400_000).toISOString().slice(0, 10);
  if (readOn <= latest) return;
  const today = now.toISOString().slice(0, 10);
  throw new InputFaults([
    {
      pointer: '/readOn',
      code: 'out-of-range',
      detail: `is ${readOn}, a day still ahead: today is ${today}`,
      received: readOn,
    },
  ]);
}

/** Keeps a line of the log: the gap as a reading of the sheet, and beside it what the sheet does not ask. */
export async function keepLash(
  tx: Tx,
  principal: Principal,
  buildId: string,
  input: NewLashLine,
  refuseTurning: TurningCheck,
  today: Date,
): Promise<LoggedLash> {
  return changeBuild(tx, principal, buildId, async ({ emit }) => {
    refuseAhead(input.readOn, today);
    if (!isHistory(input, today)) await refuseTurning(tx, principal, buildId, HISTORY);
    const { cylinder, valve, lash, moment, engine, nut, readOn, doneBy, shim } = input;
    const now = nowOnValves(await listPlacements(tx, principal, buildId));
    const arm = now.find((each) => each.cylinder === cylinder && each.valve === valve);
    const shimSaid = shim?.readAs ?? '';
    const said = {
      ...{ cylinder, valve, readAs: lash.readAs, moment, engine, nut, readOn, doneBy },
      shim: shimSaid,
    };
    const seq = await emit(LASH_EVENTS['lash-kept'], said);
    const row = await tx
      .insertInto('valve_reading')
      .values(
        everyColumn<ValveReadingTable>({
          shop_id: principal.shopId,
          build_id: buildId,
          seq,
          place: 0,
          cylinder,
          valve,
          kind: 'lash',
          ...columnsOf(lash),
          tool: 'feeler',
          spring: 'not-said',
          lifter: 'not-said',
          arms: 'these',
          arm_id: arm?.armId ?? null,
          replaces: null,
          ...author(principal),
        }),
      )
      .returningAll()
      .executeTakeFirstOrThrow();
    await tx
      .insertInto('lash_log')
      .values(
        everyColumn<LashLogTable>({
          shop_id: principal.shopId,
          reading_id: row.id,
          build_id: buildId,
          engine,
          moment,
          nut,
          read_on: readOn === '' ? null : readOn,
          done_by: doneBy,
          shim_value: shim?.value ?? null,
          shim_unit: shim?.unit ?? null,
          shim_typed: shim?.typed ?? null,
          shim_read_as: shim?.readAs ?? null,
        }),
      )
      .execute();
    const reading = shown(SHEET_READINGS, row);
    return {
      ...{ reading, engine, moment, nut, doneBy, shim },
      ...daysOf(reading, readOn === '' ? null : readOn),
    };
  });
}

function shimOf(row: Selectable<LashLogTable>): Entered | undefined {
  const { shim_value: value, shim_unit: unit } = row;
  if (value === null || unit === null) return undefined;
  if (!isUnit(unit)) throw new Error(`a stored shim has the unknown unit ${unit}`);
  return { value, unit, typed: row.shim_typed ?? '', readAs: row.shim_read_as ?? '' };
}

const dayOf = ({ at }: SheetReading): string => at.toISOString().slice(0, 10);

/** Which day a line is of, and when it was entered. */
function daysOf(
  first: SheetReading,
  readOn: string | null,
): Pick<LoggedLash, 'on' | 'entered' | 'toldLater'> {
  const day = dayOf(first);
  const toldLater = readOn !== null && isOverEverywhere(readOn, first.at);
  return { on: readOn ?? day, entered: first.seq, toldLater };
}

/** The first reading of a chain of corrections: the one that the log's words go with. */
function firstOf(reading: SheetReading, byId: ReadonlyMap<string, SheetReading>): SheetReading {
  const before = reading.replaces === undefined ? undefined : byId.get(reading.replaces);
  return before === undefined ? reading : firstOf(before, byId);
}

export const selectLashRows = (tx: Tx) => tx.selectFrom('lash_log').selectAll();

/** Every line that was ever entered, oldest day first, struck and replaced ones among them. */
export function toLashLines(
  sheet: readonly SheetReading[],
  rows: readonly Selectable<LashLogTable>[],
): LoggedLash[] {
  const readings = sheet.filter(({ kind }) => kind === 'lash');
  const byId = new Map(readings.map((reading) => [reading.id, reading]));
  const logged = new Map(rows.map((row) => [row.reading_id, row]));
  const lines = readings.map((reading): LoggedLash => {
    const first = firstOf(reading, byId);
    const row = logged.get(first.id);
    return {
      reading,
      engine: storedWord(ENGINE_HEAT, row?.engine ?? 'not-said'),
      moment: storedWord(LASH_MOMENTS, row?.moment ?? 'found'),
      nut: storedWord(NUT_STATES, row?.nut ?? 'not-looked'),
      ...daysOf(first, row?.read_on ?? null),
      doneBy: row?.done_by ?? '',
      shim: row === undefined ? undefined : shimOf(row),
    };
  });
  return inLogOrder(lines, ({ on, entered }) => ({ day: on, entered }));
}

/** The lines that stand and are of the arms that are on, oldest day first. */
export const logOfTheseArms = (lines: readonly LoggedLash[]): LoggedLash[] =>
  lines.filter(
    ({ reading }) => reading.replacedBy === undefined && !reading.struck && reading.arms === 'these',
  );
