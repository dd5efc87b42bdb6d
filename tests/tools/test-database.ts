import { randomBytes } from 'node:crypto';
import pg from 'pg';
import { inject } from 'vitest';
import { type Database, openDatabase } from '../../server/database/database.ts';
import { serviceUrl } from '../../server/database/service-role.ts';

/** A database of one test file: the owner's and the service's way in. */
export interface TestDatabase {
  readonly ownerUrl: string;
  readonly serviceUrl: string;
  readonly db: Database;
  /** A query as the owner of the tables. */
  asOwner(text: string, values?: unknown[]): Promise<pg.QueryResult<Record<string, unknown>>>;
  /** A query as the service's role, outside any shop. */
  asService(text: string, values?: unknown[]): Promise<pg.QueryResult<Record<string, unknown>>>;
  drop(): Promise<void>;
}

async function query(
  url: string,
  text: string,
  values: unknown[] = [],
): Promise<pg.QueryResult<Record<string, unknown>>> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    return await client.query<Record<string, unknown>>(text, values);
  } finally {
    await client.end();
  }
}

/** Clones the migrated template. */
export async function testDatabase(poolSize = 5): Promise<TestDatabase> {
  const server = inject('ownerUrl');
  const name = `test_${randomBytes(8).toString('hex')}`;
  // Two clones at the same moment are refused: a template must have no other session.
  const admin = new pg.Client({ connectionString: server });
  await admin.connect();
  await admin.query('select pg_advisory_lock(816)');
  // Copied as files: fifteen times as fast as through the log, which nothing here is recovered from.
  await admin.query(`create database ${name} template benchcall_template strategy file_copy`);
  await admin.query('select pg_advisory_unlock(816)');
  await admin.end();
  const own = new URL(server);
  own.pathname = `/${name}`;
  const service = serviceUrl(own.href);
  const db = openDatabase(service, { poolSize, onIdleError: () => undefined });
  return {
    ownerUrl: own.href,
    serviceUrl: service,
    db,
    asOwner: (text, values) => query(own.href, text, values),
    asService: (text, values) => query(service, text, values),
    async drop() {
      await db.close();
      await query(server, `drop database ${name} with (force)`);
    },
  };
}
