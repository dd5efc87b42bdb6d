import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Caller } from '../access/caller.ts';
import { showEvent } from '../api/views.ts';
import type { Deps } from '../deps.ts';
import { eventsAfter } from '../record/events.ts';
import { arrive, leave, RENEW_MS, whoIsHere } from './presence.ts';

export interface StreamOptions {
  readonly buildId: string;
  readonly step: string;
  /** Whoever opened the stream, asked again while it lives; undefined once the link or session has ended. */
  still(): Promise<Caller | undefined>;
}

const MOST_AT_ONCE = 200;

/** The sequence number a client has: from the browser's own header after a lost connection, or the address. */
function lastSeen(request: FastifyRequest): number {
  const header = request.headers['last-event-id'];
  const query: unknown =
    typeof request.query === 'object' && request.query !== null
      ? Reflect.get(request.query, 'after')
      : undefined;
  const text = typeof header === 'string' ? header : typeof query === 'string' ? query : '0';
  return /^\d{1,15}$/.test(text) ? Number(text) : 0;
}

/**
 * Sends a build's events as they come (server-sent events, WHATWG HTML): each with its sequence number as id,
 * so that after a lost connection the client goes on from the one it has.
 */
export async function stream(
  deps: Deps,
  request: FastifyRequest,
  reply: FastifyReply,
  caller: Caller,
  options: StreamOptions,
): Promise<void> {
  const { buildId, step } = options;
  const id = crypto.randomUUID();
  let seen = lastSeen(request);
  let here = '';
  // Before anything is sent: a build that isn't the caller's is refused like any other address.
  await deps.db.inShop(caller.shopId, async (tx) => {
    await eventsAfter(tx, caller, buildId, seen, 1);
    await arrive(tx, caller, buildId, id, step);
  });
  reply.hijack();
  const { raw } = reply;
  raw.writeHead(200, {
    'content-type': 'text/event-stream; charset=utf-8',
    'cache-control': 'no-store',
    'x-accel-buffering': 'no',
    'referrer-policy': 'no-referrer',
  });
  raw.write('retry: 1000\n\n');

  let running = false;
  let again = false;
  let ended = false;

  async function send(): Promise<void> {
    const { events, people } = await deps.db.inShop(caller.shopId, async (tx) => ({
      events: await eventsAfter(tx, caller, buildId, seen, MOST_AT_ONCE),
      people: await whoIsHere(tx, caller, buildId),
    }));
    if (caller.kind === 'builder' && events.some((event) => event.kind === 'link-revoked')) {
      // A revoked link ends its streams at once, not at the next beat.
      if ((await options.still()) === undefined) return end();
    }
    for (const event of events) {
      raw.write(`id: ${event.seq}\nevent: entry\ndata: ${JSON.stringify(showEvent(event))}\n\n`);
      seen = event.seq;
    }
    if (events.length === MOST_AT_ONCE) again = true;
    const present = JSON.stringify(
      people.filter((each) => each.id !== id).map(({ who, kind, step: at }) => ({ who, kind, step: at })),
    );
    if (present !== here) {
      here = present;
      raw.write(`event: presence\ndata: ${present}\n\n`);
    }
  }
  function wake(): void {
    if (ended) return;
    if (running) {
      again = true;
      return;
    }
    running = true;
    again = false;
    send()
      // The database may be away for a moment; the next hint or look sends what is missing.
      .catch((error: unknown) => request.log.warn({ err: error }, 'a live update has to wait'))
      .finally(() => {
        running = false;
        if (again) wake();
      });
  }
  const stopWatching = deps.hub.watch(buildId, wake);
  const beat = setInterval(() => {
    raw.write(': here\n\n');
    options
      .still()
      .then((now) => {
        if (now === undefined) end();
        else return deps.db.inShop(caller.shopId, (tx) => arrive(tx, caller, buildId, id, step));
      })
      .catch((error: unknown) => request.log.warn({ err: error }, 'a live stream could not be renewed'));
  }, RENEW_MS);
  const forgetDrain = deps.hub.onDrain(end);

  function end(): void {
    if (ended) return;
    ended = true;
    clearInterval(beat);
    stopWatching();
    forgetDrain();
    raw.end();
    deps.db.inShop(caller.shopId, (tx) => leave(tx, caller, buildId, id)).catch(() => undefined);
  }
  raw.on('close', end);
  wake();
}
