import { createReadStream } from 'node:fs';
import { open, readFile } from 'node:fs/promises';
import path from 'node:path';
import { Writable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { createGunzip } from 'node:zlib';
import { BackupFault } from './fault.ts';
import { MANIFEST, type Manifest, manifestSchema } from './manifest.ts';
import { meter } from './meter.ts';

/** Makes the names in a folder outlive a power cut. */
export async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

const nowhere = () => new Writable({ write: (_chunk, _encoding, done) => done() });

/** What a backup says it holds. */
export async function readManifest(folder: string): Promise<Manifest> {
  const file = path.join(folder, MANIFEST);
  let text: string;
  try {
    text = await readFile(file, 'utf8');
  } catch (error) {
    throw new BackupFault(`${folder} is no backup: its ${MANIFEST} can't be read (${String(error)})`);
  }
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    throw new BackupFault(`${file} is damaged: it is no JSON`);
  }
  const parsed = manifestSchema.safeParse(value);
  if (parsed.success) return parsed.data;
  const faults = parsed.error.issues.map(({ path: at, message }) => `${at.join('.')}: ${message}`);
  throw new BackupFault(`${file} is damaged, or of another version: ${faults.join('; ')}`);
}

/** Reads every file of a backup once, and refuses it where one is missing or is not what was written. */
export async function checkFiles(folder: string, { tables }: Manifest): Promise<void> {
  for (const { file, sha256 } of tables) {
    const measured = meter();
    try {
      await pipeline(createReadStream(path.join(folder, file)), createGunzip(), measured.stream, nowhere());
    } catch (error) {
      throw new BackupFault(`${path.join(folder, file)} is missing or damaged: ${String(error)}`);
    }
    if (measured.digest() !== sha256)
      throw new BackupFault(`${path.join(folder, file)} is damaged: it does not hold what was written`);
  }
}
