import type { Account } from './account.ts';

/** How a program is started on the cluster and by which name it calls that folder. */
export interface Place {
  readonly options: { cwd: string; uid?: number; gid?: number };
  readonly folderName: string;
}

/**
 * PostgreSQL under a borrowed account may not be able to walk down to the data folder (/root is closed to
 * everybody, and so is our own data folder), but it owns the cluster itself. Node enters the working folder
 * before it gives up root, and from then on /proc/self/cwd leads there without passing what is closed. So
 * the data stay where the operator wants them and no folder on the way has to be opened to others.
 */
export function placeOf(clusterFolder: string, account: Account | undefined): Place {
  return account
    ? { options: { cwd: clusterFolder, ...account }, folderName: '/proc/self/cwd' }
    : { options: { cwd: clusterFolder }, folderName: clusterFolder };
}
