import type { Selectable } from 'kysely';
import { isUnit, type Quantity } from '../../shared/quantities/units.ts';
import type { CorrectPartReading, NewPartReading } from '../../shared/schemas/part-reading.ts';
import { author, type Caller, requireBuild } from '../access/caller.ts';
import { refuseWhileHeld } from '../calls/calls.ts';
import type { Tx } from '../database/database.ts';
import type { PartReadingTable } from '../database/tables.ts';
import { Failure, notFound } from '../problems/failure.ts';
import { listedOf } from '../record/readable.ts';
import { onBuild } from '../record/record.ts';
import { entryOf, isEmpty } from './entry.ts';

/** One thing read, seen or found written on the part, as it was entered. It is never changed. */
export interface PartReading {
  readonly id: string;
  readonly seq: number;
  readonly kind: string;
  readonly typed: string;
  /** A size; features and marks have none. */
  readonly size: Quantity | undefined;
  readonly word: string | undefined;
  readonly readAs: string;
  readonly place: string;
  readonly replaces: string | undefined;
  readonly replacedBy: string | undefined;
  readonly struck: boolean;
  readonly reason: string;
  readonly by: string;
  readonly byKind: string;
  readonly at: Date;
}

type Row = Selectable<PartReadingTable>;

function sizeOf({ value, unit }: Row): Quantity | undefined {
  if (value === null || unit === null) return undefined;
  if (!isUnit(unit)) throw new Error(`a stored reading has the unknown unit ${unit}`);
  return { value, unit };
}

function toReading(row: Row, replacedBy: string | undefined): PartReading {
  return {
    id: row.id,
    seq: row.seq,
    kind: row.kind,
    typed: row.typed,
    size: sizeOf(row),
    word: row.word ?? undefined,
    readAs: row.read_as,
    place: row.place,
    replaces: row.replaces ?? undefined,
    replacedBy,
    struck: row.struck,
    reason: row.reason,
    by: row.by_name,
    byKind: row.by_kind,
    at: row.created_at,
  };
}

/** Keeps a reading of the part. */
export async function keepPartReading(
  tx: Tx,
  caller: Caller,
  buildId: string,
  input: NewPartReading,
): Promise<PartReading> {
  requireBuild(caller, buildId, 'write');
  const entry = entryOf(input.kind, input);
  return onBuild(tx, caller, buildId, async ({ emit }) => {
    await refuseWhileHeld(tx, caller, buildId);
    const { kind, place } = input;
    const seq = await emit('part-read', { kind, place, typed: entry.typed, readAs: entry.read_as });
    const row = await tx
      .insertInto('part_reading')
      .values({
        shop_id: caller.shopId,
        build_id: buildId,
        seq,
        kind,
        ...entry,
        place,
        replaces: null,
        struck: false,
        reason: '',
        ...author(caller),
      })
      .returningAll()
      .executeTakeFirstOrThrow();
    return toReading(row, undefined);
  });
}

/** Replaces a reading, or strikes it out, with the reason; the old one stays where it was. */
export async function replacePartReading(
  tx: Tx,
  caller: Caller,
  buildId: string,
  readingId: string,
  input: CorrectPartReading,
): Promise<PartReading> {
  return onBuild(tx, caller, buildId, async ({ emit }) => {
    const old = await standingRow(tx, caller, buildId, readingId);
    const struck = isEmpty(input);
    const { typed, value, unit, word, read_as } = struck ? old : entryOf(old.kind, input);
    const seq = await emit(struck ? 'part-reading-struck' : 'part-reading-replaced', {
      kind: old.kind,
      replaces: old.read_as,
      replacesId: old.id,
      reason: input.reason,
      ...(struck ? {} : { typed, readAs: read_as, place: input.place }),
    });
    const row = await tx
      .insertInto('part_reading')
      .values({
        shop_id: caller.shopId,
        build_id: buildId,
        seq,
        kind: old.kind,
        typed,
        value,
        unit,
        word,
        read_as,
        place: struck ? old.place : input.place,
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

async function standingRow(tx: Tx, caller: Caller, buildId: string, readingId: string): Promise<Row> {
  const row = await tx
    .selectFrom('part_reading')
    .selectAll()
    .where('shop_id', '=', caller.shopId)
    .where('build_id', '=', buildId)
    .where('id', '=', readingId)
    .executeTakeFirst();
  if (row === undefined) throw notFound('reading');
  const later = await tx
    .selectFrom('part_reading')
    .select('id')
    .where('shop_id', '=', caller.shopId)
    .where('replaces', '=', readingId)
    .executeTakeFirst();
  if (later !== undefined) throw new Failure('conflict', 'this reading has been replaced already');
  if (row.struck)
    throw new Failure('conflict', 'this line strikes a reading out; keep a new reading instead');
  return row;
}

/** Every reading of the part in the order of entry, replaced and struck ones included. */
export async function listPartReadings(tx: Tx, caller: Caller, buildId: string): Promise<PartReading[]> {
  requireBuild(caller, buildId, 'read');
  const rows = await tx
    .selectFrom('part_reading')
    .selectAll()
    .where('shop_id', '=', caller.shopId)
    .where('build_id', '=', buildId)
    .orderBy('seq')
    .execute();
  const replacedBy = new Map(
    rows.flatMap((row) => (row.replaces === null ? [] : [[row.replaces, row.id] as const])),
  );
  return (await listedOf(tx, caller, buildId, rows)).map((row) => toReading(row, replacedBy.get(row.id)));
}

/** The readings that stand: neither replaced nor a striking-out. */
export function standingPart(readings: readonly PartReading[]): PartReading[] {
  return readings.filter((reading) => reading.replacedBy === undefined && !reading.struck);
}
