import type { CompiledQuery, Expression } from 'kysely';
import type { z } from 'zod';
import type { Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import type { EventDefinition } from '../../events/define-events.ts';
import { rowsOfBuild } from '../../events/rows-of-build.ts';

/**
 * Something entered on a build's record. It is never changed: a correction is a later entry that names this one,
 * and one that strikes it out takes its place and holds no value of its own.
 */
export interface Entry {
  readonly id: string;
  readonly seq: number;
  readonly replaces: string | undefined;
  /** The entry that came in its place, if any. */
  readonly replacedBy: string | undefined;
  readonly struck: boolean;
  readonly reason: string;
  readonly by: string;
  readonly byKind: string;
  readonly at: Date;
}

/** The columns that every table of such entries has. */
export interface EntryRow {
  readonly id: string;
  readonly seq: number;
  readonly read_as: string;
  readonly replaces: string | null;
  readonly struck: boolean;
  readonly reason: string;
  readonly by_name: string;
  readonly by_kind: string;
  readonly created_at: Date;
}

/** As much of a query as entries are found by; every table's own query is one. */
interface EntryQuery<Row> {
  where(
    column: 'shop_id' | 'build_id' | 'id' | 'replaces',
    operator: '=',
    value: string | Expression<string>,
  ): EntryQuery<Row>;
  compile(): CompiledQuery<Row>;
  execute(): Promise<Row[]>;
  executeTakeFirst(): Promise<Row | undefined>;
}

/** One table of entries, what its rows are shown as, and the events of their corrections. */
export interface EntryTable<
  Row extends EntryRow,
  Item,
  Replaced extends z.ZodObject = z.ZodObject,
  Struck extends z.ZodObject = z.ZodObject,
> {
  readonly events: {
    readonly replaced: EventDefinition<string, Replaced>;
    readonly struck: EventDefinition<string, Struck>;
  };
  /** All columns, in the order of entry. */
  query(tx: Tx): EntryQuery<Row>;
  show(row: Row, entry: Entry): Item;
}

/** A row as it is shown. One that was just kept has nothing in its place yet. */
export function shown<Row extends EntryRow, Item>(
  table: Pick<EntryTable<Row, Item>, 'show'>,
  row: Row,
  replacedBy?: string,
): Item {
  return table.show(row, {
    id: row.id,
    seq: row.seq,
    replaces: row.replaces ?? undefined,
    replacedBy,
    struck: row.struck,
    reason: row.reason,
    by: row.by_name,
    byKind: row.by_kind,
    at: row.created_at,
  });
}

/** The entries that these rows of one build are, each with what came in its place. */
export function entriesOf<Row extends EntryRow, Item>(
  table: Pick<EntryTable<Row, Item>, 'show'>,
  rows: readonly Row[],
): Item[] {
  const replacedBy = new Map<string, string>();
  for (const { id, replaces } of rows) if (replaces !== null) replacedBy.set(replaces, id);
  return rows.map((row) => shown(table, row, replacedBy.get(row.id)));
}

/** Every entry of a build in the order of entry, replaced and struck ones included. */
export async function listEntries<Row extends EntryRow, Item>(
  table: Pick<EntryTable<Row, Item>, 'query' | 'show'>,
  tx: Tx,
  principal: Principal,
  buildId: string,
): Promise<Item[]> {
  return entriesOf(table, await rowsOfBuild(tx, principal, buildId, table.query(tx)));
}

/** The entry that another came to stand in place of, over however many corrections: what it was read with is of then. */
export function firstEntry<Each extends Pick<Entry, 'id' | 'replaces'>>(
  entries: readonly Each[],
): (entry: Each) => Each {
  const byId = new Map(entries.map((entry) => [entry.id, entry]));
  const firstOf = (entry: Each): Each => {
    const before = entry.replaces === undefined ? undefined : byId.get(entry.replaces);
    return before === undefined ? entry : firstOf(before);
  };
  return firstOf;
}

/** The entries that stand: neither replaced nor a striking-out. */
export function stillStanding<Each extends Pick<Entry, 'replacedBy' | 'struck'>>(
  entries: readonly Each[],
): Each[] {
  return entries.filter((entry) => entry.replacedBy === undefined && !entry.struck);
}
