import { randomBytes } from 'node:crypto';
import { type FileHandle, link, open, rename, rm } from 'node:fs/promises';
import path from 'node:path';
import { hasCode } from './system-error.ts';

/** Makes the names in a folder outlive a power cut. */
export async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** Writes a whole file or nothing: whoever is killed on the way leaves the old one. */
export async function replaceFile(file: string, text: string, mode: number): Promise<void> {
  const draft = await writeDraft(file, text, mode);
  await rename(draft, file);
  await syncFolder(path.dirname(file));
}

/** Writes a whole file unless there is one: of two that try at once, one wins and the other's text is dropped. */
export async function createFileOnce(file: string, text: string, mode: number): Promise<void> {
  const draft = await writeDraft(file, text, mode);
  try {
    await link(draft, file);
    await syncFolder(path.dirname(file));
  } catch (error) {
    if (!hasCode(error, 'EEXIST')) throw error;
  } finally {
    await rm(draft, { force: true });
  }
}

async function writeDraft(file: string, text: string, mode: number): Promise<string> {
  const draft = `${file}.${randomBytes(6).toString('hex')}.draft`;
  const handle: FileHandle = await open(draft, 'wx', mode);
  try {
    await handle.writeFile(text);
    await handle.sync();
  } finally {
    await handle.close();
  }
  return draft;
}
