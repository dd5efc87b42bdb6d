import type pg from 'pg';
import { connectAsOwner } from './connect.ts';

const PREFIX = 'benchcall presence ';

/**
 * One idle connection for as long as a process uses the server. Others count these before they stop it, and
 * its end is the first sign that the server has died, whoever started it.
 */
export async function openPresence(port: number, password: string, lost: () => void): Promise<pg.Client> {
  const client = await connectAsOwner(port, password, `${PREFIX}${process.pid}`);
  client.once('end', lost);
  return client;
}

/** How many processes use the server, the one that asks left out when it has closed its own presence. */
export async function countPresences(client: pg.Client): Promise<number> {
  const found = await client.query(
    `SELECT 1 FROM pg_stat_activity WHERE backend_type = 'client backend' AND starts_with(application_name, $1)`,
    [PREFIX],
  );
  return found.rowCount ?? 0;
}
