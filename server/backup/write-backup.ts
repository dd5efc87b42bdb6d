import { createWriteStream } from 'node:fs';
import { mkdir, mkdtemp, open, rename, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import { pipeline } from 'node:stream/promises';
import { createGzip } from 'node:zlib';
import pg from 'pg';
import { to as copyTo } from 'pg-copy-streams';
import { codeOf } from '../database/busy.ts';
import { BackupFault } from './fault.ts';
import { checkFiles, syncFolder } from './files.ts';
import { MANIFEST, type Manifest } from './manifest.ts';
import { meter } from './meter.ts';
import { type BackedUpTable, backedUpTables, copyOut, SAME_TEXT } from './tables.ts';

/** Tables whose rows this role would not all see: its backup would be a part that looks like a whole. */
const UNSEEN = `
select c.relname as name from pg_class c
where c.relnamespace = current_schema()::regnamespace and c.relkind = 'r' and c.relrowsecurity
  and not (select rolsuper or rolbypassrls from pg_roles where rolname = current_user)
  and not exists (select 1 from pg_policies p where p.schemaname = current_schema() and p.tablename = c.relname
    and p.policyname = 'whole_read' and current_user = any(p.roles))
order by 1`;

async function seesAll(client: pg.Client): Promise<void> {
  const { rows } = await client.query<{ name: string }>(UNSEEN);
  if (rows.length === 0) return;
  const { rows: who } = await client.query<{ role: string }>('select current_user as role');
  throw new BackupFault(
    `the role ${String(who[0]?.role)} does not see all rows of ${rows.map(({ name }) => name).join(', ')}: ` +
      'DATABASE_URL has to name the role that the service was migrated as',
  );
}

/** One table into its file, of the moment of the transaction. */
async function writeTable(
  client: pg.Client,
  folder: string,
  table: BackedUpTable,
): Promise<Manifest['tables'][number]> {
  const file = `${table.name}.copy.gz`;
  const measured = meter();
  const rows = client.query(copyTo(copyOut(client, table)));
  await pipeline(
    rows,
    measured.stream,
    createGzip(),
    createWriteStream(path.join(folder, file), { flags: 'wx', mode: 0o600, flush: true }),
  );
  return {
    name: table.name,
    columns: [...table.columns],
    key: [...table.key],
    file,
    rows: rows.rowCount ?? 0,
    sha256: measured.digest(),
  };
}

/** How many rows of each table each shop has. */
export async function rowsByShop(
  client: pg.Client,
  tables: readonly BackedUpTable[],
): Promise<Manifest['shops']> {
  const { rows: shops } = await client.query<{ id: string }>('select id from shop order by id');
  const counted = new Map<string, Record<string, number>>(shops.map(({ id }) => [id, {}]));
  for (const { name } of tables.filter(({ columns }) => columns.includes('shop_id'))) {
    const { rows } = await client.query<{ shop: string; rows: number }>(
      `select shop_id as shop, count(*)::int as rows from ${client.escapeIdentifier(name)} group by shop_id`,
    );
    for (const { shop, rows: count } of rows) {
      const own = counted.get(shop);
      if (own === undefined)
        throw new BackupFault(`${name} has rows of the shop ${shop}, which does not exist`);
      own[name] = count;
    }
  }
  return [...counted].map(([id, rows]) => ({ id, rows }));
}

async function writeInto(client: pg.Client, folder: string): Promise<Manifest> {
  await client.query(
    `begin isolation level repeatable read, read only; ${SAME_TEXT}; set local app.whole = 'read'`,
  );
  await seesAll(client);
  const { rows } = await client.query<{ at: Date; migration: string; server: string }>(
    "select now() as at, newest_migration() as migration, current_setting('server_version') as server",
  );
  const [of] = rows;
  if (of === undefined) throw new Error('the database did not say of when it is');
  const tables = await backedUpTables(client);
  const written: Manifest['tables'] = [];
  for (const table of tables) written.push(await writeTable(client, folder, table));
  const shops = await rowsByShop(client, tables);
  await client.query('commit');
  return {
    what: 'benchcall backup',
    version: 1,
    at: of.at.toISOString(),
    migration: of.migration,
    server: of.server,
    tables: written,
    shops,
  };
}

const taken = (folder: string): BackupFault =>
  new BackupFault(`${folder} is there already: a backup is written into a folder of its own`);

const isThere = (folder: string): Promise<boolean> =>
  stat(folder).then(
    () => true,
    (error: unknown) => {
      if (codeOf(error) === 'ENOENT') return false;
      throw error;
    },
  );

async function writeManifest(folder: string, manifest: Manifest): Promise<void> {
  const handle = await open(path.join(folder, MANIFEST), 'wx', 0o600);
  try {
    await handle.writeFile(`${JSON.stringify(manifest, null, 2)}\n`);
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/**
 * Writes all shops, as they are at one moment, into a folder that is not there yet: a file of rows for each table and
 * a manifest. Writers are not held up. The folder gets its name when everything in it is written, read back and
 * found to be whole; what was broken off leaves nothing, or one whose name says that it is unfinished.
 *
 * @throws BackupFault where the role does not see every row, or the folder is there already
 */
export async function writeBackup(ownerUrl: string, folder: string): Promise<Manifest> {
  const target = path.resolve(folder);
  const home = path.dirname(target);
  await mkdir(home, { recursive: true });
  if (await isThere(target)) throw taken(target);
  const draft = await mkdtemp(`${target}.unfinished-`);
  const client = new pg.Client({ connectionString: ownerUrl, connectionTimeoutMillis: 10_000 });
  try {
    await client.connect();
    const manifest = await writeInto(client, draft);
    await writeManifest(draft, manifest);
    await checkFiles(draft, manifest);
    await syncFolder(draft);
    await rename(draft, target);
    await syncFolder(home);
    return manifest;
  } catch (error) {
    await rm(draft, { recursive: true, force: true });
    // Another backup took the name in the meantime.
    throw ['ENOTEMPTY', 'EEXIST'].includes(codeOf(error)) ? taken(target) : error;
  } finally {
    await client.end();
  }
}
