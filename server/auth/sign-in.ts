import type { Database } from '../database/database.ts';
import { enterShop } from '../database/statements.ts';
import { Failure } from '../problems/failure.ts';
import { verifyPassword } from './passwords.ts';
import { ABSOLUTE_MS } from './resolve.ts';
import { emailKey, newSecret } from './secrets.ts';
import type { SignInLimits } from './sign-in-limits.ts';

interface SignedIn {
  readonly secret: string;
  readonly expiresAt: Date;
  readonly name: string;
}

/**
 * Signs a person in by address and password. Unknown, disabled and wrong all get the same answer after the same
 * work. An address of e-mail may be staff of several shops; the password tells which is meant.
 */
export async function signIn(
  db: Database,
  limits: SignInLimits,
  input: { readonly email: string; readonly password: string; readonly address: string },
  now: Date,
): Promise<SignedIn> {
  const key = emailKey(input.email);
  await limits.take(input.address, key);
  const candidates = await db.bySecret(key, (tx) =>
    tx
      .selectFrom('staff')
      .select(['shop_id', 'id', 'name', 'password_hash', 'disabled_at'])
      .where('email_key', '=', key)
      .orderBy('created_at')
      .limit(5)
      .execute(),
  );
  const open = candidates.filter((each) => each.disabled_at === null);
  // One verification at the least, also for nobody: the time taken tells nothing.
  const tries = open.length === 0 ? [undefined] : open;
  for (const staff of tries) {
    if (!(await verifyPassword(staff?.password_hash, input.password)) || staff === undefined) continue;
    const { secret, hash } = newSecret('session');
    const expiresAt = new Date(now.getTime() + ABSOLUTE_MS);
    await db.shopTransaction(staff.shop_id, (tx) =>
      tx
        .insertInto('staff_session')
        .values({ shop_id: staff.shop_id, staff_id: staff.id, token_hash: hash, expires_at: expiresAt })
        .execute(),
    );
    await limits.forgive(input.address, key);
    return { secret, expiresAt, name: staff.name };
  }
  throw new Failure('sign-in-refused', 'this e-mail address and password do not fit together');
}

/** Ends the sessions of one person: one of them, or all. */
export async function endSessions(
  db: Database,
  shopId: string,
  which: { sessionId: string } | { staffId: string },
  now: Date,
): Promise<void> {
  await db.shopTransaction(shopId, (tx) =>
    tx
      .updateTable('staff_session')
      .set({ ended_at: now })
      .where('shop_id', '=', shopId)
      .where((row) =>
        'sessionId' in which ? row('id', '=', which.sessionId) : row('staff_id', '=', which.staffId),
      )
      .where('ended_at', 'is', null)
      .execute(),
  );
}

/** What a link is worth now: open, ended on a day, or never made. */
export type LinkState = { readonly is: 'open' | 'never-made' } | { readonly is: 'ended'; readonly on: Date };

/** Looks at a share link without opening it. */
export async function shareLinkState(db: Database, linkHash: string, now: Date): Promise<LinkState> {
  const link = await db.bySecret(linkHash, (tx) =>
    tx
      .selectFrom('share_link')
      .select(['revoked_at', 'expires_at'])
      .where('token_hash', '=', linkHash)
      .executeTakeFirst(),
  );
  if (link === undefined) return { is: 'never-made' };
  if (link.revoked_at !== null) return { is: 'ended', on: link.revoked_at };
  return link.expires_at <= now ? { is: 'ended', on: link.expires_at } : { is: 'open' };
}

/** Ends what was opened by a share link in one browser; the link itself stays. */
export async function endBuilderSession(db: Database, sessionHash: string): Promise<void> {
  await db.bySecret(sessionHash, async (tx) => {
    const session = await tx
      .selectFrom('builder_session')
      .select(['shop_id', 'id'])
      .where('token_hash', '=', sessionHash)
      .executeTakeFirst();
    if (session === undefined) return;
    await enterShop(tx, session.shop_id);
    await tx
      .deleteFrom('builder_session')
      .where('shop_id', '=', session.shop_id)
      .where('id', '=', session.id)
      .execute();
  });
}

/** Swaps a share link for a session of its own, so that the secret leaves the address bar. */
export async function openShareLink(
  db: Database,
  linkHash: string,
  now: Date,
): Promise<{ secret: string; expiresAt: Date } | undefined> {
  return db.bySecret(linkHash, async (tx) => {
    const link = await tx
      .selectFrom('share_link')
      .selectAll()
      .where('token_hash', '=', linkHash)
      .executeTakeFirst();
    if (link === undefined || link.revoked_at !== null || link.expires_at <= now) return undefined;
    await enterShop(tx, link.shop_id);
    const { secret, hash } = newSecret('builder');
    await tx
      .insertInto('builder_session')
      .values({
        shop_id: link.shop_id,
        share_link_id: link.id,
        token_hash: hash,
        expires_at: link.expires_at,
      })
      .execute();
    return { secret, expiresAt: link.expires_at };
  });
}
