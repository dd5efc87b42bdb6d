import type { Selectable } from 'kysely';
import type { z } from 'zod';
import { isUnit, type Quantity, type Unit } from '../../shared/quantities/units.ts';
import type { correctReading, newReading } from '../../shared/schemas/commands.ts';
import type { Entered } from '../../shared/schemas/entered.ts';
import { author, type Caller, requireBuild } from '../access/caller.ts';
import { refuseWhileHeld } from '../calls/calls.ts';
import type { Tx } from '../database/database.ts';
import type { ReadingTable } from '../database/tables.ts';
import { Failure, notFound } from '../problems/failure.ts';
import { listedOf } from '../record/readable.ts';
import { onBuild } from '../record/record.ts';
import { getSetUp } from '../set-ups/set-ups.ts';

/** One reading as it was entered. It is never changed; a correction is a later reading that names this one. */
export interface Reading {
  readonly id: string;
  readonly setUpId: string;
  readonly seq: number;
  readonly kind: string;
  readonly pass: number;
  readonly peak: Entered;
  readonly zeroReturn: Quantity | undefined;
  /** The lobe lift at which the valve was read; left out at full lift. */
  readonly atLobeLift: Entered | undefined;
  /** The small hand was read, and which way the hand ran. */
  readonly counted: boolean;
  readonly replaces: string | undefined;
  /** The reading that came in its place, if any. */
  readonly replacedBy: string | undefined;
  /** A struck reading takes another's place and holds no value of its own. */
  readonly struck: boolean;
  readonly reason: string;
  readonly by: string;
  readonly byKind: string;
  readonly at: Date;
}

function unitOf(text: string): Unit {
  if (isUnit(text)) return text;
  throw new Error(`a stored reading has the unknown unit ${text}`);
}

type StationColumns = Pick<Selectable<ReadingTable>, 'at_typed' | 'at_value' | 'at_unit' | 'at_read_as'>;

function stationOf({ at_typed, at_value, at_unit, at_read_as }: StationColumns): Entered | undefined {
  if (at_value === null || at_unit === null) return undefined;
  return { typed: at_typed ?? '', value: at_value, unit: unitOf(at_unit), readAs: at_read_as ?? '' };
}

const stationColumns = (at: Entered | undefined): StationColumns => ({
  at_typed: at?.typed ?? null,
  at_value: at?.value ?? null,
  at_unit: at?.unit ?? null,
  at_read_as: at?.readAs ?? null,
});

function toReading(row: Selectable<ReadingTable>, replacedBy: string | undefined): Reading {
  return {
    id: row.id,
    setUpId: row.set_up_id,
    seq: row.seq,
    kind: row.kind,
    pass: row.pass,
    peak: { typed: row.typed, value: row.value, unit: unitOf(row.unit), readAs: row.read_as },
    zeroReturn:
      row.zero_value === null || row.zero_unit === null
        ? undefined
        : { value: row.zero_value, unit: unitOf(row.zero_unit) },
    atLobeLift: stationOf(row),
    counted: row.counted,
    replaces: row.replaces ?? undefined,
    replacedBy,
    struck: row.struck,
    reason: row.reason,
    by: row.by_name,
    byKind: row.by_kind,
    at: row.created_at,
  };
}

function columnsOf(peak: Entered, zeroReturn: Entered | undefined) {
  return {
    typed: peak.typed,
    value: peak.value,
    unit: peak.unit,
    read_as: peak.readAs,
    zero_typed: zeroReturn?.typed ?? null,
    zero_value: zeroReturn?.value ?? null,
    zero_unit: zeroReturn?.unit ?? null,
  };
}

/** Keeps a reading of a pass, as entered. */
export async function keepReading(
  tx: Tx,
  caller: Caller,
  buildId: string,
  setUpId: string,
  input: z.output<typeof newReading>,
): Promise<Reading> {
  return onBuild(tx, caller, buildId, async ({ emit }) => {
    await refuseWhileHeld(tx, caller, buildId);
    await getSetUp(tx, caller, buildId, setUpId);
    const pass = input.pass ?? (await nextPass(tx, caller, setUpId, input.kind));
    const seq = await emit('reading-kept', {
      setUpId,
      kind: input.kind,
      pass,
      typed: input.peak.typed,
      readAs: input.peak.readAs,
      ...(input.zeroReturn === undefined ? {} : { zeroReturn: input.zeroReturn.readAs }),
      ...(input.atLobeLift === undefined ? {} : { atLobeLift: input.atLobeLift.readAs }),
      ...(input.counted === true ? { counted: true } : {}),
    });
    const row = await tx
      .insertInto('reading')
      .values({
        shop_id: caller.shopId,
        build_id: buildId,
        set_up_id: setUpId,
        seq,
        kind: input.kind,
        pass,
        ...columnsOf(input.peak, input.zeroReturn),
        ...stationColumns(input.atLobeLift),
        counted: input.counted ?? false,
        replaces: null,
        ...author(caller),
      })
      .returningAll()
      .executeTakeFirstOrThrow();
    return toReading(row, undefined);
  });
}

