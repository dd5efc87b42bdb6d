import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { ifPresent } from './system-error.ts';

/** What PostgreSQL writes into postmaster.pid: the pid on line 1, the port on line 4, the state on line 8. */
export interface LockFile {
  readonly pid: number;
  /** Absent until the server holds its port and takes connections, and again while it is ending. */
  readonly openPort?: number;
}

export function lockFilePath(clusterFolder: string): string {
  return path.join(clusterFolder, 'postmaster.pid');
}

/** The lock file; 'none' without one, 'unreadable' for one that was cut off while it was written. */
export async function readLockFile(clusterFolder: string): Promise<LockFile | 'none' | 'unreadable'> {
  const text = await ifPresent(readFile(lockFilePath(clusterFolder), 'utf8'));
  if (text === undefined) return 'none';
  const [first = '', , , fourth = '', , , , eighth = ''] = text.split('\n');
  const pid = Math.abs(Number(first.trim() || 'none'));
  if (!Number.isSafeInteger(pid) || pid === 0) return 'unreadable';
  const port = Number(fourth.trim());
  return eighth.trim() === 'ready' && Number.isSafeInteger(port) && port > 0
    ? { pid, openPort: port }
    : { pid };
}
