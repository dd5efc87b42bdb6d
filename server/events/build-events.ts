import type { Selectable } from 'kysely';
import type { Principal } from '../auth/principal.ts';
import type { Tx } from '../database/database.ts';
import type { EventTable } from '../database/tables/record.ts';
import { rowsOfBuild } from './rows-of-build.ts';

/** One line of a build's record. */
export interface RecordedEvent {
  readonly seq: number;
  readonly kind: string;
  readonly data: object;
  readonly by: string;
  readonly byKind: string;
  readonly at: Date;
  /** When it was typed, by the clock of the device it was typed on. */
  readonly typedAt?: Date;
  /** It came under a stop, and was said to have been read before it. */
  readonly beforeStop?: true;
}

export const toEvent = (row: Selectable<EventTable>): RecordedEvent => ({
  seq: row.seq,
  kind: row.kind,
  data: row.data,
  by: row.by_name,
  byKind: row.by_kind,
  at: row.created_at,
  ...(row.typed_at === null ? {} : { typedAt: row.typed_at }),
  ...(row.before_stop ? { beforeStop: true as const } : {}),
});

/** The events of a build after `after`, oldest first; the caller asks again from the last sequence it got. */
export async function eventsAfter(
  tx: Tx,
  principal: Principal,
  buildId: string,
  after: number,
  limit: number,
): Promise<RecordedEvent[]> {
  const rows = await rowsOfBuild(
    tx,
    principal,
    buildId,
    tx.selectFrom('event').selectAll().where('seq', '>', after).orderBy('seq').limit(limit),
  );
  return rows.map(toEvent);
}

/** The newest events of a build, newest first, as many as `most`. */
export const selectNewestEvents = (tx: Tx, most: number) =>
  tx.selectFrom('event').selectAll().orderBy('seq', 'desc').limit(most);
