import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import type { Cluster, Running } from './cluster.ts';
import { placeOf } from './place.ts';
import { markOf } from './processes.ts';
import { PLAIN_ENVIRONMENT } from './run-program.ts';
import { lastLines, openServerLog } from './server-log.ts';
import { waitUntilReady } from './wait-until-ready.ts';

export class LaunchFailed extends Error {}

/** Starts the server on this port and waits until it takes connections. */
export async function launch(cluster: Cluster, port: number, stalePid: number | undefined): Promise<Running> {
  const child = await spawnServer(cluster, port, stalePid);
  const { folders, password, log } = cluster;
  const alive = () => child.exitCode === null && child.signalCode === null;
  const open = await waitUntilReady(folders.cluster, password, alive, log);
  if (open === undefined || child.pid === undefined) {
    throw new LaunchFailed(`PostgreSQL did not start:\n${await lastLines(folders, 8)}`);
  }
  return { pid: child.pid, port: open, adopted: false };
}

async function spawnServer(
  { folders, binaries, settings }: Cluster,
  port: number,
  stalePid: number | undefined,
): Promise<ChildProcess> {
  const { options, folderName } = placeOf(folders.cluster, folders.account);
  const mark = await markOf(folders.cluster);
  const own = [
    `port=${port}`,
    'listen_addresses=127.0.0.1',
    'unix_socket_directories=',
    `cluster_name=${mark}`,
    // A statement that failed may hold a password or what a customer said: it stays out of the log.
    'log_min_error_statement=panic',
  ];
  const log = await openServerLog(folders);
  try {
    const child = spawn(
      binaries.postgres,
      ['-D', folderName, ...[...own, ...settings].flatMap((setting) => ['-c', setting])],
      {
        ...options,
        // A process group of its own: Ctrl-C in the terminal must not end the database before the service has
        // drained.
        detached: true,
        stdio: ['ignore', log.fd, log.fd],
        env: { ...PLAIN_ENVIRONMENT, ...forgetting(stalePid) },
      },
    );
    await once(child, 'spawn');
    child.unref();
    return child;
  } finally {
    await log.close();
  }
}

/**
 * PostgreSQL refuses to start when the pid in an old lock file is in use again. It trusts an equal pid when
 * it is that of an ancestor, and takes the grandparent's from here; then it still looks whether the old
 * server's shared memory is in use. So the old lock is never deleted.
 */
function forgetting(stalePid: number | undefined): Record<string, string> {
  return stalePid === undefined ? {} : { PG_GRANDPARENT_PID: String(stalePid) };
}
