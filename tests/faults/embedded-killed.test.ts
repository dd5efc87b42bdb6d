import { expect, test } from 'vitest';
import { isRunning, waitUntil } from '../../server/database/embedded/server-process.ts';
import { startEmbedded } from '../../server/database/embedded/start-embedded.ts';
import {
  dataFolder,
  killServer,
  postmasterPid,
  query,
  readings,
  waitUntilGone,
  writeReading,
} from '../tools/embedded-bench.ts';
import { startHolder } from '../tools/embedded-holder.ts';

const quiet = () => undefined;

test('PostgreSQL killed below a running service comes back on the same port with every reading', async () => {
  const dataDir = await dataFolder();
  const said: string[] = [];
  const server = await startEmbedded({ dataDir, log: (message) => said.push(message) });
  await writeReading(server.ownerUrl, '.482');
  const killed = await killServer(dataDir);
  const back = await waitUntil(() => query(server.ownerUrl, 'SELECT 1').then(Boolean, () => false), 60_000);
  expect(back).toBe(true);
  expect(await readings(server.ownerUrl)).toEqual(['.482']);
  expect(await postmasterPid(dataDir)).not.toBe(killed);
  expect(said).toContain('The connection to the database server broke: looking after it.');
  // Once is no proof that the new server is watched too.
  await killServer(dataDir);
  expect(await waitUntil(() => query(server.ownerUrl, 'SELECT 1').then(Boolean, () => false), 60_000)).toBe(
    true,
  );
  const last = await postmasterPid(dataDir);
  await server.stop();
  await waitUntilGone(last);
}, 200_000);

test('a killed service leaves its server, and the next start takes it over and watches it', async () => {
  const dataDir = await dataFolder();
  const service = await startHolder(dataDir);
  expect(service.adopted).toBe(false);
  await writeReading(service.ownerUrl, '.519');
  await service.kill();
  const left = await postmasterPid(dataDir);
  expect(await isRunning(left)).toBe(true);

  const next = await startEmbedded({ dataDir, log: quiet });
  expect(next.adopted).toBe(true);
  expect(next.ownerUrl).toBe(service.ownerUrl);
  expect(await postmasterPid(dataDir)).toBe(left);
  expect(await readings(next.ownerUrl)).toEqual(['.519']);
  // The adopted server is no child of this process; it is brought back all the same.
  await killServer(dataDir);
  expect(await waitUntil(() => query(next.ownerUrl, 'SELECT 1').then(Boolean, () => false), 60_000)).toBe(
    true,
  );
  const last = await postmasterPid(dataDir);
  await next.stop();
  await waitUntilGone(last);
}, 200_000);

test('service and PostgreSQL killed together, in the middle of a long statement, start again', async () => {
  const dataDir = await dataFolder();
  const service = await startHolder(dataDir);
  await writeReading(service.ownerUrl, '.500');
  // Never acknowledged, and busy: its process does not notice the death of its server by itself at once.
  const busy = query(
    service.ownerUrl,
    "INSERT INTO bench_reading SELECT repeat('x', 9) FROM generate_series(1, 9e9)",
  );
  const broke = expect(busy).rejects.toThrow();
  const active =
    "SELECT 1 FROM pg_stat_activity WHERE state = 'active' AND query LIKE 'INSERT INTO bench%series%'";
  expect(await waitUntil(async () => (await query(service.ownerUrl, active)).length > 0, 5_000)).toBe(true);
  await service.kill();
  await killServer(dataDir);
  const next = await startEmbedded({ dataDir, log: quiet });
  await broke;
  expect(next.adopted).toBe(false);
  expect(await readings(next.ownerUrl)).toEqual(['.500']);
  await next.stop();
}, 200_000);

test('Ctrl-C reaches the service and not its server', async () => {
  const dataDir = await dataFolder();
  const service = await startHolder(dataDir);
  const pid = await postmasterPid(dataDir);
  // What a terminal does: SIGINT to the whole foreground process group.
  process.kill(-(service.child.pid ?? Number.NaN), 'SIGINT');
  await writeReading(service.ownerUrl, '.350');
  expect(await readings(service.ownerUrl)).toEqual(['.350']);
  expect(await postmasterPid(dataDir)).toBe(pid);
  await service.stop();
  await waitUntilGone(pid);
}, 200_000);
