import { randomBytes } from 'node:crypto';
import { readFile, stat } from 'node:fs/promises';
import { createFileOnce } from './durable-file.ts';
import type { Folders } from './folders.ts';
import { ifPresent } from './system-error.ts';

/** The password of the database owner: random, made at the first start, readable by the service alone. */
export async function ownerPassword(folders: Folders): Promise<string> {
  const known = await ifPresent(readFile(folders.secret, 'utf8'));
  if (known === undefined) {
    if (await ifPresent(stat(folders.cluster))) throw new Error(lost(folders, 'is missing'));
    await createFileOnce(folders.secret, `${randomBytes(32).toString('base64url')}\n`, 0o600);
  }
  const password = (known ?? (await readFile(folders.secret, 'utf8'))).trim();
  if (!/^[\w-]{43}$/.test(password))
    throw new Error(lost(folders, 'does not hold a password of 43 characters'));
  return password;
}

function lost(folders: Folders, what: string): string {
  return `${folders.secret} ${what}, and the database in ${folders.cluster} opens with it alone. Put the file back.`;
}
