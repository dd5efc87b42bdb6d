import { readFile, stat } from 'node:fs/promises';

export interface Account {
  readonly uid: number;
  readonly gid: number;
}

/**
 * PostgreSQL refuses to run as root, and initdb refuses a numeric uid that has no line in /etc/passwd, so a
 * borrowed account must be a named one. `postgres` is there where the system brings its own PostgreSQL,
 * `nobody` and `daemon` on practically every Linux.
 */
const BORROWED = ['postgres', 'nobody', 'daemon'] as const;

/** The account PostgreSQL has to run as for this folder, or undefined: the one that runs the service. */
export async function accountFor(folder: string): Promise<Account | undefined> {
  if (process.getuid?.() !== 0) return undefined;
  const owner = await stat(folder);
  // Once chosen it stays: PostgreSQL refuses a folder that belongs to someone else.
  if (owner.uid !== 0) return { uid: owner.uid, gid: owner.gid };
  return borrowedAccount(await readFile('/etc/passwd', 'utf8'));
}

export function borrowedAccount(passwd: string): Account {
  const lines = passwd.split('\n').map((line) => line.split(':'));
  for (const name of BORROWED) {
    const [, , uid, gid] = lines.find(([found]) => found === name) ?? [];
    if (uid && gid && /^[1-9]\d*$/.test(uid) && /^\d+$/.test(gid))
      return { uid: Number(uid), gid: Number(gid) };
  }
  throw new Error(
    `PostgreSQL does not run as root, and /etc/passwd has none of the accounts ${BORROWED.join(', ')}. ` +
      'Start the service as an ordinary user, or name a server in DATABASE_URL.',
  );
}
