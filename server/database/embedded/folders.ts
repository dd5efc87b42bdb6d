import { chmod, chown, mkdir, stat } from 'node:fs/promises';
import path from 'node:path';
import { type Account, accountFor } from './account.ts';

/** Where everything of the embedded PostgreSQL lies below the data folder. */
export interface Folders {
  /** Holds the secret and the port; belongs to whoever runs the service. */
  readonly data: string;
  /** Holds everything that PostgreSQL itself reads and writes; belongs to the account it runs as. */
  readonly home: string;
  readonly cluster: string;
  readonly log: string;
  readonly secret: string;
  readonly port: string;
  /** The account PostgreSQL runs as; absent when it is the one that runs the service. */
  readonly account?: Account;
}

/** Makes the folders that are missing and says where they are. */
export async function openFolders(dataDir: string): Promise<Folders> {
  const data = path.resolve(dataDir);
  const home = path.join(data, 'postgres');
  await mkdir(data, { recursive: true, mode: 0o700 });
  const made = await mkdir(home, { recursive: true, mode: 0o700 });
  const account = await accountFor(home);
  if (account && (made || (await stat(home)).uid === 0)) {
    await chown(home, account.uid, account.gid);
    await chmod(home, 0o700);
  }
  return {
    data,
    home,
    cluster: path.join(home, 'cluster'),
    log: path.join(home, 'server.log'),
    secret: path.join(data, 'owner-password'),
    port: path.join(data, 'port'),
    ...(account ? { account } : {}),
  };
}
