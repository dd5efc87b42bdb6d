import { chmod, cp, mkdir, mkdtemp, readdir, readFile, rename, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { Account } from './account.ts';
import { runsAs } from './run-program.ts';
import { ifPresent, messageOf } from './system-error.ts';

/** Best first: what lies in a temporary folder may be tidied away below a running server. */
const PLACES = ['/var/lib', '/opt', '/var/tmp', tmpdir()] as const;

/** A copy of the programs that every account can reach, kept for the next start. Only root makes one. */
export async function reachableCopy(
  native: string,
  account: Account,
  places: readonly string[] = PLACES,
): Promise<string> {
  const name = await copyName(native);
  const failures: string[] = [];
  for (const place of places) {
    const home = path.join(place, 'benchcall-postgresql');
    const copy = path.join(home, name);
    try {
      await openHome(home);
      if (!(await sameFiles(native, copy))) await copyInto(native, home, copy);
      if (await runsAs(path.join(copy, 'bin', 'postgres'), account)) return copy;
      failures.push(`${copy} does not run`);
    } catch (error) {
      failures.push(`${copy}: ${messageOf(error)}`);
    }
  }
  throw new Error(
    `No place for the programs of PostgreSQL where account ${account.uid} reaches them: ${failures.join('; ')}`,
  );
}

/** A folder that someone else made or can write to is not trusted with programs. */
async function openHome(home: string): Promise<void> {
  await mkdir(home, { mode: 0o755, recursive: true });
  const found = await stat(home);
  if (found.uid !== 0 || (found.mode & 0o022) !== 0) throw new Error('the folder belongs to another account');
  await chmod(home, 0o755);
}

/** Copies beside the final name and moves in one step, so that a copy is whole or not there. */
async function copyInto(native: string, home: string, copy: string): Promise<void> {
  const draft = await mkdtemp(path.join(home, 'draft-'));
  try {
    await cp(native, draft, { recursive: true, verbatimSymlinks: true });
    for (const { file, mode } of await filesBelow(draft)) await chmod(file, mode & 0o111 ? 0o755 : 0o644);
    await rm(copy, { recursive: true, force: true });
    await rename(draft, copy);
  } finally {
    await rm(draft, { recursive: true, force: true });
  }
}

async function copyName(native: string): Promise<string> {
  const about: unknown = JSON.parse(await readFile(path.join(native, '..', 'package.json'), 'utf8'));
  const version = typeof about === 'object' && about !== null && 'version' in about ? about.version : '';
  if (typeof version !== 'string' || !/^[\w.-]+$/.test(version)) throw new Error(`No version in ${native}`);
  return `${version}-${process.arch}`;
}

async function sameFiles(native: string, copy: string): Promise<boolean> {
  for (const { file, size } of await filesBelow(native)) {
    const twin = await ifPresent(stat(path.join(copy, path.relative(native, file))));
    if (!twin || (size !== undefined && twin.size !== size)) return false;
  }
  return true;
}

/** Folders (without a size) and files, links left out, the folder itself included. */
async function filesBelow(folder: string): Promise<{ file: string; mode: number; size?: number }[]> {
  const found: { file: string; mode: number; size?: number }[] = [{ file: folder, mode: 0o755 }];
  for (const entry of await readdir(folder, { withFileTypes: true, recursive: true })) {
    const file = path.join(entry.parentPath, entry.name);
    if (entry.isDirectory()) found.push({ file, mode: 0o755 });
    if (!entry.isFile()) continue;
    const { mode, size } = await stat(file);
    found.push({ file, mode, size });
  }
  return found;
}
