import { type Compilable, type QueryCreator, sql, type Transaction } from 'kysely';
import type { Tables } from './tables.ts';

/*
 * Statements that are sent together, in one message to the server and back: each message by itself is a wait.
 */

export type Tx = Transaction<Tables>;

const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/;
const HASH = /^[0-9a-f]{64}$/;

/** A query that takes nothing from outside, so that its text can stand beside other statements. */
export type FixedQuery<Row> = (from: QueryCreator<Tables>) => Compilable<Row>;

/** The secret that opened the transaction, for a query beside its opening. */
export const thisSecret = sql<string>`app_lookup()`;
/** The shop that is entered. As a value in the text, so that a distributed server knows where its rows are. */
export const thisShop = sql<string>`${sql.raw(':shop')}`;

const texts = new WeakMap<FixedQuery<never>, string>();

export function textOf<Row>(from: QueryCreator<Tables>, query: FixedQuery<Row>): string {
  const known = texts.get(query);
  if (known !== undefined) return known;
  const made = query(from).compile();
  if (made.parameters.length > 0) throw new Error('a query beside other statements can have no parameters');
  texts.set(query, made.sql);
  return made.sql;
}

/** What a transaction says with its commit. */
const atCommit = new WeakMap<Tx, readonly string[]>();

export function closing(tx: Tx): string {
  return [...(atCommit.get(tx) ?? []), 'commit'].join('; ');
}

/** SET LOCAL itself, not set_config(): only the command is passed on to the nodes of a distributed server. */
export function shopTransaction(shopId: string): string {
  if (!UUID.test(shopId)) throw new Error('a shop id must be a UUID');
  return `set local app.shop = '${shopId}'`;
}

export function lookUp(secretHash: string): string {
  if (!HASH.test(secretHash)) throw new Error('a secret is looked up by its SHA-256 in hex');
  return `set local app.lookup = '${secretHash}'`;
}

/** Turns a transaction found by a secret into one of the shop that the secret opened. */
export async function enterShop(tx: Tx, shopId: string): Promise<void> {
  await sql.raw(shopTransaction(shopId)).execute(tx);
}

/** Likewise, reading `next` in the same message by shop and secret; after it the secret opens nothing. */
export async function enterShopReading<Row>(tx: Tx, shopId: string, next: FixedQuery<Row>): Promise<Row[]> {
  const text = `${shopTransaction(shopId)}; ${textOf(tx, next).replaceAll(':shop', `'${shopId}'`)}; set local app.lookup = ''`;
  return (await sql.raw<Row>(text).execute(tx)).rows;
}

/** Sends a notification with the commit, which is when the server passes it on in any case. */
export function notifyAtCommit(tx: Tx, channel: string, payload: string): void {
  if (!/^[a-z_]+$/.test(channel) || !/^[a-z0-9 -]+$/.test(payload))
    throw new Error('not a plain notification');
  atCommit.set(tx, [...(atCommit.get(tx) ?? []), `notify ${channel}, '${payload}'`]);
}
