import type { Cluster } from './cluster.ts';
import { asOwner } from './connect.ts';
import { readLockFile } from './lock-file.ts';
import { until } from './pause.ts';
import { countOthers } from './presence.ts';
import { belongsTo, markOf, signal } from './processes.ts';

/** The service has 10 s to end altogether; a server still writing its last checkpoint ends by itself. */
const PATIENCE_MS = 5_000;

/** Stops the server unless another process uses it. Called with the start lock held and no presence left. */
export async function stopUnused({ folders, password, presence, log }: Cluster): Promise<void> {
  const lock = await readLockFile(folders.cluster);
  if (typeof lock !== 'object') return;
  const { pid, openPort } = lock;
  const mark = await markOf(folders.cluster);
  if (!(await belongsTo(pid, folders.cluster, mark))) return;
  const others = openPort === undefined ? 0 : await askForOthers(openPort, password, presence);
  if (others === undefined) {
    log('The database server does not say who uses it: it goes on, and the next start takes it over.');
    return;
  }
  if (others > 0) {
    log(`The database server goes on: ${others} more of the service use it.`);
    return;
  }
  // SIGINT is PostgreSQL's fast shutdown: it ends the sessions, writes everything down and leaves no lock.
  signal(pid, 'SIGINT');
  const gone = async () => !(await belongsTo(pid, folders.cluster, mark));
  log(
    (await until(gone, PATIENCE_MS))
      ? 'The database server has stopped.'
      : 'The database server is still stopping.',
  );
}

async function askForOthers(port: number, password: string, ownName: string): Promise<number | undefined> {
  return asOwner(port, password, (client) => countOthers(client, ownName)).catch(() => undefined);
}
