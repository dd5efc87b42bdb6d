import { randomBytes } from 'node:crypto';
import {
  chown,
  link,
  mkdir,
  mkdtemp,
  open,
  readdir,
  readFile,
  rename,
  rm,
  stat,
  writeFile,
} from 'node:fs/promises';
import path from 'node:path';
import { codeOf } from '../busy.ts';
import { type DataFolder, ifPresent } from './data-folder.ts';
import { type Programs, runProgram } from './programs.ts';

/** All that is known of one cluster once its folders, programs and password are there. */
export interface Cluster {
  readonly folder: DataFolder;
  readonly programs: Programs;
  readonly password: string;
  /** Settings beyond the project's own, as `name=value`. */
  readonly settings: readonly string[];
  /** The name of this process' connections, by which others count it among those that use the server. */
  readonly clientName: string;
  readonly log: (message: string) => void;
}

export const OWNER = 'benchcall_owner';
/**
 * What PostgreSQL's programs are told as their data directory: the folder they are started in.
 *
 * Under a borrowed account they may not be able to walk down to it (/root is closed to everybody, and so is our
 * own data folder), but they own the cluster itself. Node enters the working folder before it gives up root, and
 * from then on this name leads there without passing what is closed. So the data stay where the operator wants
 * them and no folder on the way has to be opened to others.
 */
export const PGDATA = '/proc/self/cwd';
const UNFINISHED = 'unfinished-';

/** The password of the database owner: random, made at the first start, readable by the service alone. */
export async function ownerPassword({ secret, cluster }: DataFolder): Promise<string> {
  const fault = (what: string) =>
    new Error(`${secret} ${what}, and the database in ${cluster} opens with it alone. Put the file back.`);
  const known = await ifPresent(readFile(secret, 'utf8'));
  if (known === undefined) {
    if (await ifPresent(stat(cluster))) throw fault('is missing');
    await createPasswordOnce(secret);
  }
  const password = (known ?? (await readFile(secret, 'utf8'))).trim();
  if (!/^[\w-]{43}$/.test(password)) throw fault('does not hold a password of 43 characters');
  return password;
}

/** The file is whole or not there, and of two starts at once one wins and the other's password is dropped. */
async function createPasswordOnce(file: string): Promise<void> {
  const draft = `${file}.${randomBytes(6).toString('hex')}.draft`;
  const text = `${randomBytes(32).toString('base64url')}\n`;
  await writeFile(draft, text, { mode: 0o600, flag: 'wx', flush: true });
  try {
    await link(draft, file);
    await syncFolder(path.dirname(file));
  } catch (error) {
    if (codeOf(error) !== 'EEXIST') throw error;
  } finally {
    await rm(draft, { force: true });
  }
}

/** Makes the cluster when there is none; one that was being made when somebody was killed is thrown away. */
export async function createClusterOnce(cluster: Cluster): Promise<void> {
  const { folder, log } = cluster;
  for (const name of (await readdir(folder.home)).filter((each) => each.startsWith(UNFINISHED))) {
    log(`Throwing away ${name}: an earlier first start was cut off.`);
    // An initdb that outlived its service may still write there; nobody ever uses that, so it does no harm.
    await rm(path.join(folder.home, name), { recursive: true, force: true, maxRetries: 3 }).catch(
      () => undefined,
    );
  }
  if (await ifPresent(stat(folder.cluster))) return refuseOtherMajor(cluster);
  log(`Making a new database in ${folder.cluster}.`);
  const draft = await mkdtemp(path.join(folder.home, UNFINISHED));
  await runInitdb(draft, cluster);
  // A cluster under its final name is a whole one: initdb has synced it to the disk before it ended.
  await rename(path.join(draft, 'cluster'), folder.cluster);
  await syncFolder(folder.home);
  await rm(draft, { recursive: true, force: true });
}

/**
 * A data folder is of one major version of PostgreSQL, and no other reads it.
 *
 * @throws Error with the way on, before anything is started
 */
async function refuseOtherMajor({ folder, programs }: Cluster): Promise<void> {
  const made = (await readFile(path.join(folder.cluster, 'PG_VERSION'), 'utf8')).trim();
  const { stdout } = await runProgram(programs.postgres, ['--version'], { cwd: '/', ...folder.account });
  const here = /(\d+)/.exec(stdout)?.[1];
  if (made === here) return;
  throw new Error(
    `The database in ${folder.cluster} is of PostgreSQL ${made}, and this program brings ${here}. ` +
      `With the program that made it: npm run backup -- {folder}. Then move ${folder.home} away, ` +
      'and with this one: npm run restore -- {folder}.',
  );
}

async function runInitdb(draft: string, { folder, programs, password }: Cluster): Promise<void> {
  const { account } = folder;
  const cluster = path.join(draft, 'cluster');
  const passwordFile = path.join(draft, 'password');
  await mkdir(cluster, { mode: 0o700 });
  await writeFile(passwordFile, `${password}\n`, { mode: 0o600 });
  if (account) {
    for (const item of [draft, cluster, passwordFile]) await chown(item, account.uid, account.gid);
  }
  const args = [
    `--pgdata=${PGDATA}`,
    `--username=${OWNER}`,
    '--pwfile=../password',
    '--auth=scram-sha-256',
    '--encoding=UTF8',
    // The built-in provider sorts the same on every machine, whatever its C library brings.
    '--locale=C',
    '--locale-provider=builtin',
    '--builtin-locale=C.UTF-8',
    '--no-instructions',
  ];
  await runProgram(programs.initdb, args, { cwd: cluster, ...account });
}

/** Makes the names in a folder outlive a power cut. */
async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}
