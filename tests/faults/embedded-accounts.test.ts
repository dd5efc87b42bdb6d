import { chmod, chown, cp, mkdir, mkdtemp, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { openDataFolder } from '../../server/database/embedded/data-folder.ts';
import { findPrograms, runProgram } from '../../server/database/embedded/programs.ts';
import { startEmbedded } from '../../server/database/embedded/start-embedded.ts';
import {
  clusterOf,
  dataFolder,
  isRoot,
  postmasterPid,
  readings,
  writeReading,
} from '../tools/embedded-bench.ts';
import { startHolder } from '../tools/embedded-holder.ts';
import { discard } from '../tools/throwaway-postgres.ts';

const quiet = () => undefined;
/** The numbers Debian's base-passwd and Fedora give `nobody`; the name is in /etc/passwd of both. */
const nobody = { uid: 65_534, gid: 65_534 };

/** Only root can become another account, so these run as root alone; an ordinary user is the other tests' case. */
const asRoot = test.runIf(isRoot);

asRoot('root: PostgreSQL runs as postgres, else as nobody, else the start says what is missing', async () => {
  const root = 'root:x:0:0:root:/root:/bin/sh\n';
  const noOne = 'nobody:x:65534:65534::/:/sbin/nologin\n';
  const open = async (accounts: string) => {
    const folder = await dataFolder();
    const passwd = path.join(folder, 'passwd');
    await writeFile(passwd, accounts);
    const { account, home } = await openDataFolder(folder, passwd);
    const { uid, gid, mode } = await stat(home);
    return { account, owner: { uid, gid }, mode: mode & 0o777 };
  };
  const postgres = { uid: 70, gid: 71 };
  expect(await open(`${root}${noOne}postgres:x:70:71::/:/bin/sh\n`)).toEqual({
    account: postgres,
    owner: postgres,
    mode: 0o700,
  });
  expect(await open(`${root}${noOne}`)).toMatchObject({ account: nobody, owner: nobody });
  await expect(open(root)).rejects.toThrow('Start the service as an ordinary user');
  // An account called nobody that is root after all is no way out.
  await expect(open(`${root}nobody:x:0:0::/:/bin/sh\n`)).rejects.toThrow('Start the service');
});

asRoot(
  'root: a data folder that only root can walk down to works, and its server is not root',
  async () => {
    const closed = await dataFolder();
    expect((await stat(closed)).mode & 0o777).toBe(0o700);
    const dataDir = path.join(closed, 'app', '.data');
    onTestFinished(() => discard(dataDir));
    const server = await startEmbedded({ dataDir, log: quiet });
    await writeReading(server.ownerUrl, '.420');
    const { uid } = await stat(`/proc/${await postmasterPid(dataDir)}`);
    expect(uid).not.toBe(0);
    expect((await stat(clusterOf(dataDir))).uid).toBe(uid);
    // That account must not come by the owner's password.
    expect(await stat(path.join(dataDir, 'owner-password'))).toMatchObject({ uid: 0 });
    await server.stop();
    const again = await startEmbedded({ dataDir, log: quiet });
    expect(await readings(again.ownerUrl)).toEqual(['.420']);
    await again.stop();
  },
  40_000,
);

asRoot(
  'root: programs that the other account cannot reach are copied to where it can',
  async () => {
    const folder = await mkdtemp(path.join(tmpdir(), 'benchcall-embedded-'));
    onTestFinished(() => discard(folder));
    await chmod(folder, 0o755);
    const closed = path.join(folder, 'closed');
    await mkdir(closed, { mode: 0o700 });
    const installed = path.resolve((await findPrograms(undefined)).postgres, '../../..');
    await cp(installed, closed, { recursive: true, verbatimSymlinks: true });
    const native = path.join(closed, 'native');
    const version = (folder: string) =>
      runProgram(path.join(folder, 'bin', 'postgres'), ['--version'], { ...nobody, cwd: '/' });
    await expect(version(native)).rejects.toMatchObject({ code: 'EACCES' });

    // The first place is another account's: not trusted with programs.
    const foreign = path.join(folder, 'foreign');
    await mkdir(path.join(foreign, 'benchcall-postgresql'), { recursive: true });
    await chown(path.join(foreign, 'benchcall-postgresql'), nobody.uid, nobody.gid);
    const programs = await findPrograms(nobody, native, [foreign, folder]);
    const copy = path.resolve(programs.postgres, '../..');
    expect(copy.startsWith(path.join(folder, 'benchcall-postgresql'))).toBe(true);
    expect((await version(copy)).stdout).toContain('PostgreSQL');
    const made = await stat(copy);
    expect(await findPrograms(nobody, native, [folder])).toEqual(programs);
    expect((await stat(copy)).ino).toBe(made.ino);
    // One that somebody tidied up in is made again, whole.
    await rm(path.join(copy, 'share'), { recursive: true });
    expect(await findPrograms(nobody, native, [folder])).toEqual(programs);
    expect((await stat(path.join(copy, 'share'))).isDirectory()).toBe(true);
  },
  40_000,
);

asRoot(
  'an ordinary user has the server run as itself; root finds it later and keeps the account',
  async () => {
    const dataDir = await dataFolder();
    await chown(dataDir, nobody.uid, nobody.gid);
    const service = await startHolder(dataDir, nobody);
    await writeReading(service.ownerUrl, '.380');
    expect((await stat(`/proc/${await postmasterPid(dataDir)}`)).uid).toBe(nobody.uid);
    expect((await stat(path.join(dataDir, 'owner-password'))).uid).toBe(nobody.uid);
    await service.stop();

    const byRoot = await startEmbedded({ dataDir, log: quiet });
    expect(await readings(byRoot.ownerUrl)).toEqual(['.380']);
    expect((await stat(`/proc/${await postmasterPid(dataDir)}`)).uid).toBe(nobody.uid);
    await byRoot.stop();

    const backAgain = await startHolder(dataDir, nobody);
    expect(await readings(backAgain.ownerUrl)).toEqual(['.380']);
    await backAgain.stop();
  },
  40_000,
);
