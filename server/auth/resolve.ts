import type { Access, Database, Tx } from '../database/database.ts';
import type { Principal } from './principal.ts';
import { RESOLVERS, speaksForSomebody, type Use } from './resolvers.ts';
import { hashOf, kindOfSecret } from './secrets.ts';

export { IDLE_MS } from './resolvers.ts';
/** However much it is used, a staff session ends after this. */
export const ABSOLUTE_MS = 7 * 86_400_000;

/** In a transaction of its own, so that a session's row is not held for as long as a command takes. */
async function writeUse(db: Database, { session }: Use, now: Date): Promise<void> {
  if (session === undefined) return;
  await db.shopTransaction(session.shopId, (tx) =>
    tx
      .updateTable('staff_session')
      .set({ seen_at: now })
      .where('shop_id', '=', session.shopId)
      .where('id', '=', session.id)
      .execute(),
  );
}

/**
 * Runs `work` for whom a secret speaks for, in the transaction that found them; undefined for a secret that is
 * unknown, ended, expired or revoked.
 */
export async function asPrincipal<T>(
  db: Database,
  secret: string,
  now: Date,
  work: (tx: Tx, principal: Principal) => Promise<T>,
  access: Access = 'write',
): Promise<{ readonly answer: T } | undefined> {
  const kind = kindOfSecret(secret);
  if (kind === undefined || !speaksForSomebody(kind)) return undefined;
  const use: Use = {};
  try {
    return await RESOLVERS[kind]({ db, hash: hashOf(secret), now, access, use }, async (tx, principal) => ({
      answer: await work(tx, principal),
    }));
  } finally {
    // A refused request is a use as well. What was done stays done when this fails: the next request writes it.
    await writeUse(db, use, now).catch(() => undefined);
  }
}

/** Whom a secret speaks for. */
export async function principalOf(db: Database, secret: string, now: Date): Promise<Principal | undefined> {
  return (await asPrincipal(db, secret, now, async (_tx, principal) => principal, 'read'))?.answer;
}
