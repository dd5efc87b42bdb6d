import { type DBSchema, type IDBPDatabase, openDB } from 'idb';
import { isObject, memberOf } from '../../../shared/member.ts';

/** What is known of the stop of a link, from the newest that this device has seen of it. */
export interface KnownStop {
  readonly link: string;
  /** The build's last sequence number then, and the moment. */
  readonly seq: number;
  readonly at: number;
  readonly stands: boolean;
  /** The box of the page, as the service made it; empty where only the stop was heard of, and where there is none. */
  readonly shown: string;
  /** Who said stop and why, where only that is known. */
  readonly said: string;
}

interface Schema extends DBSchema {
  stops: { key: string; value: KnownStop };
}

const STORE = 'stops';
let opened: Promise<IDBPDatabase<Schema>> | undefined;

function database(): Promise<IDBPDatabase<Schema>> {
  opened ??= openDB<Schema>('benchcall-stops', 1, {
    upgrade: (db) => {
      db.createObjectStore(STORE, { keyPath: 'link' });
    },
    terminated: () => {
      opened = undefined;
    },
  });
  return opened;
}

type Moment = Pick<KnownStop, 'seq' | 'at'>;

/** The log counts first: a page that was fetched later may have been made earlier. */
export const isNewer = (one: Moment, other: Moment): boolean =>
  one.seq > other.seq || (one.seq === other.seq && one.at > other.at);

/** Keeps what was seen, unless something newer is known; of one moment, what says more of the stop stays. */
export async function learnStop(seen: KnownStop): Promise<void> {
  const tx = (await database()).transaction(STORE, 'readwrite');
  const known = await tx.store.get(seen.link);
  if (known === undefined || isNewer(seen, known)) {
    const same = known !== undefined && known.seq === seen.seq && known.stands === seen.stands;
    const { shown, said } = same && seen.shown === '' ? known : seen;
    await tx.store.put({ ...seen, shown, said });
  }
  await tx.done;
}

/** The stop that this device knows of for a link. */
export const knownStop = async (link: string): Promise<KnownStop | undefined> =>
  (await database()).get(STORE, link);

/** Of no link that has ended, and of none beside the one that is open, does anything stay. */
export async function forgetStops(but?: string): Promise<void> {
  const db = await database();
  const links = await db.getAllKeys(STORE);
  await Promise.all(links.filter((link) => link !== but).map((link) => db.delete(STORE, link)));
}

/** What a page says of the stop, as the service made it. */
export function stopIn(html: string): Pick<KnownStop, 'seq' | 'stands' | 'shown'> | undefined {
  const main = /<main [^>]*>/.exec(html)?.[0] ?? '';
  const seq = /data-seq="(\d+)"/.exec(main)?.[1];
  if (seq === undefined) return undefined;
  return {
    seq: Number(seq),
    stands: main.includes('data-stop="stands"'),
    shown: /<section class="hold"[\s\S]*?<\/section>/.exec(html.slice(html.indexOf(main)))?.[0] ?? '',
  };
}

/** A stop that the live stream tells of: known at once, whether its page comes or not. */
export function stopHeard(event: unknown, link: string): KnownStop | undefined {
  if (!isObject(event) || event.kind !== 'hold-set' || typeof event.seq !== 'number') return undefined;
  const { by, data } = event;
  const who = typeof by === 'string' ? by : 'The desk';
  const given = memberOf(data, 'reason');
  const reason = typeof given === 'string' ? given : '';
  const said =
    reason === '' || reason === `${who} said stop` ? `${who} said stop.` : `${who} said stop: “${reason}”`;
  return { link, seq: event.seq, at: Date.now(), stands: true, shown: '', said };
}
