import { rm } from 'node:fs/promises';
import type { Cluster } from './cluster.ts';
import { lockFilePath, readLockFile } from './lock-file.ts';
import { until } from './pause.ts';
import { markOf, processesOf, signal } from './processes.ts';

const PATIENCE_MS = 1_500;

/**
 * Waits for the children of a server that was killed: they end by themselves when they notice, save for one
 * in the middle of long work. As long as one is there the shared memory is in use and no server starts.
 */
export async function clearLeftovers({ folders, log }: Cluster): Promise<void> {
  const mark = await markOf(folders.cluster);
  const gone = async () => (await processesOf(folders.cluster, mark)).length === 0;
  for (const name of ['SIGQUIT', 'SIGKILL'] as const) {
    if (await until(gone, PATIENCE_MS)) return;
    const left = await processesOf(folders.cluster, mark);
    log(`Ending what an earlier database server left behind: ${left.join(', ')}.`);
    for (const pid of left) signal(pid, name);
  }
  if (!(await until(gone, PATIENCE_MS))) throw new Error(`Processes on ${folders.cluster} do not end.`);
}

/**
 * The pid of a lock whose server is gone. A lock file cut off before its pid was written stops PostgreSQL for
 * good, so that one, and only that one, is removed; nothing runs on the folder when this is called.
 */
export async function staleLockPid({ folders, log }: Cluster): Promise<number | undefined> {
  const lock = await readLockFile(folders.cluster);
  if (lock === 'none') return undefined;
  if (lock !== 'unreadable') return lock.pid;
  log('Removing a lock file that was cut off while it was written.');
  await rm(lockFilePath(folders.cluster));
  return undefined;
}
