import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFile, stat, writeFile } from 'node:fs/promises';
import { expect, onTestFinished, test } from 'vitest';
import { findBinaries } from '../../server/database/embedded/binaries.ts';
import { openFolders } from '../../server/database/embedded/folders.ts';
import { lockFilePath } from '../../server/database/embedded/lock-file.ts';
import { placeOf } from '../../server/database/embedded/place.ts';
import { PLAIN_ENVIRONMENT, runProgram } from '../../server/database/embedded/run-program.ts';
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
  const child = spawn('sleep', ['600'], { uid, gid, cwd: '/', stdio: 'ignore', env: PLAIN_ENVIRONMENT });
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
  const lock = lockFilePath(clusterOf(dataDir));
  const stale = (await readFile(lock, 'utf8')).replace(/^\d+/, String(other.pid));
  await writeFile(lock, stale);

  // The danger is there: PostgreSQL by itself refuses ("lock file already exists", miscinit.c).
  const folders = await openFolders(dataDir);
  const { options, folderName } = placeOf(folders.cluster, folders.account);
  const { postgres } = await findBinaries(folders.account);
  const bare = await runProgram(postgres, ['-D', folderName], options);
  expect(bare.code).toBe(1);
  expect(bare.output).toContain('lock file "postmaster.pid" already exists');

  const server = await startEmbedded({ dataDir, log: quiet });
  expect(server.adopted).toBe(false);
  expect(await readings(server.ownerUrl)).toEqual(['.450']);
  expect(await postmasterPid(dataDir)).not.toBe(other.pid);
  expect(other.exitCode ?? other.signalCode).toBeNull();
  await server.stop();
}, 40_000);

test('a lock file that was cut off before its pid was written does not stop the start', async () => {
  const dataDir = await dataFolder();
  const first = await startEmbedded({ dataDir, log: quiet });
  await writeReading(first.ownerUrl, '.450');
  await first.stop();
  await writeFile(lockFilePath(clusterOf(dataDir)), '');
  const said: string[] = [];
  const server = await startEmbedded({ dataDir, log: (message) => said.push(message) });
  expect(said).toContain('Removing a lock file that was cut off while it was written.');
  expect(await readings(server.ownerUrl)).toEqual(['.450']);
  await server.stop();
}, 40_000);
