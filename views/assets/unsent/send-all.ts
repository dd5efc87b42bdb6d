import { isStop, lineUp } from './line-up.ts';
import { type Outcome, postEntry } from './post.ts';
import { sentenceOf } from './stop-words.ts';
import { learnStop } from './stops.ts';
import { allEntries, type Entry, settleEntry } from './store.ts';
import { tellOthers } from './tell.ts';

/** What became of what was sent, by the id of the entry. */
export interface Sent {
  readonly outcomes: ReadonlyMap<number, Outcome>;
  /** Why it did not go on to the end. */
  readonly stopped?: Extract<Outcome, { kind: 'later' | 'ended' }>;
}

const LOCK = 'benchcall-unsent';

/**
 * One sender at a time over all pages and the worker. Where a browser has no locks, as over plain http, each page
 * sends for itself: the first of the line is sent by both, counts once by its key, and is gone before the second.
 */
function alone<T>(work: () => Promise<T>): Promise<T> {
  return 'locks' in navigator ? navigator.locks.request(LOCK, work) : work();
}

/** Looked up each time: a stop that is said meanwhile is the next one. */
const nextBut = async (done: ReadonlySet<number>): Promise<Entry | undefined> =>
  lineUp(await allEntries()).find((entry) => entry.state === 'waiting' && !done.has(entry.id));

const SHOWS_ONLY = 'This form keeps nothing, it only shows a result. Press it again on its page.';

/** The desk has it from now on; that it stands is known here before any page says so. */
async function rememberStop(entry: Entry, location: string): Promise<void> {
  const seq = Number(new URL(location, 'http://here').searchParams.get('kept') ?? 0);
  const said = sentenceOf(entry);
  await learnStop({ link: entry.link, seq, at: Date.now(), stands: true, shown: '', said });
}

async function settle(entry: Entry, outcome: Outcome): Promise<void> {
  if (outcome.kind === 'kept') {
    if (isStop(entry)) await rememberStop(entry, outcome.location).catch(() => undefined);
    await settleEntry(entry, 'gone');
  } else if (outcome.kind === 'refused')
    await settleEntry(entry, {
      state: 'refused',
      refusal: outcome.why,
      arrived: outcome.arrived,
      held: outcome.held,
      ...(outcome.line === undefined ? {} : { line: outcome.line }),
    });
  else if (outcome.kind === 'shown') await settleEntry(entry, { state: 'refused', refusal: SHOWS_ONLY });
  // The service has answered, so this sending did not arrive; of an earlier one nobody knows.
  else if (outcome.kind === 'ended') await settleEntry(entry, { tried: entry.tried });
}

/**
 * Sends what waits, a stop first, then in order, one after the other. A refusal stops nothing: what comes after it was typed without
 * knowing it, names only what the service had already, and is judged by the service on its own. No answer stops all,
 * so that nothing overtakes what may still be on its way.
 */
export function sendAll(link?: string): Promise<Sent> {
  return alone(async () => {
    const outcomes = new Map<number, Outcome>();
    /** Links that this browser does not speak for: what was typed under another one still goes. */
    const over = new Set<string>();
    const done = new Set<number>();
    for (let entry = await nextBut(done); entry !== undefined; entry = await nextBut(done)) {
      done.add(entry.id);
      if (over.has(entry.link) || (link !== undefined && entry.link !== link)) continue;
      // What never left this device can't have arrived: it may be changed and deleted without a doubt.
      if (!navigator.onLine) return { outcomes, stopped: { kind: 'later', signal: false } };
      if (!(await settleEntry(entry, { tried: true }))) continue;
      const outcome = await postEntry(entry);
      outcomes.set(entry.id, outcome);
      await settle(entry, outcome);
      tellOthers();
      if (outcome.kind === 'ended') over.add(entry.link);
      if (outcome.kind === 'later' || (outcome.kind === 'ended' && link !== undefined))
        return { outcomes, stopped: outcome };
    }
    return { outcomes };
  });
}
