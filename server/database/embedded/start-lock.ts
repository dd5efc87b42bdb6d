import { createHash } from 'node:crypto';
import { once } from 'node:events';
import { stat } from 'node:fs/promises';
import { createServer, type Server } from 'node:net';
import { setTimeout } from 'node:timers/promises';
import { codeOf } from '../busy.ts';

const RETRY_MS = 40;

/**
 * One process at a time starts, restarts or stops the server of a data folder.
 *
 * The lock is a name in Linux' abstract socket space: the kernel gives it to one process and takes it back the
 * moment that process ends, kill -9 included, so it can't go stale the way a lock file does. The password in
 * the name keeps strangers from taking it first.
 */
export async function withStartLock<T>(home: string, password: string, work: () => Promise<T>): Promise<T> {
  const { dev, ino } = await stat(home);
  const name = createHash('sha256').update(`${dev} ${ino} ${password}`).digest('hex');
  const lock = await acquire(`\0benchcall-${name}`);
  try {
    return await work();
  } finally {
    lock.close();
    await once(lock, 'close');
  }
}

async function acquire(name: string): Promise<Server> {
  for (;;) {
    const server = createServer();
    try {
      server.listen({ path: name, exclusive: true });
      await once(server, 'listening');
      return server;
    } catch (error) {
      if (codeOf(error) !== 'EADDRINUSE') throw error;
      await setTimeout(RETRY_MS);
    }
  }
}
