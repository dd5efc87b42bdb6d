import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { readLockFile } from '../../server/database/embedded/lock-file.ts';
import { until } from '../../server/database/embedded/pause.ts';
import { belongsTo, isRunning, markOf, signal } from '../../server/database/embedded/processes.ts';
import { type EmbeddedServer, startWithSettings } from '../../server/database/embedded/start-embedded.ts';

const PREFIX = 'benchcall-throwaway-';

/**
 * A server in a folder of its own, gone with everything in it at stop().
 *
 * It is the one the service uses, save that it waits for no disk: fsync, full_page_writes and
 * synchronous_commit are off, because nothing here is to survive. Tests of durability use startEmbedded.
 */
export async function startThrowaway(
  log: (message: string) => void = () => undefined,
): Promise<EmbeddedServer> {
  await sweep();
  const dataDir = await mkdtemp(path.join(tmpdir(), `${PREFIX}${process.pid}-`));
  const server = await startWithSettings({ dataDir, log }, [
    'fsync=off',
    'full_page_writes=off',
    'synchronous_commit=off',
    'max_connections=300',
  ]);
  return {
    ownerUrl: server.ownerUrl,
    adopted: server.adopted,
    stop: async () => {
      await server.stop();
      await discard(dataDir);
    },
  };
}

/** Ends whatever server still runs on a data folder and removes the folder. */
export async function discard(dataDir: string): Promise<void> {
  const cluster = path.join(dataDir, 'postgres', 'cluster');
  const lock = await readLockFile(cluster);
  if (typeof lock === 'object') {
    const { pid } = lock;
    const mark = await markOf(cluster);
    if (await belongsTo(pid, cluster, mark)) signal(pid, 'SIGQUIT');
    await until(async () => !(await belongsTo(pid, cluster, mark)), 5_000);
  }
  await rm(dataDir, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 });
}

/** Clears away what a killed test run left: the folder's name says whose it was. */
async function sweep(): Promise<void> {
  for (const name of await readdir(tmpdir())) {
    const owner = name.startsWith(PREFIX) ? Number.parseInt(name.slice(PREFIX.length), 10) : Number.NaN;
    if (Number.isNaN(owner) || (await isRunning(owner))) continue;
    // Another account's folder, or one that another run is clearing away at this moment.
    await discard(path.join(tmpdir(), name)).catch(() => undefined);
  }
}
