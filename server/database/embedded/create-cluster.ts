import { chown, mkdir, mkdtemp, readdir, rename, rm, stat, writeFile } from 'node:fs/promises';
import path from 'node:path';
import type { Binaries } from './binaries.ts';
import { syncFolder } from './durable-file.ts';
import type { Folders } from './folders.ts';
import { placeOf } from './place.ts';
import { runProgram } from './run-program.ts';
import { ifPresent } from './system-error.ts';

export const OWNER = 'benchcall_owner';
const UNFINISHED = 'unfinished-';

/** Makes the cluster when there is none; one that was being made when somebody was killed is thrown away. */
export async function createClusterOnce(
  folders: Folders,
  binaries: Binaries,
  password: string,
  log: (message: string) => void,
): Promise<void> {
  for (const name of await readdir(folders.home)) {
    if (name.startsWith(UNFINISHED)) await dropUnfinished(path.join(folders.home, name), log);
  }
  if (await ifPresent(stat(folders.cluster))) return;
  log(`Making a new database in ${folders.cluster}.`);
  const workshop = await mkdtemp(path.join(folders.home, UNFINISHED));
  await fillCluster(workshop, folders, binaries, password);
  // A cluster under its final name is a whole one: initdb has synced it to the disk before it ended.
  await rename(path.join(workshop, 'cluster'), folders.cluster);
  await syncFolder(folders.home);
  await rm(workshop, { recursive: true, force: true });
}

async function fillCluster(
  workshop: string,
  { account }: Folders,
  binaries: Binaries,
  password: string,
): Promise<void> {
  const cluster = path.join(workshop, 'cluster');
  const passwordFile = path.join(workshop, 'password');
  await mkdir(cluster, { mode: 0o700 });
  await writeFile(passwordFile, `${password}\n`, { mode: 0o600 });
  if (account) {
    for (const item of [workshop, cluster, passwordFile]) await chown(item, account.uid, account.gid);
  }
  const place = placeOf(cluster, account);
  const { code, output } = await runProgram(
    binaries.initdb,
    [
      `--pgdata=${place.folderName}`,
      `--username=${OWNER}`,
      '--pwfile=../password',
      '--auth=scram-sha-256',
      '--encoding=UTF8',
      // The built-in provider sorts the same on every machine, whatever its C library brings.
      '--locale=C',
      '--locale-provider=builtin',
      '--builtin-locale=C.UTF-8',
      '--no-instructions',
    ],
    place.options,
  );
  if (code !== 0) throw new Error(`initdb ended with ${code ?? 'a signal'}: ${output.trim()}`);
}

/** An initdb that outlived its service may still write into the folder; it is never used, so that does no harm. */
async function dropUnfinished(folder: string, log: (message: string) => void): Promise<void> {
  log(`Throwing away ${folder}: an earlier first start was cut off.`);
  await rm(folder, { recursive: true, force: true, maxRetries: 3 }).catch(() => undefined);
}
