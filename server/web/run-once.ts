import { createHash } from 'node:crypto';
import { sql } from 'kysely';
import type { Principal } from '../auth/principal.ts';
import type { Database, Tx } from '../database/database.ts';
import { Failure } from '../problems/failure.ts';

/** What a command answers; a replay of the same request answers the same. */
interface Outcome {
  readonly status: number;
  readonly body: object;
  /** What is in the first answer alone: a new secret, which is kept nowhere and can't be replayed. */
  readonly once?: object;
  readonly location?: string;
  readonly etag?: string;
}

/** The request a command came by, as far as it decides whether another request is the same. */
interface CommandRequest {
  readonly method: string;
  readonly path: string;
  readonly body: unknown;
  /** Idempotency key, if one was sent. */
  readonly key: string | undefined;
  /** A second request with the key of one still running: wait for it (forms) or say so (programs). */
  readonly whileRunning: 'wait' | 'refuse';
}

const KEY = /^[\x21-\x7e]{1,200}$/;

/** The key of an `Idempotency-Key` header, a quoted string or bare. */
export function idempotencyKey(header: string | string[] | undefined): string | undefined {
  if (header === undefined) return undefined;
  const text = (Array.isArray(header) ? header.join(',') : header).trim();
  const key = /^"(.*)"$/.exec(text)?.[1] ?? text;
  if (!KEY.test(key))
    throw new Failure('bad-request', 'Idempotency-Key must be 1 to 200 visible ASCII characters');
  return key;
}

/** Never part of what is kept of a request: a fast hash of a password could be guessed from. */
const UNKEPT = new Set(['password', 'current']);

function hashOfBody(body: unknown): string {
  const text = JSON.stringify(body ?? null, (name, value: unknown) => (UNKEPT.has(name) ? '' : value));
  return createHash('sha256').update(text).digest('hex');
}

function firstAnswer({ once, ...outcome }: Outcome): Outcome {
  return once === undefined ? outcome : { ...outcome, body: { ...outcome.body, ...once } };
}

async function takeTurn(tx: Tx, lock: string, request: CommandRequest): Promise<void> {
  if (request.whileRunning === 'wait') {
    await sql`select pg_advisory_xact_lock(hashtextextended(${lock}, 0))`.execute(tx);
    return;
  }
  const { rows } = await sql<{
    got: boolean;
  }>`select pg_try_advisory_xact_lock(hashtextextended(${lock}, 0)) as got`.execute(tx);
  if (rows[0]?.got !== true) {
    throw new Failure('still-running', 'a request with this key has not finished yet', {
      headers: { 'retry-after': '1' },
    });
  }
}

async function replay(
  tx: Tx,
  principal: Principal,
  request: CommandRequest,
  key: string,
  hash: string,
): Promise<Outcome | undefined> {
  const row = await tx
    .selectFrom('idempotency')
    .selectAll()
    .where('shop_id', '=', principal.shopId)
    .where('caller', '=', `${principal.kind} ${principal.id}`)
    .where('method', '=', request.method)
    .where('path', '=', request.path)
    .where('key', '=', key)
    .executeTakeFirst();
  if (row === undefined) return undefined;
  if (row.request_hash !== hash) throw new Failure('key-reused', 'this key came with another body before');
  return {
    status: row.status,
    body: row.body,
    ...(row.location === null ? {} : { location: row.location }),
    ...(row.etag === null ? {} : { etag: row.etag }),
  };
}

/**
 * Runs a command in a transaction of the caller's shop. With a key, effect, event and answer are kept
 * together, so that the same request sent twice has its effect once and gets the same answer.
 */
export async function runOnce(
  tx: Tx,
  principal: Principal,
  request: CommandRequest,
  work: (tx: Tx) => Promise<Outcome>,
): Promise<Outcome> {
  const { key } = request;
  if (key === undefined) return firstAnswer(await work(tx));
  const who = `${principal.kind} ${principal.id}`;
  const hash = hashOfBody(request.body);
  await takeTurn(tx, `${principal.shopId} ${who} ${request.method} ${request.path} ${key}`, request);
  const before = await replay(tx, principal, request, key, hash);
  if (before !== undefined) return before;
  const outcome = await work(tx);
  await tx
    .insertInto('idempotency')
    .values({
      shop_id: principal.shopId,
      caller: who,
      method: request.method,
      path: request.path,
      key,
      request_hash: hash,
      status: outcome.status,
      body: JSON.stringify(outcome.body),
      location: outcome.location ?? null,
      etag: outcome.etag ?? null,
    })
    .execute();
  return firstAnswer(outcome);
}

/** Likewise, in a transaction of its own. */
export function runOnceInShop(
  db: Database,
  principal: Principal,
  request: CommandRequest,
  work: (tx: Tx) => Promise<Outcome>,
): Promise<Outcome> {
  return db.shopTransaction(principal.shopId, (tx) => runOnce(tx, principal, request, work));
}
