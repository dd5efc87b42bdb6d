import { z } from 'zod';
import { someWords } from '../../shared/schemas/texts.ts';
import type { Database, Tx } from '../database/database.ts';
import { notFound } from '../problems/failure.ts';
import { hashPassword } from './passwords.ts';
import { type Principal, requireAdministrator } from './principal.ts';
import { hashOf, isId, newSecret } from './secrets.ts';
import { noteSecurity, noteSecurityOf } from './security-events.ts';
import { endAllSessions } from './sessions.ts';

const DAY_MS = 86_400_000;
/** Somebody who was invited may be away for a week; a password that is forgotten is wanted today. */
const OPEN_FOR_MS = { invitation: 7 * DAY_MS, forgotten: DAY_MS } as const;

export const linkPassword = z.strictObject({
  secret: someWords('the secret of the link', 100),
  password: someWords('the password', 1000),
});

interface MadeLink {
  readonly secret: string;
  readonly expiresAt: Date;
}

/** Makes the link by which a person sets their password, in place of one that is open. */
export async function passwordLinkFor(
  tx: Tx,
  shopId: string,
  staffId: string,
  what: keyof typeof OPEN_FOR_MS,
  now: Date,
): Promise<MadeLink> {
  const { secret, hash } = newSecret('password');
  const expiresAt = new Date(now.getTime() + OPEN_FOR_MS[what]);
  await tx
    .deleteFrom('password_link')
    .where('shop_id', '=', shopId)
    .where('staff_id', '=', staffId)
    .where('used_at', 'is', null)
    .execute();
  await tx
    .insertInto('password_link')
    .values({ shop_id: shopId, staff_id: staffId, token_hash: hash, expires_at: expiresAt })
    .execute();
  return { secret, expiresAt };
}

/** For somebody who forgot theirs. What they have now stays good until the link is used. */
export async function makePasswordLink(
  tx: Tx,
  principal: Principal,
  staffId: string,
  now: Date,
): Promise<MadeLink> {
  requireAdministrator(principal);
  if (!isId(staffId)) throw notFound('person at the desk');
  const person = await tx
    .selectFrom('staff')
    .select(['name', 'password_hash'])
    .where('shop_id', '=', principal.shopId)
    .where('id', '=', staffId)
    .where('disabled_at', 'is', null)
    .forUpdate()
    .executeTakeFirst();
  if (person === undefined) throw notFound('person at the desk');
  await noteSecurityOf(tx, principal, 'password-link-made', person.name);
  const what = person.password_hash === null ? 'invitation' : 'forgotten';
  return passwordLinkFor(tx, principal.shopId, staffId, what, now);
}

/** Whose password a link sets. */
export interface LinkedPerson {
  readonly shopId: string;
  readonly staffId: string;
  readonly name: string;
  readonly email: string;
}

/** Whom an open link is for; undefined for one that is used, ended or made up. It costs no password’s hash. */
export async function personOfLink(
  db: Database,
  secret: string,
  now: Date,
): Promise<LinkedPerson | undefined> {
  const hash = hashOf(secret);
  const link = await db.bySecret(hash, (tx) =>
    tx
      .selectFrom('password_link')
      .select(['shop_id', 'staff_id', 'expires_at', 'used_at'])
      .where('token_hash', '=', hash)
      .executeTakeFirst(),
  );
  if (link === undefined || link.used_at !== null || link.expires_at <= now) return undefined;
  const { shop_id: shopId, staff_id: staffId } = link;
  const person = await db.shopTransaction(
    shopId,
    (tx) =>
      tx
        .selectFrom('staff')
        .select(['name', 'email', 'disabled_at'])
        .where('shop_id', '=', shopId)
        .where('id', '=', staffId)
        .executeTakeFirst(),
    'read',
  );
  if (person === undefined || person.disabled_at !== null) return undefined;
  return { shopId, staffId, name: person.name, email: person.email };
}

/**
 * Sets the password of whom the link is for; every session of theirs and every browser that was known ends. False when the
 * link was used meanwhile, or has ended.
 */
export async function setPasswordByLink(
  db: Database,
  person: LinkedPerson,
  { secret, password, from }: { readonly secret: string; readonly password: string; readonly from: string },
  now: Date,
): Promise<boolean> {
  const passwordHash = await hashPassword(password);
  const { shopId, staffId } = person;
  return db.shopTransaction(shopId, async (tx) => {
    const used = await tx
      .updateTable('password_link')
      .set({ used_at: now })
      .where('shop_id', '=', shopId)
      .where('token_hash', '=', hashOf(secret))
      .where('used_at', 'is', null)
      .where('expires_at', '>', now)
      .returning('id')
      .executeTakeFirst();
    if (used === undefined) return false;
    const set = await tx
      .updateTable('staff')
      .set({ password_hash: passwordHash })
      .where('shop_id', '=', shopId)
      .where('id', '=', staffId)
      .where('disabled_at', 'is', null)
      .returning('id')
      .executeTakeFirst();
    if (set === undefined) return false;
    await endAllSessions(tx, shopId, staffId, now);
    await tx
      .deleteFrom('staff_device')
      .where('shop_id', '=', shopId)
      .where('staff_id', '=', staffId)
      .execute();
    await noteSecurity(tx, shopId, { kind: 'password-set', who: person.name, from });
    return true;
  });
}
