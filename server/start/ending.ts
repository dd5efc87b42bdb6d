import type { Server } from 'node:http';

/** Requests under way get this long; then their connections are cut off. */
const DRAIN_MS = 7_000;
/** What holds a database connection after that is not waited for. */
const RELEASE_MS = 1_000;
const STOP_MS = 1_500;

export interface Ending {
  readonly lifecycle: { draining: boolean };
  readonly app: { readonly server: Server; close(): Promise<unknown> };
  readonly hub: { drain(): void; close(): Promise<void> };
  readonly db: { close(): Promise<void> };
  readonly work: { close(): Promise<void> };
  stopDatabase(): Promise<void>;
}

/** Waits for `work`, and no longer than `ms`; answers whether it ended. */
function within(ms: number, work: Promise<unknown>): Promise<boolean> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => resolve(false), ms);
    work.then(() => resolve(true), reject).finally(() => clearTimeout(timer));
  });
}

/**
 * Ends the service within 10 s of a signal: no longer ready, streams ended, requests under way finished, then
 * the connections to the database and the database itself. Each part has its time and can't hold up the next.
 */
export async function endService(parts: Ending): Promise<void> {
  parts.lifecycle.draining = true;
  parts.hub.drain();
  const cut = setTimeout(() => parts.app.server.closeAllConnections(), DRAIN_MS);
  await within(DRAIN_MS + 200, parts.app.close());
  clearTimeout(cut);
  await within(RELEASE_MS, Promise.all([parts.hub.close(), parts.db.close(), parts.work.close()]));
  await within(STOP_MS, parts.stopDatabase());
}
