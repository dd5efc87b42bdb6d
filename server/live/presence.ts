import { sql } from 'kysely';
import type { Principal } from '../auth/principal.ts';
import type { Tx } from '../database/database.ts';
import { EVENT_CHANNEL } from '../database/event-channel.ts';

/** Somebody who has the build open. */
export interface Present {
  readonly id: string;
  readonly who: string;
  readonly kind: string;
  readonly step: string;
}

/** A stream renews its row this often; one that missed it twice is gone. */
export const RENEW_MS = 15_000;
const GONE = sql`interval '40 seconds'`;

async function hint(tx: Tx, buildId: string): Promise<void> {
  await sql`select pg_notify(${EVENT_CHANNEL}, ${`${buildId} presence`})`.execute(tx);
}

/** Says that a stream is open at a step, or still is. */
export async function arrive(
  tx: Tx,
  principal: Principal,
  buildId: string,
  id: string,
  step: string,
): Promise<void> {
  const { numInsertedOrUpdatedRows } = await tx
    .insertInto('presence')
    .values({
      shop_id: principal.shopId,
      build_id: buildId,
      id,
      who: principal.name,
      kind: principal.kind,
      step,
    })
    .onConflict((conflict) => conflict.columns(['shop_id', 'build_id', 'id']).doNothing())
    .executeTakeFirst();
  if (numInsertedOrUpdatedRows) {
    await tx
      .deleteFrom('presence')
      .where('shop_id', '=', principal.shopId)
      .where('build_id', '=', buildId)
      .where('seen_at', '<', sql<Date>`now() - ${GONE}`)
      .execute();
    await hint(tx, buildId);
    return;
  }
  await tx
    .updateTable('presence')
    .set({ seen_at: sql<Date>`now()` })
    .where('shop_id', '=', principal.shopId)
    .where('build_id', '=', buildId)
    .where('id', '=', id)
    .execute();
}

export async function leave(tx: Tx, principal: Principal, buildId: string, id: string): Promise<void> {
  await tx
    .deleteFrom('presence')
    .where('shop_id', '=', principal.shopId)
    .where('build_id', '=', buildId)
    .where('id', '=', id)
    .execute();
  await hint(tx, buildId);
}

/** Who has the build open now. */
export async function whoIsHere(tx: Tx, principal: Principal, buildId: string): Promise<Present[]> {
  const rows = await tx
    .selectFrom('presence')
    .select(['id', 'who', 'kind', 'step'])
    .where('shop_id', '=', principal.shopId)
    .where('build_id', '=', buildId)
    .where('seen_at', '>', sql<Date>`now() - ${GONE}`)
    .orderBy('who')
    .orderBy('id')
    .execute();
  return rows;
}
