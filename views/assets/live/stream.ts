import { isPresent, type Present } from './presence.ts';

interface Heard {
  /** Something was entered. */
  entry(event: unknown): void;
  presence(people: readonly Present[]): void;
  lost(): void;
  back(): void;
  /** The service would not open the stream; whether that is for good, the page itself tells. */
  refused(): void;
}

const OPEN_AGAIN_MS = 3_000;
/** The service gives a sign of life every 15 s; a connection that missed two of them is dead, though nobody said so. */
const SILENT_MS = 40_000;

function parsed(data: unknown): unknown {
  return typeof data === 'string' ? JSON.parse(data) : undefined;
}

/**
 * Follows the stream at `address` for as long as the page is looked at. A page in the background lets go of
 * its stream: over HTTP/1.1 a browser opens six connections to one place, and six pages would take them all.
 */
export function followStream(address: string, heard: Heard): { stop(): void } {
  let source: EventSource | undefined;
  let stopped = false;
  let missed = false;
  let retry: ReturnType<typeof setTimeout> | undefined;
  let silent: ReturnType<typeof setTimeout> | undefined;
  let seen: string | undefined;

  function alive(): void {
    clearTimeout(silent);
    silent = setTimeout(reopen, SILENT_MS);
  }
  /** For a connection that can't be trusted any more: what it missed comes over the next one. */
  function reopen(): void {
    close();
    missed = true;
    open();
  }
  function open(): void {
    if (stopped || document.hidden || source !== undefined) return;
    const url = new URL(address, location.href);
    if (seen !== undefined) url.searchParams.set('after', seen);
    const opened = new EventSource(url);
    source = opened;
    alive();
    opened.addEventListener('beat', alive);
    opened.addEventListener('entry', ({ data, lastEventId }) => {
      alive();
      seen = lastEventId;
      heard.entry(parsed(data));
    });
    opened.addEventListener('presence', ({ data }) => {
      const people = parsed(data);
      if (Array.isArray(people)) heard.presence(people.filter(isPresent));
    });
    opened.addEventListener('open', () => {
      if (missed) heard.back();
      missed = false;
    });
    opened.addEventListener('error', () => {
      missed = true;
      heard.lost();
      if (opened.readyState !== EventSource.CLOSED) return;
      close();
      heard.refused();
      clearTimeout(retry);
      retry = setTimeout(open, OPEN_AGAIN_MS);
    });
  }
  function close(): void {
    clearTimeout(silent);
    source?.close();
    source = undefined;
  }
  document.addEventListener('visibilitychange', () => {
    if (document.hidden) {
      clearTimeout(retry);
      close();
    } else open();
  });
  // A browser may hold a connection for open long after its network has gone.
  addEventListener('offline', () => {
    missed = true;
    heard.lost();
  });
  addEventListener('online', reopen);
  open();
  return {
    stop() {
      stopped = true;
      clearTimeout(retry);
      close();
    },
  };
}
