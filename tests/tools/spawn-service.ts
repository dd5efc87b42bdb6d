import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { createServer } from 'node:net';
import { fileURLToPath } from 'node:url';
import { forget, watch } from './watchdog.ts';

/** The service as its own process, as an operator starts it. */
export interface Spawned {
  readonly child: ChildProcess;
  readonly base: string;
  /** Everything it has written so far. */
  said(): string;
  /** Sends the signal, waits for the end, and answers the exit code. */
  end(signal: NodeJS.Signals): Promise<{ code: number | null }>;
}

const ENTRY = fileURLToPath(new URL('../../server/main.ts', import.meta.url));
const READY = /Benchcall is ready at (\S+)/;

/** A port that nothing listens on at this moment. */
export async function freePort(): Promise<number> {
  const server = createServer().listen(0, '127.0.0.1');
  await once(server, 'listening');
  const address = server.address();
  server.close();
  await once(server, 'close');
  if (typeof address !== 'object' || address === null) throw new Error('no port');
  return address.port;
}

/** Starts the service and waits until it says that it is ready. */
export async function spawnService(environment: Record<string, string>): Promise<Spawned> {
  const { DATABASE_URL: _, SERVICE_DATABASE_URL: __, ...outer } = process.env;
  const child = spawn(process.execPath, ['--import', 'tsx', ENTRY], {
    env: { ...outer, NODE_ENV: 'development', HOST: '127.0.0.1', PORT: '0', ...environment },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const entry = `process ${child.pid ?? Number.NaN}` as const;
  watch(entry);
  child.once('exit', () => forget(entry));
  let text = '';
  const base = await new Promise<string>((resolve, reject) => {
    const hear = (part: Buffer) => {
      text += part.toString();
      const found = READY.exec(text)?.[1];
      if (found !== undefined) resolve(found);
    };
    child.stdout.on('data', hear);
    child.stderr.on('data', hear);
    child.once('exit', (code) => reject(new Error(`the service ended (${code}): ${text}`)));
  });
  return {
    child,
    base,
    said: () => text,
    async end(signal) {
      if (child.exitCode === null && child.signalCode === null) {
        const ended = once(child, 'exit');
        child.kill(signal);
        await ended;
      }
      return { code: child.exitCode };
    },
  };
}
