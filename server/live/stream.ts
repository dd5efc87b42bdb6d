import type { FastifyReply, FastifyRequest } from 'fastify';
import { memberOf } from '../../shared/member.ts';
import { answer } from '../../shared/schemas/answer.ts';
import type { Principal } from '../auth/principal.ts';
import { eventsAfter } from '../events/build-events.ts';
import { happened } from '../events/read-events.ts';
import { SHARE_LINK_EVENTS } from '../records/share-links/events.ts';
import { showEvent } from '../records/whole-build/event-view.ts';
import type { Deps } from '../web/deps.ts';
import { type EventStream, openEventStream } from './event-stream.ts';
import { presentView } from './live-events.ts';
import { oneAtATime } from './one-at-a-time.ts';
import { arrive, leave, type Present, RENEW_MS, whoIsHere } from './presence.ts';

interface StreamOptions {
  readonly buildId: string;
  readonly step: string;
  /** Whoever opened the stream, asked again while it lives; undefined once the link or session has ended. */
  still(): Promise<Principal | undefined>;
  /** What is still to be done after the answer has ended; the process waits for it before it ends. */
  later(work: Promise<unknown>): void;
}

const MOST_AT_ONCE = 200;

/** The sequence number a client has: from the browser's own header after a lost connection, or the address. */
function lastSeen(request: FastifyRequest): number {
  const header = request.headers['last-event-id'];
  const query = memberOf(request.query, 'after');
  const text = typeof header === 'string' ? header : typeof query === 'string' ? query : '0';
  return /^\d{1,15}$/.test(text) ? Number(text) : 0;
}

/** Tells who else is here whenever that has changed. */
function presenceTeller(out: EventStream, ownId: string): (people: readonly Present[]) => void {
  let told = '';
  return (people) => {
    const others = people
      .filter((each) => each.id !== ownId)
      .map(({ who, kind, step }) => answer(presentView, { who, kind, step }));
    const now = JSON.stringify(others);
    if (now === told) return;
    told = now;
    out.event('presence', others);
  };
}

/**
 * Sends a build's events as they come: each with its sequence number as id, so that after a lost connection
 * the client goes on from the one it has.
 */
export async function stream(
  deps: Deps,
  request: FastifyRequest,
  reply: FastifyReply,
  principal: Principal,
  { buildId, step, still, later }: StreamOptions,
): Promise<void> {
  const id = crypto.randomUUID();
  const { shopId } = principal;
  let seen = lastSeen(request);
  let ended = false;
  // Before anything is sent: a build that isn't the caller's is refused like any other address.
  await deps.db.shopTransaction(shopId, async (tx) => {
    await eventsAfter(tx, principal, buildId, seen, 1);
    await arrive(tx, principal, buildId, id, step);
  });
  const out = openEventStream(reply, deps.checkAnswer);
  const tell = presenceTeller(out, id);

  const wake = oneAtATime(
    async () => {
      if (ended) return 'rest';
      if (out.isFull()) return 'wait';
      const { events, people } = await deps.db.shopTransaction(shopId, async (tx) => ({
        events: await eventsAfter(tx, principal, buildId, seen, MOST_AT_ONCE),
        people: await whoIsHere(tx, principal, buildId),
      }));
      // A revoked link ends its streams at once, not at the next beat.
      const revoked = principal.kind === 'builder' && happened(events, SHARE_LINK_EVENTS['link-revoked']);
      if (revoked && (await still()) === undefined) end();
      if (ended) return 'rest';
      for (const event of events) out.event('entry', showEvent(event), event.seq);
      seen = events.at(-1)?.seq ?? seen;
      tell(people);
      return events.length === MOST_AT_ONCE ? 'more' : 'rest';
    },
    {
      wait: (room) => out.onRoom(room),
      // The database may be away for a moment; the next hint or look sends what is missing.
      failed: (error) => request.log.warn({ err: error }, 'a live update has to wait'),
    },
  );

  async function renew(): Promise<void> {
    if (!out.comment('here')) return out.cut();
    // A script can't see comments; by this it knows a connection that died without a word.
    out.event('beat', {});
    if ((await still()) === undefined) return end();
    if (!ended) await deps.db.shopTransaction(shopId, (tx) => arrive(tx, principal, buildId, id, step));
  }
  /** A session, a key or a person that has ended ends its streams at once, not at the next beat. */
  function lookAtRights(): void {
    still()
      .then((now) => (now === undefined ? end() : undefined))
      .catch((error: unknown) => request.log.warn({ err: error }, 'a live stream could not be looked at'));
  }
  function end(): void {
    if (ended) return;
    ended = true;
    clearInterval(beat);
    stopWatching();
    stopRights();
    forgetDrain();
    out.end();
    later(deps.db.shopTransaction(shopId, (tx) => leave(tx, principal, buildId, id)));
  }
  const stopWatching = deps.hub.watch(buildId, wake);
  const stopRights = deps.hub.onRights(principal.id, lookAtRights);
  const beat = setInterval(() => {
    renew().catch((error: unknown) => request.log.warn({ err: error }, 'a live stream could not be renewed'));
  }, RENEW_MS);
  const forgetDrain = deps.hub.onDrain(end);
  out.onClose(end);
  wake();
}