async function nextPass(tx: Tx, caller: Caller, setUpId: string, kind: string): Promise<number> {
  const { last } = await tx
    .selectFrom('reading')
    .select(({ fn }) => fn.max('pass').as('last'))
    .where('shop_id', '=', caller.shopId)
    .where('set_up_id', '=', setUpId)
    .where('kind', '=', kind)
    .executeTakeFirstOrThrow();
  const next = (last ?? 0) + 1;
  if (next > 99) throw new Failure('conflict', 'this set-up has its 99 passes; start a new one');
  return next;
}

/** Replaces a reading, or strikes it out, with the reason; the old one stays where it was. */
export async function replaceReading(
  tx: Tx,
  caller: Caller,
  buildId: string,
  readingId: string,
  input: z.output<typeof correctReading>,
): Promise<Reading> {
  return onBuild(tx, caller, buildId, async ({ emit }) => {
    const old = await readingRow(tx, caller, buildId, readingId);
    const later = await tx
      .selectFrom('reading')
      .select('id')
      .where('shop_id', '=', caller.shopId)
      .where('replaces', '=', readingId)
      .executeTakeFirst();
    if (later !== undefined) throw new Failure('conflict', 'this reading has been replaced already');
    if (old.struck)
      throw new Failure('conflict', 'this line strikes a reading out; keep a new reading instead');
    const struck = input.peak === undefined;
    const seq = await emit(struck ? 'reading-struck' : 'reading-replaced', {
      setUpId: old.set_up_id,
      kind: old.kind,
      pass: old.pass,
      ...(old.at_read_as === null ? {} : { atLobeLift: old.at_read_as }),
      replaces: old.read_as,
      replacesId: old.id,
      reason: input.reason,
      ...(input.peak === undefined ? {} : { typed: input.peak.typed, readAs: input.peak.readAs }),
    });
    const values = input.peak === undefined ? struckColumns(old) : columnsOf(input.peak, input.zeroReturn);
    const row = await tx
      .insertInto('reading')
      .values({
        shop_id: caller.shopId,
        build_id: buildId,
        set_up_id: old.set_up_id,
        seq,
        kind: old.kind,
        pass: old.pass,
        ...values,
        ...stationColumns(stationOf(old)),
        counted: old.counted,
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

function struckColumns(old: Selectable<ReadingTable>) {
  const { typed, value, unit, read_as, zero_typed, zero_value, zero_unit } = old;
  return { typed, value, unit, read_as, zero_typed, zero_value, zero_unit };
}

async function readingRow(
  tx: Tx,
  caller: Caller,
  buildId: string,
  readingId: string,
): Promise<Selectable<ReadingTable>> {
  const row = await tx
    .selectFrom('reading')
    .selectAll()
    .where('shop_id', '=', caller.shopId)
    .where('build_id', '=', buildId)
    .where('id', '=', readingId)
    .executeTakeFirst();
  if (row === undefined) throw notFound('reading');
  return row;
}

/** Every reading of a build in the order of entry, replaced and struck ones included. */
export async function listReadings(
  tx: Tx,
  caller: Caller,
  buildId: string,
  setUpId?: string,
): Promise<Reading[]> {
  requireBuild(caller, buildId, 'read');
  const rows = await tx
    .selectFrom('reading')
    .selectAll()
    .where('shop_id', '=', caller.shopId)
    .where('build_id', '=', buildId)
    .$if(setUpId !== undefined, (query) => query.where('set_up_id', '=', setUpId ?? ''))
    .orderBy('seq')
    .execute();
  const replacedBy = new Map(
    rows.flatMap((row) => (row.replaces === null ? [] : [[row.replaces, row.id] as const])),
  );
  return (await listedOf(tx, caller, buildId, rows)).map((row) => toReading(row, replacedBy.get(row.id)));
}

/** The readings that stand: neither replaced nor a striking-out. */
export function standing(readings: readonly Reading[]): Reading[] {
  return readings.filter((reading) => reading.replacedBy === undefined && !reading.struck);
}
