import type { Cluster, Running } from './cluster.ts';
import { createDatabaseOnce } from './connect.ts';
import { createClusterOnce } from './create-cluster.ts';
import { LaunchFailed, launch } from './launch.ts';
import { clearLeftovers, staleLockPid } from './leftovers.ts';
import { readLockFile } from './lock-file.ts';
import { choosePort, isFree } from './port.ts';
import { belongsTo, markOf } from './processes.ts';
import { waitUntilReady } from './wait-until-ready.ts';

const PORT_TRIES = 5;

/** Finds the server of this cluster or starts it. Called with the start lock held. */
export async function ensureRunning(cluster: Cluster, fixedPort?: number): Promise<Running> {
  const { folders, binaries, password, log } = cluster;
  await createClusterOnce(folders, binaries, password, log);
  const running = (await adopt(cluster)) ?? (await startAgain(cluster, fixedPort));
  await createDatabaseOnce(running.port, password);
  return running;
}

/** The server that an earlier or another process of the service started, when it still runs. */
async function adopt({ folders, password, log }: Cluster): Promise<Running | undefined> {
  const lock = await readLockFile(folders.cluster);
  if (typeof lock !== 'object') return undefined;
  const { pid } = lock;
  const mark = await markOf(folders.cluster);
  const alive = () => belongsTo(pid, folders.cluster, mark);
  if (!(await alive())) return undefined;
  const port = await waitUntilReady(folders.cluster, password, alive, log);
  // It was on its way out: what follows starts a new one.
  if (port === undefined) return undefined;
  log(`The database server is running already (pid ${pid}, port ${port}).`);
  return { pid, port, adopted: true };
}

async function startAgain(cluster: Cluster, fixedPort: number | undefined): Promise<Running> {
  await clearLeftovers(cluster);
  for (let attempt = 1; ; attempt += 1) {
    const port = fixedPort ?? (await choosePort(cluster.folders.port));
    try {
      const running = await launch(cluster, port, await staleLockPid(cluster));
      cluster.log(`The database server runs (pid ${running.pid}, port ${running.port}).`);
      return running;
    } catch (error) {
      // Somebody took the port between the look and the start: the only failure that a repeat mends.
      const portTaken = error instanceof LaunchFailed && !(await isFree(port));
      if (!portTaken || fixedPort !== undefined || attempt === PORT_TRIES) throw error;
    }
  }
}
