import { once } from 'node:events';
import { readdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { expect, test } from 'vitest';
import { ifPresent } from '../../server/database/embedded/data-folder.ts';
import { waitUntil } from '../../server/database/embedded/server-process.ts';
import { startEmbedded } from '../../server/database/embedded/start-embedded.ts';
import { dataFolder, query } from '../tools/embedded-bench.ts';
import { forkHolder } from '../tools/embedded-holder.ts';

const quiet = () => undefined;

async function namesIn(folder: string): Promise<string[]> {
  return (await ifPresent(readdir(folder))) ?? [];
}

async function unfinished(dataDir: string): Promise<string[]> {
  const names = await namesIn(path.join(dataDir, 'postgres'));
  return names.filter((name) => name.startsWith('unfinished-'));
}

async function initdbIsAtWork(dataDir: string): Promise<boolean> {
  const [workshop = ''] = await unfinished(dataDir);
  const files = await namesIn(path.join(dataDir, 'postgres', workshop, 'cluster'));
  return files.includes('postgresql.conf');
}

test('a first start killed half way through is begun again by the next one', async () => {
  const dataDir = await dataFolder();
  const first = forkHolder(dataDir);
  expect(await waitUntil(() => initdbIsAtWork(dataDir), 20_000)).toBe(true);
  const ended = once(first, 'exit');
  process.kill(-(first.pid ?? Number.NaN), 'SIGKILL');
  await ended;
  expect(await unfinished(dataDir)).toHaveLength(1);
  expect(await readdir(path.join(dataDir, 'postgres'))).not.toContain('cluster');

  const server = await startEmbedded({ dataDir, log: quiet });
  expect(await query(server.ownerUrl, 'SELECT current_database()')).toEqual([['benchcall']]);
  expect(await unfinished(dataDir)).toEqual([]);
  await server.stop();
}, 40_000);

test('a start killed before it made the database makes it at the next one', async () => {
  const dataDir = await dataFolder();
  const first = await startEmbedded({ dataDir, log: quiet });
  await query(first.ownerUrl.replace(/benchcall$/, 'postgres'), 'DROP DATABASE benchcall');
  await first.stop();
  const server = await startEmbedded({ dataDir, log: quiet });
  expect(await query(server.ownerUrl, 'SELECT current_database()')).toEqual([['benchcall']]);
  await server.stop();
}, 40_000);

test('a data folder of another major version is left alone, and the way on is said', async () => {
  const dataDir = await dataFolder();
  const first = await startEmbedded({ dataDir, log: quiet });
  await first.stop();
  const version = path.join(dataDir, 'postgres', 'cluster', 'PG_VERSION');
  const here = await readFile(version, 'utf8');
  await writeFile(version, '9\n');
  await expect(startEmbedded({ dataDir, log: quiet })).rejects.toThrow(
    /is of PostgreSQL 9, and this program brings \d+\. With the program that made it: npm run backup/,
  );
  await writeFile(version, here);
  const again = await startEmbedded({ dataDir, log: quiet });
  expect(await query(again.ownerUrl, 'SELECT 1')).toEqual([[1]]);
  await again.stop();
}, 40_000);
