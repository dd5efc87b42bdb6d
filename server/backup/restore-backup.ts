import { createReadStream } from 'node:fs';
import path from 'node:path';
import { Writable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { createGunzip } from 'node:zlib';
import pg from 'pg';
import { from as copyFrom, to as copyTo } from 'pg-copy-streams';
import { migrate, migrateTo, migrationNames } from '../database/migrate.ts';
import { BackupFault } from './fault.ts';
import { checkFiles, readManifest } from './files.ts';
import type { Manifest } from './manifest.ts';
import { meter } from './meter.ts';
import { backedUpTables, copyIn, copyOut, SAME_TEXT } from './tables.ts';
import { rowsByShop } from './write-backup.ts';

/** The newest migration of a database; nothing where nobody has migrated it. */
async function migrationOf(client: pg.Client): Promise<string | undefined> {
  const { rows: found } = await client.query<{ is: boolean }>(
    "select to_regclass('kysely_migration') is not null as is",
  );
  if (found[0]?.is !== true) return undefined;
  const { rows } = await client.query<{ newest: string | null }>(
    'select max(name) as newest from kysely_migration',
  );
  return rows[0]?.newest ?? undefined;
}

/** Only an empty database is restored into: what is there already would stand beside what comes. */
async function refuseUsed(client: pg.Client, { migration }: Manifest): Promise<void> {
  const has = await migrationOf(client);
  if (has === undefined) return;
  await client.query("begin read only; set local app.whole = 'read'");
  const { rows } = await client.query('select 1 from shop limit 1');
  await client.query('rollback');
  if (rows.length > 0)
    throw new BackupFault('there is a shop in this database already: restore into one that is empty');
  if (has !== migration)
    throw new BackupFault(
      `the database has the schema ${has} and the backup ${migration}: restore into a database that was just created, ` +
        'before the service has run on it',
    );
}

async function refuseNewer({ migration }: Manifest): Promise<void> {
  const known = await migrationNames();
  if (known.includes(migration)) return;
  throw new BackupFault(
    `the backup has the schema ${migration}, and this program knows ${String(known.at(-1))}: it was made by a newer one`,
  );
}

const nowhere = () => new Writable({ write: (_chunk, _encoding, done) => done() });

async function fill(client: pg.Client, folder: string, table: Manifest['tables'][number]): Promise<void> {
  const name = client.escapeIdentifier(table.name);
  // The owner is held by the policies of its own tables, and rows of many shops come at once.
  await client.query(`alter table ${name} no force row level security`);
  await pipeline(
    createReadStream(path.join(folder, table.file)),
    createGunzip(),
    client.query(copyFrom(copyIn(client, table))),
  );
  const measured = meter();
  await pipeline(client.query(copyTo(copyOut(client, table))), measured.stream, nowhere());
  if (measured.digest() !== table.sha256)
    throw new BackupFault(`${table.name} did not come out as it was backed up; nothing was restored`);
  await client.query(`alter table ${name} force row level security`);
}

async function fillAll(client: pg.Client, folder: string, manifest: Manifest): Promise<void> {
  await client.query(`begin; ${SAME_TEXT}`);
  try {
    const here = await backedUpTables(client);
    const missing = here.filter(({ name }) => !manifest.tables.some((each) => each.name === name));
    if (missing.length > 0)
      throw new BackupFault(`the backup lacks the tables ${missing.map(({ name }) => name).join(', ')}`);
    for (const table of manifest.tables) await fill(client, folder, table);
    await client.query("set local app.whole = 'read'");
    const shops = await rowsByShop(client, here);
    if (JSON.stringify(shops) !== JSON.stringify(manifest.shops))
      throw new BackupFault('the rows of the shops are not as many as were backed up; nothing was restored');
    await client.query('commit');
  } catch (error) {
    await client.query('rollback');
    throw error;
  }
}

/**
 * Brings a backup back into an empty database, all of it or nothing: every file is looked at before anything is
 * written, every table is read again and held to what was written, and then the schema is brought up to date. The
 * service's own role has its rights from the migrations; it has to be there already.
 *
 * @throws BackupFault where the backup is damaged or newer, or the database is not empty
 */
export async function restoreBackup(ownerUrl: string, folder: string): Promise<Manifest> {
  const manifest = await readManifest(folder);
  await refuseNewer(manifest);
  await checkFiles(folder, manifest);
  const client = new pg.Client({ connectionString: ownerUrl, connectionTimeoutMillis: 10_000 });
  await client.connect();
  try {
    await refuseUsed(client, manifest);
    await migrateTo(ownerUrl, manifest.migration);
    await fillAll(client, folder, manifest);
  } finally {
    await client.end();
  }
  await migrate(ownerUrl);
  return manifest;
}
