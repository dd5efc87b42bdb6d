import { readdir, readFile } from 'node:fs/promises';
import { Kysely, type Migration, type MigrationResultSet, Migrator, PostgresDialect, sql } from 'kysely';
import pg from 'pg';
import { memberOf } from '../../shared/member.ts';

const FOLDER = new URL('../../migrations/', import.meta.url);

/** Ordered SQL files as migrations; forward only, so there is no `down`. */
async function migrations(): Promise<Record<string, Migration>> {
  const files = (await readdir(FOLDER)).filter((file) => /^\d{4}_.*\.sql$/.test(file)).sort();
  const texts = await Promise.all(files.map((file) => readFile(new URL(file, FOLDER), 'utf8')));
  return Object.fromEntries(
    files.map((file, index) => [
      file.replace(/\.sql$/, ''),
      { up: async (db: Kysely<unknown>) => void (await sql.raw(texts[index] ?? '').execute(db)) },
    ]),
  );
}

export async function migrationNames(): Promise<string[]> {
  return Object.keys(await migrations());
}

const LOCK_NOT_AVAILABLE = '55P03';

/**
 * Brings the database up to date, in one transaction under an advisory lock, so that any number of processes
 * may start at once. A lock that can't be had within seconds is given up and tried again: a waiting ALTER
 * would otherwise hold up every reader behind it.
 */
export function migrate(ownerUrl: string, attempts = 10): Promise<void> {
  return migrated(ownerUrl, (migrator) => migrator.migrateToLatest(), attempts);
}

/** Brings an older database, or an empty one, as far as one migration. */
export function migrateTo(ownerUrl: string, name: string): Promise<void> {
  return migrated(ownerUrl, (migrator) => migrator.migrateTo(name), 10);
}

async function migrated(
  ownerUrl: string,
  work: (migrator: Migrator) => Promise<MigrationResultSet>,
  attempts: number,
): Promise<void> {
  const pool = new pg.Pool({
    connectionString: ownerUrl,
    max: 2,
    options: '-c lock_timeout=4000',
    connectionTimeoutMillis: 10_000,
  });
  const db = new Kysely<unknown>({ dialect: new PostgresDialect({ pool }) });
  try {
    const migrator = new Migrator({ db, provider: { getMigrations: migrations } });
    for (let attempt = 1; ; attempt += 1) {
      const { error } = await work(migrator);
      if (error === undefined) return;
      const code = memberOf(error, 'code');
      if (code !== LOCK_NOT_AVAILABLE || attempt >= attempts) throw error;
    }
  } finally {
    await db.destroy();
  }
}
