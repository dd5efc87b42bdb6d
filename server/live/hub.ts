import pg from 'pg';
import { EVENT_CHANNEL } from '../record/record.ts';

/** Wakes whoever watches a build when something in it may have changed, in this process or another. */
export interface Hub {
  /** Calls `wake` on every hint for the build; answers how to stop. */
  watch(buildId: string, wake: () => void): () => void;
  /** Calls `wake` on this process's watchers of the build at once. */
  hint(buildId: string): void;
  /** Ends every open stream, when the process is draining. */
  onDrain(end: () => void): () => void;
  drain(): void;
  close(): Promise<void>;
}

/** Hints can be lost (a cut connection, a pooler in between): watchers look by themselves this often. */
const LOOK_MS = 5_000;
const RECONNECT_MS = 500;

/**
 * One connection of its own listens for all streams of the process. A hint carries no data: what happened is
 * read from the record by sequence number.
 */
export function openHub(url: string, say: (message: string) => void): Hub {
  const watchers = new Map<string, Set<() => void>>();
  const ends = new Set<() => void>();
  let client: pg.Client | undefined;
  let closed = false;
  let retry: NodeJS.Timeout | undefined;

  const wake = (buildId: string) => {
    for (const each of watchers.get(buildId) ?? []) each();
  };
  const wakeAll = () => {
    for (const buildId of watchers.keys()) wake(buildId);
  };

  async function listen(): Promise<void> {
    const next = new pg.Client({ connectionString: url, connectionTimeoutMillis: 5_000, keepAlive: true });
    next.on('notification', ({ payload }) => wake((payload ?? '').split(' ')[0] ?? ''));
    next.on('error', (error) => lost(next, error));
    next.on('end', () => lost(next, undefined));
    await next.connect();
    await next.query(`listen ${EVENT_CHANNEL}`);
    client = next;
    // Whatever came while nobody listened is found by looking.
    wakeAll();
  }
  function lost(which: pg.Client, error: Error | undefined): void {
    if (closed || (client !== which && client !== undefined)) return;
    client = undefined;
    if (error !== undefined) say(`live updates lost their connection: ${error.message}`);
    again();
  }
  function again(): void {
    if (closed || retry !== undefined) return;
    retry = setTimeout(() => {
      retry = undefined;
      listen().catch(again);
    }, RECONNECT_MS);
    retry.unref();
  }
  listen().catch(again);
  const look = setInterval(wakeAll, LOOK_MS);
  look.unref();

  return {
    watch(buildId, onWake) {
      const set = watchers.get(buildId) ?? new Set();
      watchers.set(buildId, set);
      set.add(onWake);
      return () => {
        set.delete(onWake);
        if (set.size === 0) watchers.delete(buildId);
      };
    },
    hint: wake,
    onDrain(end) {
      ends.add(end);
      return () => ends.delete(end);
    },
    drain() {
      for (const end of [...ends]) end();
    },
    async close() {
      closed = true;
      clearInterval(look);
      clearTimeout(retry);
      await client?.end().catch(() => undefined);
    },
  };
}
