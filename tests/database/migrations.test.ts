import { randomBytes } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import pg from 'pg';
import { expect, inject, test } from 'vitest';
import { migrate, migrationNames } from '../../server/database/migrate.ts';
import { describeSchema } from '../tools/describe-schema.ts';

async function emptyDatabase(): Promise<{ url: string; drop: () => Promise<void> }> {
  const server = inject('ownerUrl');
  const name = `empty_${randomBytes(6).toString('hex')}`;
  const run = async (text: string) => {
    const client = new pg.Client({ connectionString: server });
    await client.connect();
    await client.query(text);
    await client.end();
  };
  await run(`create database ${name} template template0`);
  const url = new URL(server);
  url.pathname = `/${name}`;
  return { url: url.href, drop: () => run(`drop database ${name} with (force)`) };
}

async function ask(url: string, text: string): Promise<Record<string, unknown>[]> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    return (await client.query<Record<string, unknown>>(text)).rows;
  } finally {
    await client.end();
  }
}

test('migrations/schema.sql is what the migrations make; run `npm run schema` after a new one', async () => {
  const url = new URL(inject('ownerUrl'));
  url.pathname = '/benchcall_template';
  const kept = await readFile(new URL('../../migrations/schema.sql', import.meta.url), 'utf8');
  expect(await describeSchema(url.href)).toBe(kept);
});

test('twenty processes that start at once bring one database up to date', async () => {
  const database = await emptyDatabase();
  try {
    await Promise.all(Array.from({ length: 20 }, () => migrate(database.url)));
    const rows = await ask(database.url, 'select name from kysely_migration order by name');
    expect(rows.map((row) => row.name)).toEqual(await migrationNames());
  } finally {
    await database.drop();
  }
});

test('a migration that waits behind a long reader gives up its place in the queue and is tried again', async () => {
  const database = await emptyDatabase();
  const reader = new pg.Client({ connectionString: database.url });
  try {
    // The migrator's own tables, empty, so that there is one to stand in its way.
    await ask(
      database.url,
      'create table kysely_migration (name varchar(255) primary key, timestamp varchar(255) not null)',
    );
    await reader.connect();
    await reader.query('begin');
    await reader.query('lock table kysely_migration in share mode');
    await expect(migrate(database.url, 1)).rejects.toThrow(/lock timeout/);
    await reader.query('rollback');
    await migrate(database.url);
    const rows = await ask(database.url, 'select newest_migration() as newest');
    expect(rows[0]?.newest).toBe((await migrationNames()).at(-1));
  } finally {
    await reader.end();
    await database.drop();
  }
});
