import { mkdtemp, readdir, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { ifPresent } from '../../server/database/embedded/data-folder.ts';
import { endLeftovers, findServer, signal } from '../../server/database/embedded/server-process.ts';
import { type EmbeddedServer, startEmbedded } from '../../server/database/embedded/start-embedded.ts';
import { forget, watch } from './watchdog.ts';

const PREFIX = 'benchcall-throwaway-';

/**
 * A server in a folder of its own, gone with everything in it at stop(), or when this process ends without that.
 *
 * It is the one the service uses, save that it waits for no disk: fsync, full_page_writes and
 * synchronous_commit are off, because nothing here is to survive. Tests of durability give no such settings.
 */
export async function startThrowaway(
  log: (message: string) => void = () => undefined,
): Promise<EmbeddedServer> {
  await sweep();
  const dataDir = await mkdtemp(path.join(tmpdir(), `${PREFIX}${process.pid}-`));
  watch(`folder ${dataDir}`);
  const settings = ['fsync=off', 'full_page_writes=off', 'synchronous_commit=off', 'max_connections=300'];
  const server = await startEmbedded({ dataDir, log, settings });
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
  if (await ifPresent(stat(cluster))) {
    const server = await findServer(cluster);
    if (server) signal(server.pid, 'SIGQUIT');
    await endLeftovers(cluster, () => undefined);
  }
  await rm(dataDir, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 });
  forget(`folder ${dataDir}`);
}

/** Clears away what a run left when the machine itself went down: the folder's name says whose it was. */
async function sweep(): Promise<void> {
  for (const name of await readdir(tmpdir())) {
    const owner = name.startsWith(PREFIX) ? Number.parseInt(name.slice(PREFIX.length), 10) : Number.NaN;
    if (Number.isNaN(owner) || (await ifPresent(stat(`/proc/${owner}`)))) continue;
    // Another account's folder, or one that another run is clearing away at this moment.
    await discard(path.join(tmpdir(), name)).catch(() => undefined);
  }
}
