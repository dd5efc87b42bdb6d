import type { Pool } from 'pg';

/*
 * What is past its time goes: the answers of commands, sessions that ended, browsers that nobody signs in with any more,
 * and the list of who came in. Which rows these are is said by the policies `past_its_time` in the migrations: without a
 * shop a delete takes those, of every shop, and no others.
 */

const TABLES = [
  'idempotency',
  'staff_session',
  'builder_session',
  'staff_device',
  'password_link',
  'security_event',
] as const;
const EVERY_MS = 3_600_000;

/** Deletes what is past its time; answers how many rows of each table. Two processes at once do no harm. */
export async function removePast(pool: Pool): Promise<Record<string, number>> {
  const removed: Record<string, number> = {};
  const client = await pool.connect();
  try {
    for (const table of TABLES) {
      // After a long pause there may be more of it than a statement of a request may take time for.
      await client.query("begin; set local statement_timeout = '10min'");
      removed[table] = (await client.query(`delete from ${table}`)).rowCount ?? 0;
      await client.query('commit');
    }
    client.release();
  } catch (error) {
    // What it was in the middle of ends with its connection.
    client.release(true);
    throw error;
  }
  return removed;
}

export interface Retention {
  close(): void;
}

/** Does so now and every hour; one that fails is done again at the next. */
export function openRetention(pool: Pool, say: (message: string) => void): Retention {
  const run = () => {
    removePast(pool).catch((error: unknown) =>
      say(`what is past its time was not removed: ${String(error)}`),
    );
  };
  run();
  const timer = setInterval(run, EVERY_MS);
  timer.unref();
  return { close: () => clearInterval(timer) };
}
