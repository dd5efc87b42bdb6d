import { type FileHandle, open, readFile, rename, stat, truncate } from 'node:fs/promises';
import type { Folders } from './folders.ts';
import { ifPresent } from './system-error.ts';

const LIMIT_BYTES = 4 * 1024 * 1024;

/**
 * Opens the log that PostgreSQL writes to by itself: a pipe to the service would break when the service is
 * killed. The log of an earlier start is kept once, as server.log.old, when it has grown long.
 */
export async function openServerLog(folders: Folders): Promise<FileHandle> {
  const size = (await ifPresent(stat(folders.log)))?.size ?? 0;
  if (size > LIMIT_BYTES / 4) await rename(folders.log, `${folders.log}.old`);
  const handle = await open(folders.log, 'a', 0o600);
  if (folders.account) await handle.chown(folders.account.uid, folders.account.gid);
  return handle;
}

/** Empties a log that a running server has filled; it is written in append mode, so the server goes on. */
export async function limitServerLog(folders: Folders): Promise<void> {
  const size = (await ifPresent(stat(folders.log)))?.size ?? 0;
  if (size > LIMIT_BYTES) await truncate(folders.log);
}

/** The last lines, for the message of a start that failed. */
export async function lastLines(folders: Folders, count: number): Promise<string> {
  const text = (await ifPresent(readFile(folders.log, 'utf8'))) ?? '';
  return text.trimEnd().split('\n').slice(-count).join('\n');
}
