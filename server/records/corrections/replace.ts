import type { z } from 'zod';
import { author, type Principal } from '../../auth/principal.ts';
import type { Tx } from '../../database/database.ts';
import { changeBuild } from '../../events/change-build.ts';
import type { EventDefinition } from '../../events/define-events.ts';
import { rowOfBuild } from '../../events/rows-of-build.ts';
import { Failure } from '../../problems/failure.ts';
import { type EntryRow, type EntryTable, shown } from './entries.ts';
import type { correction } from './events.ts';

/** Which entry is corrected, and why. */
interface Correction {
  readonly buildId: string;
  readonly id: string;
  readonly reason: string;
}

/** The columns of the entry that comes in the place of another, all but what was read. */
interface ReplacingColumns extends ReturnType<typeof author> {
  readonly shop_id: string;
  readonly build_id: string;
  readonly seq: number;
  readonly replaces: string;
  readonly struck: boolean;
  readonly reason: string;
}

/** What both events of a correction say of the old entry. */
type Said = z.output<z.ZodObject<typeof correction>>;

interface StrikingOut<Row, Struck> {
  /** The event of its striking-out. */
  readonly struck: Struck;
  keep(columns: ReplacingColumns): Promise<Row>;
}

interface Replacement<Row, Replaced, Struck> extends StrikingOut<Row, Struck> {
  /** The event of another in its place; undefined strikes the entry out. */
  readonly replaced: Replaced | undefined;
}

type Queried<Row extends EntryRow> = Pick<EntryTable<Row, unknown>, 'query'>;

const entryInPlaceOf = <Row extends EntryRow>(
  table: Queried<Row>,
  tx: Tx,
  principal: Principal,
  id: string,
): Promise<Row | undefined> =>
  table.query(tx).where('shop_id', '=', principal.shopId).where('replaces', '=', id).executeTakeFirst();

/** Who came first, when and with what, over however many corrections, and the line that stands now. */
async function replacedAlready<Row extends EntryRow>(
  table: Queried<Row>,
  tx: Tx,
  principal: Principal,
  first: Row,
): Promise<Failure> {
  let last = first;
  let next = await entryInPlaceOf(table, tx, principal, last.id);
  while (next !== undefined) {
    last = next;
    next = await entryInPlaceOf(table, tx, principal, last.id);
  }
  const { by_name, created_at, read_as, struck, seq } = last;
  const when = `${created_at.toISOString().slice(0, 16).replace('T', ' ')} UTC`;
  const what = struck ? 'struck it out' : `put ${read_as} in its place`;
  const go = struck ? `That is line ${seq}.` : `Line ${seq} stands now; correct that one.`;
  return new Failure(
    'conflict',
    `this reading has been replaced already: ${by_name} ${what}, ${when}. ${go}`,
    { line: seq },
  );
}

/** The entry as it stands. What was replaced already, or is itself a striking-out, cannot be corrected. */
async function entryToCorrect<Row extends EntryRow, Item>(
  table: Pick<EntryTable<Row, Item>, 'query'>,
  tx: Tx,
  principal: Principal,
  { buildId, id }: Correction,
): Promise<Row> {
  const row = await rowOfBuild(principal, buildId, id, 'reading', table.query(tx));
  const later = await entryInPlaceOf(table, tx, principal, id);
  if (later !== undefined) throw await replacedAlready(table, tx, principal, later);
  if (row.struck)
    throw new Failure('conflict', 'this line strikes a reading out; keep a new reading instead');
  return row;
}

/** The columns of what comes in the place of an entry: which, why, and who said so. */
const placeOf = (
  principal: Principal,
  { buildId, id, reason }: Correction,
  more: { readonly seq: number; readonly struck: boolean },
): ReplacingColumns => ({
  shop_id: principal.shopId,
  build_id: buildId,
  replaces: id,
  reason,
  ...more,
  ...author(principal),
});

const saidOf = ({ read_as, id }: EntryRow, { reason }: Correction): Said => ({
  replaces: read_as,
  replacesId: id,
  reason,
});

/** Replaces an entry, or strikes it out, with the reason; the old one stays where it was. */
export async function replaceEntry<
  Row extends EntryRow,
  Item,
  Replaced extends z.ZodObject,
  Struck extends z.ZodObject,
>(
  table: EntryTable<Row, Item, Replaced, Struck>,
  tx: Tx,
  principal: Principal,
  asked: Correction,
  replacementOf: (
    old: Row,
    was: Item,
    said: Said,
  ) =>
    | Replacement<Row, z.output<Replaced>, z.output<Struck>>
    | Promise<Replacement<Row, z.output<Replaced>, z.output<Struck>>>,
): Promise<Item> {
  return changeBuild(tx, principal, asked.buildId, async ({ emit }) => {
    const old = await entryToCorrect(table, tx, principal, asked);
    const said = saidOf(old, asked);
    const { struck, replaced, keep } = await replacementOf(old, shown(table, old), said);
    const seq = await (replaced === undefined
      ? emit(table.events.struck, struck)
      : emit(table.events.replaced, replaced));
    const row = await keep(placeOf(principal, asked, { seq, struck: replaced === undefined }));
    return shown(table, row);
  });
}

/** Strikes out an entry that no other comes in the place of, with the reason; the old one stays where it was. */
export async function strikeEntry<Row extends EntryRow, Item, Struck extends z.ZodObject>(
  table: Pick<EntryTable<Row, Item>, 'query' | 'show'> & {
    readonly events: { readonly struck: EventDefinition<string, Struck> };
  },
  tx: Tx,
  principal: Principal,
  asked: Correction,
  strikingOutOf: (old: Row, said: Said) => StrikingOut<Row, z.output<Struck>>,
): Promise<Item> {
  return changeBuild(tx, principal, asked.buildId, async ({ emit }) => {
    const old = await entryToCorrect(table, tx, principal, asked);
    const { struck, keep } = strikingOutOf(old, saidOf(old, asked));
    const seq = await emit(table.events.struck, struck);
    return shown(table, await keep(placeOf(principal, asked, { seq, struck: true })));
  });
}
