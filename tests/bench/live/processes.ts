import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

export interface ServiceProcess {
  readonly base: string;
  /** SIGTERM; answers its exit code. */
  stop(): Promise<number | null>;
}

const MAIN = fileURLToPath(new URL('../../../server/main.ts', import.meta.url));

/** The address that the process prints when it is ready. */
function ready(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let text = '';
    child.stdout?.setEncoding('utf8').on('data', (part: string) => {
      text += part;
      const base = /ready at (http:\S+)/.exec(text)?.[1];
      if (base !== undefined) resolve(base);
    });
    child.stderr?.setEncoding('utf8').on('data', (part: string) => {
      text += part;
    });
    child.on('exit', (code) => reject(new Error(`the service ended with ${code}: ${text}`)));
  });
}

/** Starts the service as a process of its own on a database that is already there. */
export async function startService(ownerUrl: string): Promise<ServiceProcess> {
  const folder = await mkdtemp(path.join(tmpdir(), 'benchcall-bench-'));
  const child = spawn(process.execPath, ['--import', 'tsx', MAIN], {
    env: { ...process.env, DATABASE_URL: ownerUrl, DATA_DIR: folder, PORT: '0', NODE_ENV: 'development' },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const base = await ready(child);
  return {
    base,
    async stop() {
      const ended = once(child, 'exit');
      child.kill('SIGTERM');
      await ended;
      await rm(folder, { recursive: true, force: true });
      return child.exitCode;
    },
  };
}
