import { sql } from 'kysely';
import type { Tx } from '../database/database.ts';
import { EVENT_CHANNEL } from '../database/event-channel.ts';

/** Says that what this person or key may do has changed: streams of theirs look once more whether they may go on. */
export async function hintRights(tx: Tx, id: string): Promise<void> {
  await sql`select pg_notify(${EVENT_CHANNEL}, ${`${id} rights`})`.execute(tx);
}
