import { type ChildProcess, spawn } from 'node:child_process';
import { randomInt } from 'node:crypto';
import { once } from 'node:events';
import { type FileHandle, open, readFile, rename, stat, truncate, writeFile } from 'node:fs/promises';
import { type Cluster, PGDATA } from './cluster.ts';
import { type Connection, connectWhenReady } from './connection.ts';
import { type DataFolder, ifPresent } from './data-folder.ts';
import { PLAIN_ENVIRONMENT } from './programs.ts';
import { clusterName, endLeftovers, stalePid } from './server-process.ts';

const PORT_TRIES = 5;
/**
 * Below 32768, where Linux begins to hand out ports to outgoing connections: none of those may sit on our
 * port while the server is being started again.
 */
const LOWEST_PORT = 16_384;
const HIGHEST_PORT = 32_767;
const LOG_LIMIT_BYTES = 4 * 1024 * 1024;

/** Starts the server, on this port or a free one, and connects to it. Called with the start lock held. */
export async function launch(cluster: Cluster, fixedPort: number | undefined): Promise<Connection> {
  const { folder, log } = cluster;
  await endLeftovers(folder.cluster, log);
  const remembered = await rememberedPort(folder.port);
  let port = fixedPort ?? remembered ?? randomPort();
  for (let attempt = 1; ; attempt += 1) {
    const child = await spawnServer(cluster, port);
    const alive = () => child.exitCode === null && child.signalCode === null;
    const connection = await connectWhenReady(cluster, child.pid ?? 0, alive);
    if (connection) {
      // A file that is lost, cut off or not written costs no more than another port.
      if (port !== remembered) await writeFile(folder.port, `${port}\n`).catch(() => undefined);
      log(`The database server runs (pid ${child.pid}, port ${port}).`);
      return connection;
    }
    const fault = await lastLogLines(folder, 8);
    // A port that a stranger has is the only failure that a repeat mends.
    if (fixedPort !== undefined || attempt === PORT_TRIES || !fault.includes('Address already in use')) {
      throw new Error(`PostgreSQL did not start:\n${fault}`);
    }
    port = randomPort();
  }
}

async function spawnServer(cluster: Cluster, port: number): Promise<ChildProcess> {
  const { folder, programs } = cluster;
  const settings = [
    `port=${port}`,
    'listen_addresses=127.0.0.1',
    'unix_socket_directories=',
    `cluster_name=${await clusterName(folder.cluster)}`,
    // A statement that failed may hold a password or what a customer said: it stays out of the log.
    'log_min_error_statement=panic',
    ...cluster.settings,
  ];
  const stale = await stalePid(folder.cluster, cluster.log);
  const log = await openServerLog(folder);
  try {
    const child = spawn(
      programs.postgres,
      ['-D', PGDATA, ...settings.flatMap((setting) => ['-c', setting])],
      {
        cwd: folder.cluster,
        ...folder.account,
        // A process group of its own: Ctrl-C in the terminal must not end the database before the service has
        // drained.
        detached: true,
        stdio: ['ignore', log.fd, log.fd],
        // PostgreSQL refuses to start when the pid in an old lock file is in use again. It trusts an equal pid
        // when it is that of an ancestor, and takes the grandparent's from here; then it still looks whether the
        // old server's shared memory is in use. So the old lock is never deleted.
        env: { ...PLAIN_ENVIRONMENT, ...(stale === undefined ? {} : { PG_GRANDPARENT_PID: String(stale) }) },
      },
    );
    await once(child, 'spawn');
    child.unref();
    return child;
  } finally {
    await log.close();
  }
}

async function rememberedPort(file: string): Promise<number | undefined> {
  const port = Number(await ifPresent(readFile(file, 'utf8')));
  return port >= 1024 && port <= 65_535 ? port : undefined;
}

function randomPort(): number {
  return randomInt(LOWEST_PORT, HIGHEST_PORT + 1);
}

/**
 * Opens the log that PostgreSQL writes to by itself: a pipe to the service would break when the service is
 * killed. The log of an earlier start is kept once, as server.log.old, when it has grown long.
 */
async function openServerLog({ log, account }: DataFolder): Promise<FileHandle> {
  if ((await sizeOf(log)) > LOG_LIMIT_BYTES / 4) await rename(log, `${log}.old`);
  const handle = await open(log, 'a', 0o600);
  if (account) await handle.chown(account.uid, account.gid);
  return handle;
}

/** Empties a log that a running server has filled; it is written in append mode, so the server goes on. */
export async function limitServerLog({ log }: DataFolder): Promise<void> {
  if ((await sizeOf(log)) > LOG_LIMIT_BYTES) await truncate(log);
}

async function sizeOf(file: string): Promise<number> {
  return (await ifPresent(stat(file)))?.size ?? 0;
}

/** For the message of a start that failed. */
async function lastLogLines({ log }: DataFolder, count: number): Promise<string> {
  const text = (await ifPresent(readFile(log, 'utf8'))) ?? '';
  return text.trimEnd().split('\n').slice(-count).join('\n');
}
