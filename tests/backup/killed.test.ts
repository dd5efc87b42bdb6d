import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import pg from 'pg';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { writeBackup } from '../../server/backup/write-backup.ts';
import { migrate } from '../../server/database/migrate.ts';
import { filledCall } from '../tools/filled-call.ts';
import { type TestService, testService } from '../tools/service.ts';
import { forget, watch } from '../tools/watchdog.ts';
import { type EmptyDatabase, emptyDatabase } from './empty-database.ts';

const ENTRY = fileURLToPath(new URL('../../server/backup/restore.ts', import.meta.url));

let service: TestService;
let folder: string;
let target: EmptyDatabase;

beforeAll(async () => {
  service = await testService();
  await filledCall(service, await service.person(), 'Heron of the north bank');
  folder = await mkdtemp(path.join(tmpdir(), 'benchcall-backup-'));
  await writeBackup(service.database.ownerUrl, path.join(folder, 'sound'));
  target = await emptyDatabase();
});
afterAll(async () => {
  await target.drop();
  await rm(folder, { recursive: true, force: true });
  await service.close();
});

/** The restore as an operator starts it. */
function restoring() {
  const child = spawn(process.execPath, ['--import', 'tsx', ENTRY, path.join(folder, 'sound')], {
    env: { ...process.env, NODE_ENV: 'development', DATABASE_URL: target.url },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const entry = `process ${child.pid ?? Number.NaN}` as const;
  watch(entry);
  child.once('exit', () => forget(entry));
  let said = '';
  for (const stream of [child.stdout, child.stderr])
    stream.on('data', (part: Buffer) => {
      said += part.toString();
    });
  return { child, said: () => said };
}

/** Asks until some session waits for a lock of the target. */
async function somebodyWaits(holder: pg.Client): Promise<void> {
  for (;;) {
    const { rowCount } = await holder.query(
      'select 1 from pg_locks where not granted and database = (select oid from pg_database where datname = current_database())',
    );
    if ((rowCount ?? 0) > 0) return;
  }
}

test('killed half-way a restore leaves the database empty, and the next one is whole', async () => {
  await migrate(target.url);
  const holder = new pg.Client({ connectionString: target.url });
  await holder.connect();
  // Of the tables that are filled late: by now most rows are in.
  await holder.query('begin; lock table working in access share mode');
  const first = restoring();
  const ended = once(first.child, 'exit');
  await Promise.race([somebodyWaits(holder), ended]);
  first.child.kill('SIGKILL');
  await ended;
  await holder.query('rollback');
  await holder.end();
  expect(await target.query('select id from shop'), first.said()).toEqual([]);

  const second = restoring();
  const [code] = await once(second.child, 'exit');
  expect(second.said()).toMatch(/^Restored as it was at .*: 1 shop, \d+ rows\.$/m);
  expect(code).toBe(0);
  const third = restoring();
  expect(await once(third.child, 'exit')).toEqual([1, null]);
  expect(third.said()).toMatch(/^there is a shop in this database already/m);
});
