import { readdir, readFile, readlink, stat } from 'node:fs/promises';

/**
 * Who runs on this machine, as /proc shows it. Command lines are open to every account; the working folder
 * of another account's process is not (a container's root often lacks CAP_SYS_PTRACE), so a server of ours is
 * known by the mark it carries in its command line and the working folder only adds to that.
 */

/** A pid whose process still runs; one that has ended and waits for its parent to notice does not. */
export async function isRunning(pid: number): Promise<boolean> {
  const line = await readFile(`/proc/${pid}/stat`, 'utf8').catch(() => '');
  const state = line.slice(line.lastIndexOf(')') + 2, line.lastIndexOf(')') + 3);
  return state !== '' && state !== 'Z' && state !== 'X';
}

/** The name a server carries: device and inode stay when the folder is moved and differ in a copy of it. */
export async function markOf(clusterFolder: string): Promise<string> {
  const { dev, ino } = await stat(clusterFolder);
  return `benchcall-${dev}-${ino}`;
}

/** A postmaster has the mark among its arguments; its children have it in their titles. */
export async function belongsTo(pid: number, clusterFolder: string, mark: string): Promise<boolean> {
  if (!(await isRunning(pid))) return false;
  const line = await readFile(`/proc/${pid}/cmdline`, 'utf8').catch(() => '');
  const [program = '', ...rest] = line.split('\0');
  if (rest.includes(`cluster_name=${mark}`) || program.startsWith(`postgres: ${mark}: `)) return true;
  // A server somebody started by hand on our folder: no mark, but the same working folder.
  return /(^|\/)postgres(:|$)/.test(program) && (await workingFolder(pid)) === clusterFolder;
}

/** Every running process of the cluster, postmaster and children. */
export async function processesOf(clusterFolder: string, mark: string): Promise<number[]> {
  const pids = (await readdir('/proc')).filter((name) => /^\d+$/.test(name)).map(Number);
  const ours = await Promise.all(pids.map((pid) => belongsTo(pid, clusterFolder, mark)));
  return pids.filter((_, index) => ours[index]);
}

/** Sends a signal; a process that is already gone is what was wanted. */
export function signal(pid: number, name: 'SIGINT' | 'SIGQUIT' | 'SIGKILL'): void {
  try {
    process.kill(pid, name);
  } catch {
    // Gone, or (after a pid was used again) not ours to end.
  }
}

async function workingFolder(pid: number): Promise<string> {
  return readlink(`/proc/${pid}/cwd`).catch(() => '');
}
