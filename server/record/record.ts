import { sql } from 'kysely';
import { author, type Caller, requireBuild } from '../access/caller.ts';
import type { Database, Tx } from '../database/database.ts';
import { notFound } from '../problems/failure.ts';

/** The channel that tells other processes that a build has a new event. A hint only: the truth is read by sequence. */
export const EVENT_CHANNEL = 'benchcall_event';

/** One command on one build: its transaction, the locked build, and the events it leaves. */
export interface Command {
  readonly tx: Tx;
  readonly caller: Caller;
  readonly build: {
    readonly id: string;
    readonly label: string;
    readonly revision: number;
    readonly version: number;
  };
  /** Records an event; answers its sequence number in the build. */
  emit(kind: string, data: object): Promise<number>;
}

/**
 * Runs a command on a build inside `tx`. The build row is locked first, so that the build's events come in the
 * order in which their commands commit.
 */
export async function onBuild<T>(
  tx: Tx,
  caller: Caller,
  buildId: string,
  work: (command: Command) => Promise<T>,
): Promise<T> {
  requireBuild(caller, buildId, 'write');
  const row = await tx
    .selectFrom('build')
    .select(['id', 'label', 'revision', 'last_seq'])
    .where('shop_id', '=', caller.shopId)
    .where('id', '=', buildId)
    .forUpdate()
    .executeTakeFirst();
  if (row === undefined) throw notFound('build');
  let seq = row.last_seq;
  const answer = await work({
    tx,
    caller,
    build: { id: row.id, label: row.label, revision: row.revision, version: row.last_seq },
    async emit(kind, data) {
      seq += 1;
      await tx
        .insertInto('event')
        .values({
          shop_id: caller.shopId,
          build_id: buildId,
          seq,
          kind,
          data: JSON.stringify(data),
          ...author(caller),
        })
        .execute();
      return seq;
    },
  });
  if (seq !== row.last_seq) {
    await tx
      .updateTable('build')
      .set({ last_seq: seq })
      .where('shop_id', '=', caller.shopId)
      .where('id', '=', buildId)
      .execute();
    await sql`select pg_notify(${EVENT_CHANNEL}, ${`${buildId} ${seq}`})`.execute(tx);
  }
  return answer;
}

/** Opens a transaction of the caller's shop. */
export function inCallersShop<T>(db: Database, caller: Caller, work: (tx: Tx) => Promise<T>): Promise<T> {
  return db.inShop(caller.shopId, work);
}
