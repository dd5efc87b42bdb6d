import { setTimeout } from 'node:timers/promises';
import type pg from 'pg';
import type { Cluster, Running } from './cluster.ts';
import { ensureRunning } from './ensure-running.ts';
import { openPresence } from './presence.ts';
import { limitServerLog } from './server-log.ts';
import { withStartLock } from './start-lock.ts';
import { messageOf } from './system-error.ts';

const FIRST_WAIT_MS = 100;
const LONGEST_WAIT_MS = 5_000;
/** A server that stood this long has earned a quick restart again. */
const STEADY_MS = 60_000;
const LOG_CHECK_MS = 60_000;

export interface Supervision {
  readonly running: Running;
  /** Ends the watch and this process' presence; the server goes on. */
  end(): Promise<void>;
}

/**
 * Starts or finds the server, and brings it back on the same port whenever it dies, waiting 0.1 s and twice as
 * long each time up to 5 s. Our own child and a server found running are watched in the same way, by
 * the connection that breaks: that tells at once, where looking at a pid would tell at the next look.
 */
export async function supervise(cluster: Cluster): Promise<Supervision> {
  const { folders, password, log } = cluster;
  const ending = new AbortController();
  let presence: pg.Client | undefined;
  let recovery: Promise<void> = Promise.resolve();
  let since = Date.now();
  let wait = FIRST_WAIT_MS;

  const begin = (port?: number): Promise<Running> =>
    withStartLock(folders, password, async () => {
      const found = await ensureRunning(cluster, port);
      presence = await openPresence(found.port, password, cluster.presence, () => {
        if (!ending.signal.aborted) recovery = recover(found.port);
      });
      since = Date.now();
      return found;
    });

  const recover = async (port: number): Promise<void> => {
    log('The connection to the database server broke: looking after it.');
    if (Date.now() - since > STEADY_MS) wait = FIRST_WAIT_MS;
    while (!ending.signal.aborted) {
      await setTimeout(wait, undefined, { signal: ending.signal }).catch(() => undefined);
      wait = Math.min(wait * 2, LONGEST_WAIT_MS);
      if (ending.signal.aborted) return;
      try {
        const { port: now } = await begin(port);
        if (now !== port) log(`The database server moved from port ${port} to ${now}: restart this process.`);
        return;
      } catch (error) {
        log(`The database server did not come back: ${messageOf(error)}`);
      }
    }
  };

  const running = await begin();
  const logCheck = setInterval(
    () => void limitServerLog(folders).catch(() => undefined),
    LOG_CHECK_MS,
  ).unref();
  return {
    running,
    end: async () => {
      ending.abort();
      clearInterval(logCheck);
      await recovery;
      await presence?.end();
    },
  };
}
