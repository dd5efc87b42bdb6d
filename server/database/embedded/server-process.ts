import { readdir, readFile, readlink, rm, stat } from 'node:fs/promises';
import path from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { ifPresent } from './data-folder.ts';

/** What PostgreSQL writes into postmaster.pid: the pid on line 1, the port on line 4, the state on line 8. */
interface LockFile {
  /** Absent from a file that was cut off while it was written. */
  readonly pid?: number;
  /** Absent until the server holds its port and takes connections, and again while it is ending. */
  readonly openPort?: number;
}

/** How often a state that announces itself to nobody (a lock file, a pid) is looked at again. */
export const RETRY_MS = 10;
const PATIENCE_MS = 1_500;

/** Asks until the answer is yes or the time is up; returns the last answer. */
export async function waitUntil(condition: () => Promise<boolean>, limitMs: number): Promise<boolean> {
  const end = Date.now() + limitMs;
  for (;;) {
    if (await condition()) return true;
    if (Date.now() >= end) return false;
    await setTimeout(RETRY_MS);
  }
}

function lockFilePath(cluster: string): string {
  return path.join(cluster, 'postmaster.pid');
}

export async function readLockFile(cluster: string): Promise<LockFile | undefined> {
  const text = await ifPresent(readFile(lockFilePath(cluster), 'utf8'));
  if (text === undefined) return undefined;
  const lines = text.split('\n').map((line) => line.trim());
  const pid = Math.abs(Number(lines[0] || 'none'));
  const port = Number(lines[3]);
  if (!Number.isSafeInteger(pid) || pid === 0) return {};
  return lines[7] === 'ready' && Number.isSafeInteger(port) && port > 0 ? { pid, openPort: port } : { pid };
}

/** The pid and port of the server that runs on the cluster, whoever started it. */
export async function findServer(cluster: string): Promise<{ pid: number; openPort?: number } | undefined> {
  const lock = await readLockFile(cluster);
  if (lock?.pid === undefined || !(await runsOn(cluster, lock.pid))) return undefined;
  return { ...lock, pid: lock.pid };
}

/**
 * The pid of a lock whose server is gone. A lock file cut off before its pid was written stops PostgreSQL for
 * good, so that one, and only that one, is removed; nothing runs on the folder when this is called.
 */
export async function stalePid(cluster: string, log: (message: string) => void): Promise<number | undefined> {
  const lock = await readLockFile(cluster);
  if (lock && lock.pid === undefined) {
    log('Removing a lock file that was cut off while it was written.');
    await rm(lockFilePath(cluster));
  }
  return lock?.pid;
}

/**
 * The name a server carries in its command line, where every account can read it; the working folder of another
 * account's process it can't (a container's root often lacks CAP_SYS_PTRACE). Device and inode stay when the
 * folder is moved and differ in a copy of it.
 */
export async function clusterName(cluster: string): Promise<string> {
  const { dev, ino } = await stat(cluster);
  return `benchcall-${dev}-${ino}`;
}

export async function runsOn(cluster: string, pid: number): Promise<boolean> {
  return carriesName(pid, cluster, await clusterName(cluster));
}

/**
 * A process that still runs; one that has ended and waits for its parent to notice does not. The command line
 * is empty already while a process gives its memory back, so its absence is no proof of an end.
 */
export async function isRunning(pid: number): Promise<boolean> {
  const line = await readFile(`/proc/${pid}/stat`, 'utf8').catch(() => '');
  return line !== '' && !/\) [ZX] /.test(line);
}

/** Every running process of the cluster, postmaster and children. */
async function processesOn(cluster: string): Promise<number[]> {
  const name = await clusterName(cluster);
  const pids = (await readdir('/proc')).filter((entry) => /^\d+$/.test(entry)).map(Number);
  const ours = await Promise.all(pids.map((pid) => carriesName(pid, cluster, name)));
  return pids.filter((_, index) => ours[index]);
}

/** A postmaster has the name among its arguments, its children in their titles; a process that has ended has neither. */
async function carriesName(pid: number, cluster: string, name: string): Promise<boolean> {
  const line = await readFile(`/proc/${pid}/cmdline`, 'utf8').catch(() => '');
  const [program = '', ...args] = line.split('\0');
  if (args.includes(`cluster_name=${name}`) || program.startsWith(`postgres: ${name}: `)) return true;
  // A server somebody started by hand on our folder: no name, but the same working folder.
  if (!/(^|\/)postgres(:|$)/.test(program)) return false;
  return (await readlink(`/proc/${pid}/cwd`).catch(() => '')) === cluster;
}

/** Sends a signal; a process that is already gone is what was wanted. */
export function signal(pid: number, name: 'SIGINT' | 'SIGQUIT' | 'SIGKILL'): void {
  try {
    process.kill(pid, name);
  } catch {
    // Gone, or (after a pid was used again) not ours to end.
  }
}

/**
 * Waits for the children of a server that was killed: they end by themselves when they notice, save for one
 * in the middle of long work. As long as one is there the shared memory is in use and no server starts.
 */
export async function endLeftovers(cluster: string, log: (message: string) => void): Promise<void> {
  const gone = async () => (await processesOn(cluster)).length === 0;
  for (const name of ['SIGQUIT', 'SIGKILL'] as const) {
    if (await waitUntil(gone, PATIENCE_MS)) return;
    const left = await processesOn(cluster);
    log(`Ending what an earlier database server left behind: ${left.join(', ')}.`);
    for (const pid of left) signal(pid, name);
  }
  if (!(await waitUntil(gone, PATIENCE_MS))) throw new Error(`Processes on ${cluster} do not end.`);
}
