import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFile, stat, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import path from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { PGDATA } from '../../server/database/embedded/cluster.ts';
import { openDataFolder } from '../../server/database/embedded/data-folder.ts';
import { findPrograms, runProgram } from '../../server/database/embedded/programs.ts';
import { startEmbedded } from '../../server/database/embedded/start-embedded.ts';
import {
  clusterOf,
  dataFolder,
  killServer,
  postmasterPid,
  readings,
  writeReading,
} from '../tools/embedded-bench.ts';
import { startHolder } from '../tools/embedded-holder.ts';

const quiet = () => undefined;

const lockFileOf = (dataDir: string) => path.join(clusterOf(dataDir), 'postmaster.pid');

/** A data folder with one reading whose service and server were both killed. */
async function crashed(): Promise<string> {
  const dataDir = await dataFolder();
  const service = await startHolder(dataDir);
  await writeReading(service.ownerUrl, '.450');
  await service.kill();
  await killServer(dataDir);
  return dataDir;
}

/** A process of PostgreSQL's own account that has nothing to do with it. */
async function stranger(uid: number, gid: number): Promise<ChildProcess> {
  const child = spawn('sleep', ['600'], { uid, gid, cwd: '/', stdio: 'ignore' });
  await once(child, 'spawn');
  onTestFinished(() => {
    child.kill('SIGKILL');
  });
  return child;
}

test('a stale lock whose pid a stranger has by now does not stop the start, and the stranger lives', async () => {
  const dataDir = await crashed();
  const { uid, gid } = await stat(clusterOf(dataDir));
  const other = await stranger(uid, gid);
  const lock = lockFileOf(dataDir);
  const stale = (await readFile(lock, 'utf8')).replace(/^\d+/, String(other.pid));
  await writeFile(lock, stale);

  // The danger is there: PostgreSQL by itself refuses ("lock file already exists", miscinit.c).
  const { account } = await openDataFolder(dataDir);
  const { postgres } = await findPrograms(account);
  await expect(
    runProgram(postgres, ['-D', PGDATA], { cwd: clusterOf(dataDir), ...account }),
  ).rejects.toMatchObject({
    code: 1,
    stderr: expect.stringContaining('lock file "postmaster.pid" already exists'),
  });

  const server = await startEmbedded({ dataDir, log: quiet });
  expect(server.adopted).toBe(false);
  expect(await readings(server.ownerUrl)).toEqual(['.450']);
  expect(await postmasterPid(dataDir)).not.toBe(other.pid);
  expect(other.exitCode ?? other.signalCode).toBeNull();
  await server.stop();
}, 40_000);

test('a stale lock whose port a stranger has by now does not stop the start: it takes another port', async () => {
  const dataDir = await crashed();
  const port = Number((await readFile(lockFileOf(dataDir), 'utf8')).split('\n')[3]);
  const other = createServer((socket) => void socket.end('HTTP/1.1 400 Bad Request\r\n\r\n'));
  other.listen(port, '127.0.0.1');
  await once(other, 'listening');
  onTestFinished(() => void other.close());
  const server = await startEmbedded({ dataDir, log: quiet });
  expect(Number(new URL(server.ownerUrl).port)).not.toBe(port);
  expect(await readings(server.ownerUrl)).toEqual(['.450']);
  await server.stop();
}, 40_000);

test('a lock file that was cut off before its pid was written does not stop the start', async () => {
  const dataDir = await dataFolder();
  const first = await startEmbedded({ dataDir, log: quiet });
  await writeReading(first.ownerUrl, '.450');
  await first.stop();
  await writeFile(lockFileOf(dataDir), '');
  const said: string[] = [];
  const server = await startEmbedded({ dataDir, log: (message) => said.push(message) });
  expect(said).toContain('Removing a lock file that was cut off while it was written.');
  expect(await readings(server.ownerUrl)).toEqual(['.450']);
  await server.stop();
}, 40_000);
