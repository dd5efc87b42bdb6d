import type { Principal } from '../auth/principal.ts';
import type { Tx } from '../database/database.ts';
import { rowsOfBuild } from './rows-of-build.ts';

/** One line of a build's record. */
export interface RecordedEvent {
  readonly seq: number;
  readonly kind: string;
  readonly data: object;
  readonly by: string;
  readonly byKind: string;
  readonly at: Date;
}

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
  return rows.map((row) => ({
    seq: row.seq,
    kind: row.kind,
    data: row.data,
    by: row.by_name,
    byKind: row.by_kind,
    at: row.created_at,
  }));
}
