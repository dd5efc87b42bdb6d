import { type ChildProcess, fork } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';
import { forget, watch } from './watchdog.ts';

const Said = z.union([
  z.object({ ownerUrl: z.string(), adopted: z.boolean() }),
  z.object({ message: z.string() }),
]);

export interface Holder {
  readonly child: ChildProcess;
  readonly ownerUrl: string;
  readonly adopted: boolean;
  /** Ends it as a service ends: the server is stopped unless it is used. */
  stop(): Promise<void>;
  /** kill -9. */
  kill(): Promise<void>;
}

/** Starts a process in a process group of its own that holds the embedded PostgreSQL of this folder. */
export function forkHolder(dataDir: string, account: { uid?: number; gid?: number } = {}): ChildProcess {
  const child = fork(fileURLToPath(new URL('hold-embedded.ts', import.meta.url)), [dataDir], {
    execArgv: ['--import', 'tsx'],
    detached: true,
    ...account,
  });
  const entry = `process ${child.pid ?? Number.NaN}` as const;
  watch(entry);
  child.once('exit', () => forget(entry));
  return child;
}

/** The same, once it has its server. */
export async function startHolder(
  dataDir: string,
  account: { uid?: number; gid?: number } = {},
): Promise<Holder> {
  const child = forkHolder(dataDir, account);
  const { ownerUrl, adopted } = await firstAnswer(child);
  return {
    child,
    ownerUrl,
    adopted,
    stop: async () => {
      const ended = once(child, 'exit');
      child.send('stop');
      await ended;
    },
    kill: async () => {
      const ended = once(child, 'exit');
      child.kill('SIGKILL');
      await ended;
    },
  };
}

function firstAnswer(child: ChildProcess): Promise<{ ownerUrl: string; adopted: boolean }> {
  return new Promise((resolve, reject) => {
    const heard: string[] = [];
    child.on('message', (message) => {
      const said = Said.parse(message);
      if ('ownerUrl' in said) resolve(said);
      else heard.push(said.message);
    });
    child.once('exit', (code) => reject(new Error(`The holder ended (${code}): ${heard.join('\n')}`)));
  });
}
