import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { restoreBackup } from '../../server/backup/restore-backup.ts';
import { writeBackup } from '../../server/backup/write-backup.ts';
import { keepReading, openCall, startSetUp } from '../tools/call.ts';
import { filledCall } from '../tools/filled-call.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';
import { freePort, spawnService } from '../tools/spawn-service.ts';
import { type EmptyDatabase, emptyDatabase } from './empty-database.ts';

let service: TestService;
let first: Person;
let second: Person;
let folder: string;
let target: EmptyDatabase;

beforeAll(async () => {
  service = await testService();
  first = await service.person();
  second = await service.person();
  folder = await mkdtemp(path.join(tmpdir(), 'benchcall-backup-'));
  target = await emptyDatabase();
});
afterAll(async () => {
  await target.drop();
  await rm(folder, { recursive: true, force: true });
  await service.close();
});

/** Readings that are kept one after the other until somebody says that it is enough; answers how many. */
function writing(person: Person, buildId: string, setUpId: string): { stop(): Promise<number> } {
  let enough = false;
  async function all(): Promise<number> {
    let kept = 0;
    while (!enough) {
      await keepReading(service, person, buildId, setUpId, 'valve-lift', '.561 in');
      kept += 1;
    }
    return kept;
  }
  const kept = all();
  return {
    stop() {
      enough = true;
      return kept;
    },
  };
}

test('backed up while readings are kept, restored elsewhere, and the service runs on it', async () => {
  const { buildId } = await filledCall(service, first, 'Heron of the north bank');
  await filledCall(service, second, 'Another shop');
  const busy = await openCall(service, first, 'Written to meanwhile');
  const setUpId = await startSetUp(service, first, busy.buildId);
  const before = await keepReading(service, first, busy.buildId, setUpId, 'valve-lift', '.560 in');

  const writer = writing(first, busy.buildId, setUpId);
  const backup = path.join(folder, 'drill');
  const manifest = await writeBackup(service.database.ownerUrl, backup);
  expect(await writer.stop()).toBeGreaterThan(0);
  expect(await readdir(folder), 'nothing unfinished is left').toEqual(['drill']);
  expect(manifest.shops.map(({ id }) => id).sort()).toEqual([first.shopId, second.shopId].sort());

  await restoreBackup(target.url, backup);
  // A second route: what the owner counts there, table by table and shop by shop.
  for (const { id, rows } of manifest.shops)
    for (const [table, count] of Object.entries(rows))
      expect(
        await target.query(`select count(*)::int as n from ${table} where shop_id = '${id}'`),
        table,
      ).toEqual([{ n: count }]);
  expect(await target.query(`select count(*)::int as n from reading where id = '${before}'`)).toEqual([
    { n: 1 },
  ]);

  const answered = async (base: string, at: string): Promise<unknown> => {
    const answer = await fetch(`${base}/api/v1/${at}`, { headers: first.bearer });
    expect(answer.status, at).toBe(200);
    // When it was asked is of no record.
    return JSON.parse(await answer.text(), (key, value: unknown) =>
      key === 'exportedAt' ? undefined : value,
    );
  };
  const port = await freePort();
  const running = await spawnService({
    NODE_ENV: 'production',
    PORT: String(port),
    PUBLIC_URL: 'http://127.0.0.1',
    DATABASE_URL: target.url,
  });
  try {
    const here = await service.listen();
    const there = `http://127.0.0.1:${port}`;
    for (const at of [`builds/${buildId}/export`, `builds/${buildId}/assessment`])
      expect(await answered(there, at), at).toEqual(await answered(here, at));
  } finally {
    await running.end('SIGTERM');
  }
});
