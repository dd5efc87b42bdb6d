import { mkdtemp, readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import pg from 'pg';
import { onTestFinished } from 'vitest';
import { isRunning, waitUntil } from '../../server/database/embedded/server-process.ts';
import { discard } from './throwaway-postgres.ts';
import { watch } from './watchdog.ts';

/** What the tests of the embedded PostgreSQL share. */

export const isRoot = process.getuid?.() === 0;

/** An empty data folder, cleared away with its server after the test. */
export async function dataFolder(): Promise<string> {
  const folder = await mkdtemp(path.join(tmpdir(), 'benchcall-embedded-'));
  watch(`folder ${folder}`);
  onTestFinished(() => discard(folder));
  return folder;
}

export function clusterOf(dataDir: string): string {
  return path.join(dataDir, 'postgres', 'cluster');
}

export async function query(ownerUrl: string, text: string): Promise<unknown[][]> {
  const client = new pg.Client({ connectionString: ownerUrl });
  client.on('error', () => undefined);
  await client.connect();
  try {
    return (await client.query<unknown[]>({ text, rowMode: 'array' })).rows;
  } finally {
    await client.end();
  }
}

/** Writes one reading; it is acknowledged when this returns. */
export async function writeReading(ownerUrl: string, lift: string): Promise<void> {
  await query(ownerUrl, 'CREATE TABLE IF NOT EXISTS bench_reading (lift_in text)');
  await query(ownerUrl, `INSERT INTO bench_reading VALUES ('${lift}')`);
}

export async function readings(ownerUrl: string): Promise<unknown[]> {
  return (await query(ownerUrl, 'SELECT lift_in FROM bench_reading ORDER BY lift_in')).flat();
}

export async function postmasterPid(dataDir: string): Promise<number> {
  const text = await readFile(path.join(clusterOf(dataDir), 'postmaster.pid'), 'utf8');
  return Number.parseInt(text, 10);
}

export async function waitUntilGone(pid: number): Promise<void> {
  if (!(await waitUntil(async () => !(await isRunning(pid)), 10_000)))
    throw new Error(`Process ${pid} still runs.`);
}

export async function killServer(dataDir: string): Promise<number> {
  const pid = await postmasterPid(dataDir);
  process.kill(pid, 'SIGKILL');
  await waitUntilGone(pid);
  return pid;
}
