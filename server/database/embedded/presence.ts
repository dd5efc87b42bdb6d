import { randomUUID } from 'node:crypto';
import type pg from 'pg';
import { connectAsOwner } from './connect.ts';

const PREFIX = 'benchcall presence ';

export function presenceName(): string {
  return `${PREFIX}${randomUUID()}`;
}

/**
 * One idle connection for as long as a process uses the server. Others count these before they stop it, and
 * its end is the first sign that the server has died, whoever started it.
 */
export async function openPresence(
  port: number,
  password: string,
  name: string,
  lost: () => void,
): Promise<pg.Client> {
  const client = await connectAsOwner(port, password, name);
  client.once('end', lost);
  return client;
}

/** How many others use the server. One's own presence may still be listed for a moment after it was closed. */
export async function countOthers(client: pg.Client, ownName: string): Promise<number> {
  const found = await client.query(
    `SELECT 1 FROM pg_stat_activity
     WHERE backend_type = 'client backend' AND starts_with(application_name, $1) AND application_name <> $2`,
    [PREFIX, ownName],
  );
  return found.rowCount ?? 0;
}
