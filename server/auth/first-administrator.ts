import { sql } from 'kysely';
import type { Database, Tx } from '../database/database.ts';
import { enterShop } from '../database/statements.ts';
import { hashPassword, verifyPassword } from './passwords.ts';
import { personRow } from './person-row.ts';
import { emailKey, newSecret } from './secrets.ts';
import { noteSecurity } from './security-events.ts';

/** One at a time: of several processes that start on an empty database the last one’s link is the one that works. */
const takeTurn = (tx: Tx) =>
  sql`select pg_advisory_xact_lock(hashtextextended('first administrator', 0))`.execute(tx);

/**
 * Makes the link by which the first administrator comes in, in place of any that was made before; undefined where there
 * is a shop by now.
 */
export async function makeFirstLink(
  db: Database,
  anyShop: () => Promise<boolean>,
  expiresAt: Date,
): Promise<string | undefined> {
  const { secret, hash } = newSecret('first');
  return db.bySecret(hash, async (tx) => {
    await takeTurn(tx);
    if (await anyShop()) return undefined;
    // The policy lets those be deleted that nobody has used.
    await tx.deleteFrom('first_administrator_link').execute();
    await tx
      .insertInto('first_administrator_link')
      .values({ token_hash: hash, expires_at: expiresAt })
      .execute();
    return secret;
  });
}

/** Whether a link is worth hashing a password for. */
async function isOpen(db: Database, linkHash: string, now: Date): Promise<boolean> {
  const link = await db.bySecret(linkHash, (tx) =>
    tx
      .selectFrom('first_administrator_link')
      .select(['used_at', 'expires_at'])
      .where('token_hash', '=', linkHash)
      .executeTakeFirst(),
  );
  return link !== undefined && link.used_at === null && link.expires_at > now;
}

/** Makes the shop and its first administrator; false when the link was used before or has ended. */
export async function createFirstAdministrator(
  db: Database,
  linkHash: string,
  person: {
    readonly shop: string;
    readonly name: string;
    readonly email: string;
    readonly password: string;
    readonly from: string;
  },
  now: Date,
): Promise<boolean> {
  // Looked up by its fast hash first: a link that somebody made up costs no password’s hash.
  if (!(await isOpen(db, linkHash, now))) return false;
  const passwordHash = await hashPassword(person.password);
  const shopId = crypto.randomUUID();
  return db.bySecret(linkHash, async (tx) => {
    await takeTurn(tx);
    const used = await tx
      .updateTable('first_administrator_link')
      .set({ used_at: now })
      .where('token_hash', '=', linkHash)
      .where('used_at', 'is', null)
      .where('expires_at', '>', now)
      .returning('token_hash')
      .executeTakeFirst();
    if (used === undefined) return false;
    await enterShop(tx, shopId);
    await tx.insertInto('shop').values({ id: shopId, name: person.shop }).execute();
    await tx
      .insertInto('staff')
      .values(personRow(shopId, { ...person, passwordHash, roles: ['administrator', 'desk', 'quality'] }))
      .execute();
    await noteSecurity(tx, shopId, { kind: 'first-link-used', who: person.name, from: person.from });
    return true;
  });
}

/** A form may be sent twice by one click too many; whoever sends it later than this is somebody else. */
const ONE_CLICK_MS = 60_000;

/** Whether this person was made by this link just now: then the second of two clicks gets the first's answer. */
export async function wasMadeJustNow(
  db: Database,
  linkHash: string,
  person: { readonly email: string; readonly password: string },
  now: Date,
): Promise<boolean> {
  const used = await db.bySecret(linkHash, (tx) =>
    tx
      .selectFrom('first_administrator_link')
      .select('used_at')
      .where('token_hash', '=', linkHash)
      .executeTakeFirst(),
  );
  const usedAt = used?.used_at ?? undefined;
  if (usedAt === undefined || now.getTime() - usedAt.getTime() > ONE_CLICK_MS) return false;
  const key = emailKey(person.email);
  const [made] = await db.bySecret(key, (tx) =>
    tx
      .selectFrom('staff')
      .select('password_hash')
      .where('email_key', '=', key)
      .orderBy('created_at', 'desc')
      .limit(1)
      .execute(),
  );
  return verifyPassword(made?.password_hash, person.password, 'anybody');
}
