import { type DBSchema, type IDBPDatabase, openDB } from 'idb';

/** A form that was filled and pressed, and has not been answered yet. It is here before it is sent. */
export interface Entry {
  /** Entries go out in the order of their ids. */
  readonly id: number;
  /** The link that it was typed under: it goes into no other build. */
  readonly link: string;
  /** The build of that link, by which another link knows its own. */
  readonly build?: string;
  /** Where it is posted to. */
  readonly action: string;
  /** The page with its form. */
  readonly page: string;
  /** Every field as the form would send it, its idempotency key among them. */
  readonly fields: readonly (readonly [name: string, value: string])[];
  /** What was pressed, and what was typed, in words. */
  readonly pressed: string;
  readonly typed: string;
  readonly at: number;
  /**
   * `waiting` goes out by itself. `changing` is in its form again. `handed` was refused, and the browser is about to
   * show its form with the faults. `refused` waits for the person.
   */
  readonly state: 'waiting' | 'changing' | 'handed' | 'refused';
  /** It was sent before and no answer came: it may have arrived. */
  readonly tried: boolean;
  /** Why it was refused, in the service's words; empty once it was changed. */
  readonly refusal?: string;
  /** It was refused because it had arrived before, in other words. */
  readonly arrived?: boolean;
  /** It was refused because a stop stood. */
  readonly held?: boolean;
  /** The line of the tape that the refusal is about. */
  readonly line?: number;
}

export type NewEntry = Omit<Entry, 'id'>;

interface Schema extends DBSchema {
  entries: { key: number; value: NewEntry & { readonly id?: number } };
}

const STORE = 'entries';
let opened: Promise<IDBPDatabase<Schema>> | undefined;

function database(): Promise<IDBPDatabase<Schema>> {
  opened ??= openDB<Schema>('benchcall-unsent', 1, {
    upgrade: (db) => {
      db.createObjectStore(STORE, { keyPath: 'id', autoIncrement: true });
    },
    // A browser may close it, under storage pressure for one: the next use opens it again.
    terminated: () => {
      opened = undefined;
    },
  });
  return opened;
}

/** Keeps it on this device; what was kept is there after the page, the browser and the phone were off. */
export async function addEntry(entry: NewEntry): Promise<Entry> {
  const id = await (await database()).add(STORE, entry);
  return { ...entry, id };
}

/** All of them, oldest first. */
export async function allEntries(): Promise<Entry[]> {
  const entries = await (await database()).getAll(STORE);
  return entries.flatMap(({ id, ...entry }) => (id === undefined ? [] : [{ ...entry, id }]));
}

/** The entry as it is now, if it is still there. */
async function within(
  id: number,
  work: (entry: NewEntry, store: { put(entry: NewEntry): unknown; remove(): unknown }) => void,
): Promise<boolean> {
  const tx = (await database()).transaction(STORE, 'readwrite');
  const entry = await tx.store.get(id);
  if (entry !== undefined)
    work(entry, { put: (next) => tx.store.put({ ...next, id }), remove: () => tx.store.delete(id) });
  await tx.done;
  return entry !== undefined;
}

/** Changes one that is still there; one that was sent or deleted meanwhile does not come back. */
export const changeEntry = (id: number, change: Partial<NewEntry>): Promise<boolean> =>
  within(id, (entry, { put }) => put({ ...entry, ...change }));

export const deleteEntry = (id: number): Promise<boolean> => within(id, (_entry, { remove }) => remove());

/**
 * Changes or removes an entry that is being sent, and answers whether it did. One that the person has changed or
 * deleted meanwhile is left alone: an answer is about the words that went out, and by the same key the service says so.
 */
export async function settleEntry(sent: Entry, change: Partial<NewEntry> | 'gone'): Promise<boolean> {
  let settled = false;
  await within(sent.id, (entry, { put, remove }) => {
    settled = entry.state === 'waiting' && entry.at === sent.at;
    if (!settled) return;
    if (change === 'gone') remove();
    else put({ ...entry, ...change });
  });
  return settled;
}
