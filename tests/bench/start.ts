import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { chown, mkdtemp } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import pg from 'pg';
import { discard, startThrowaway } from '../tools/throwaway-postgres.ts';
import { median } from './measure.ts';

/*
 * From the command to the line that says where the service is ready, as `npm start` starts it: on an empty folder,
 * on the folder it left, and on a database server that is there already. Medians of three.
 */
const TIMES = 3;
const ROOT = fileURLToPath(new URL('../../', import.meta.url));
/** The numbers that Debian and Fedora give `nobody`: an ordinary user, where root runs this. */
const NOBODY = { uid: 65_534, gid: 65_534 };

type User = typeof NOBODY | undefined;

const say = (line: string) => process.stdout.write(`${line}\n`);

/** Resolves at the ready line, rejects when the process ends before it. */
function ready(child: ChildProcess): Promise<void> {
  return new Promise((resolve, reject) => {
    let text = '';
    const hear = (part: Buffer) => {
      text += part.toString();
      if (text.includes('Benchcall is ready at ')) resolve();
    };
    child.stdout?.on('data', hear);
    child.stderr?.on('data', hear);
    child.once('error', reject);
    child.once('exit', (code) => reject(new Error(`the service ended with ${code}: ${text}`)));
  });
}

/** Seconds from starting the process to its being ready; it is ended again. */
async function startOnce(user: User, environment: Record<string, string>): Promise<number> {
  const { DATABASE_URL: _, SERVICE_DATABASE_URL: __, ...outer } = process.env;
  const began = performance.now();
  const child = spawn(process.execPath, ['--import', 'tsx', 'server/main.ts'], {
    cwd: ROOT,
    env: { ...outer, NODE_ENV: 'development', HOST: '127.0.0.1', PORT: '0', ...environment },
    stdio: ['ignore', 'pipe', 'pipe'],
    ...user,
  });
  await ready(child);
  const seconds = (performance.now() - began) / 1000;
  const ended = once(child, 'exit');
  child.kill('SIGTERM');
  await ended;
  return seconds;
}

function tell(who: string, what: string, seconds: readonly number[]): void {
  const each = seconds.map((one) => one.toFixed(2)).join(', ');
  say(`  ${who.padEnd(10)} ${what.padEnd(42)} ${median(seconds).toFixed(2)} s   (${each})`);
}

async function onOwnFolder(who: string, user: User): Promise<void> {
  const first: number[] = [];
  const second: number[] = [];
  for (let times = 0; times < TIMES; times += 1) {
    const folder = await mkdtemp(path.join(tmpdir(), 'benchcall-bench-start-'));
    try {
      if (user !== undefined) await chown(folder, user.uid, user.gid);
      first.push(await startOnce(user, { DATA_DIR: folder }));
      second.push(await startOnce(user, { DATA_DIR: folder }));
    } finally {
      await discard(folder);
    }
  }
  tell(who, 'empty folder: database, tables, demo call', first);
  tell(who, 'the same folder again', second);
}

async function onServer(who: string, user: User): Promise<void> {
  const server = await startThrowaway();
  const owner = new pg.Client({ connectionString: server.ownerUrl });
  const first: number[] = [];
  const second: number[] = [];
  try {
    await owner.connect();
    for (let times = 0; times < TIMES; times += 1) {
      await owner.query(`create database bench_start_${times}`);
      const url = new URL(server.ownerUrl);
      url.pathname = `/bench_start_${times}`;
      first.push(await startOnce(user, { DATABASE_URL: url.href }));
      second.push(await startOnce(user, { DATABASE_URL: url.href }));
    }
  } finally {
    await owner.end();
    await server.stop();
  }
  tell(who, 'DATABASE_URL, empty: tables, demo call', first);
  tell(who, 'DATABASE_URL, the same again', second);
}

say(`From the command to ready, median of ${TIMES}:`);
const isRoot = process.getuid?.() === 0;
const users: readonly (readonly [string, User])[] = isRoot
  ? [
      ['root', undefined],
      ['nobody', NOBODY],
    ]
  : [['this user', undefined]];
for (const [who, user] of users) {
  await onOwnFolder(who, user);
  await onServer(who, user);
}
