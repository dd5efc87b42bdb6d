import { EVENT_CHANNEL } from '../database/event-channel.ts';
import { openListener } from './listener.ts';

/** Wakes whoever watches a build when something in it may have changed, in this process or another. */
export interface Hub {
  /** Calls `wake` on every hint for the build, and every few seconds without one; answers how to stop. */
  watch(buildId: string, wake: () => void): () => void;
  /** Calls `wake` on every hint for a person or a key: what they may do has changed. */
  onRights(id: string, wake: () => void): () => void;
  /** Calls `wake` on this process’s watchers of the build at once. */
  hint(buildId: string): void;
  /** Ends every open stream, when the process is draining. */
  onDrain(end: () => void): () => void;
  drain(): void;
  close(): Promise<void>;
}

/** Hints can be lost (a cut connection, a pooler in between): each watcher looks by itself this often. */
const LOOK_MS = 5_000;

/**
 * One connection of its own listens for all streams of the process. A hint carries no data: what happened is
 * read from the record by sequence number.
 */
export function openHub(url: string, say: (message: string) => void): Hub {
  const watchers = new Map<string, Set<() => void>>();
  const ends = new Set<() => void>();
  let draining = false;

  function add(id: string, onWake: () => void): () => void {
    const set = watchers.get(id) ?? new Set();
    watchers.set(id, set);
    set.add(onWake);
    return () => {
      set.delete(onWake);
      if (set.size === 0 && watchers.get(id) === set) watchers.delete(id);
    };
  }
  const wake = (buildId: string) => {
    for (const each of watchers.get(buildId) ?? []) each();
  };
  const listener = openListener(url, EVENT_CHANNEL, {
    heard: (payload) => wake(payload.split(' ')[0] ?? ''),
    begun: () => {
      for (const buildId of watchers.keys()) wake(buildId);
    },
    say,
  });

  return {
    watch(buildId, onWake) {
      const remove = add(buildId, onWake);
      // Counted from its own beginning, so that a process's streams don't all look at the same moment.
      const look = setInterval(onWake, LOOK_MS);
      look.unref();
      return () => {
        clearInterval(look);
        remove();
      };
    },
    onRights: add,
    hint: wake,
    onDrain(end) {
      ends.add(end);
      // A stream whose request was under way when the drain began.
      if (draining) queueMicrotask(end);
      return () => ends.delete(end);
    },
    drain() {
      draining = true;
      for (const end of [...ends]) end();
    },
    close: () => listener.close(),
  };
}
