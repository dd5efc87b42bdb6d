import { chmod, chown, mkdir, readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import { codeOf } from '../busy.ts';

export interface Account {
  readonly uid: number;
  readonly gid: number;
}

/** Where everything of the embedded PostgreSQL lies below the data folder. */
export interface DataFolder {
  /** Holds the cluster and the server's log; belongs to the account that PostgreSQL runs as. */
  readonly home: string;
  readonly cluster: string;
  readonly log: string;
  /** These two lie above `home` and belong to whoever runs the service. */
  readonly secret: string;
  readonly port: string;
  /** The account PostgreSQL runs as; undefined when it is the one that runs the service. */
  readonly account: Account | undefined;
}

/**
 * PostgreSQL refuses to run as root, and initdb refuses a numeric uid that has no line in /etc/passwd, so a
 * borrowed account must be a named one. `postgres` is there where the system brings its own PostgreSQL,
 * `nobody` and `daemon` on practically every Linux.
 */
const BORROWED = ['postgres', 'nobody', 'daemon'] as const;

/** Makes the folders that are missing and says where they are. */
export async function openDataFolder(dataDir: string, passwdFile = '/etc/passwd'): Promise<DataFolder> {
  const data = path.resolve(dataDir);
  const home = path.join(data, 'postgres');
  await mkdir(home, { recursive: true, mode: 0o700 });
  return {
    home,
    cluster: path.join(home, 'cluster'),
    log: path.join(home, 'server.log'),
    secret: path.join(data, 'owner-password'),
    port: path.join(data, 'port'),
    account: process.getuid?.() === 0 ? await accountFor(home, passwdFile) : undefined,
  };
}

/** Gives the folder to a borrowed account, unless that has been done. */
async function accountFor(home: string, passwdFile: string): Promise<Account> {
  const { uid, gid } = await stat(home);
  // Once chosen it stays: PostgreSQL refuses a folder that belongs to someone else.
  if (uid !== 0) return { uid, gid };
  const account = borrowedAccount(await readFile(passwdFile, 'utf8'), passwdFile);
  await chmod(home, 0o700);
  await chown(home, account.uid, account.gid);
  return account;
}

function borrowedAccount(passwd: string, file: string): Account {
  const lines = passwd.split('\n').map((line) => line.split(':'));
  for (const name of BORROWED) {
    const [, , uid, gid] = lines.find(([found]) => found === name) ?? [];
    if (uid && gid && /^[1-9]\d*$/.test(uid) && /^\d+$/.test(gid))
      return { uid: Number(uid), gid: Number(gid) };
  }
  throw new Error(
    `PostgreSQL does not run as root, and ${file} has none of the accounts ${BORROWED.join(', ')}. ` +
      'Start the service as an ordinary user, or name a server in DATABASE_URL.',
  );
}

/** What is read from a file, or undefined where there is no such file. */
export async function ifPresent<T>(reading: Promise<T>): Promise<T | undefined> {
  try {
    return await reading;
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return undefined;
    throw error;
  }
}
