import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { chmod, mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, onTestFinished, test } from 'vitest';
import { clusterName, findServer, waitUntil } from '../../server/database/embedded/server-process.ts';
import { clusterOf } from '../tools/embedded-bench.ts';

const ROOT = fileURLToPath(new URL('../../', import.meta.url));

/** The clusters in a temporary folder whose servers take connections, by the names their processes carry. */
async function openServers(temporary: string): Promise<string[]> {
  const names: string[] = [];
  for (const entry of (await readdir(temporary)).filter((name) => name.startsWith('benchcall-'))) {
    const cluster = clusterOf(path.join(temporary, entry));
    const server = await findServer(cluster);
    if (server?.openPort !== undefined) names.push(await clusterName(cluster));
  }
  return names;
}

/** The pids whose command line or environment has one of these texts: everything such a run started. */
async function processesWith(texts: readonly string[]): Promise<string[]> {
  const pids = (await readdir('/proc')).filter((name) => /^\d+$/.test(name));
  const found = await Promise.all(
    pids.map(async (pid) => {
      const parts = ['cmdline', 'environ'].map((part) =>
        readFile(`/proc/${pid}/${part}`, 'utf8').catch(() => ''),
      );
      const known = (await Promise.all(parts)).join('\0');
      return texts.some((text) => known.includes(text));
    }),
  );
  return pids.filter((_, index) => found[index]);
}

const CASES = [
  ['SIGINT', 'faults/embedded-killed', 'a worker started'],
  ['SIGTERM', 'faults/embedded-shared', 'a child of a worker started'],
  ['SIGKILL', 'faults/kill-readings', 'the service started and would start again'],
] as const;

for (const [signal, filter, other] of CASES) {
  test(`${signal} to a test run leaves neither the run's own server nor one that ${other}`, async () => {
    const temporary = await mkdtemp(path.join(tmpdir(), 'benchcall-broken-off-'));
    onTestFinished(() => rm(temporary, { recursive: true, force: true }));
    await chmod(temporary, 0o755);
    const outer = Object.entries(process.env).filter(([name]) => !/^(VITEST|NODE_ENV|TEST$)/.test(name));
    const runner = spawn(process.execPath, ['--import', 'tsx', 'tests/run.ts', filter], {
      cwd: ROOT,
      env: { ...Object.fromEntries(outer), TMPDIR: temporary },
      stdio: 'ignore',
    });
    onTestFinished(() => void runner.kill('SIGKILL'));
    const ended = once(runner, 'exit');

    let servers: string[] = [];
    await waitUntil(async () => {
      servers = await openServers(temporary);
      return servers.length > 1 || runner.exitCode !== null;
    }, 60_000);
    expect(servers, 'the run must have servers when it is broken off').toHaveLength(2);
    expect((await processesWith(servers)).length).toBeGreaterThan(2);
    runner.kill(signal);
    await ended;

    // With the environment of the run go its workers, services and watchdogs: nobody is left to start a server.
    let left: string[] = [];
    await waitUntil(async () => {
      left = await processesWith([...servers, `TMPDIR=${temporary}`]);
      return left.length === 0;
    }, 30_000);
    expect(left).toEqual([]);
    expect((await readdir(temporary)).filter((name) => name.startsWith('benchcall-'))).toEqual([]);
  }, 120_000);
}
