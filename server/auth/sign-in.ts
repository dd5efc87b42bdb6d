import type { Selectable } from 'kysely';
import type { Database } from '../database/database.ts';
import { enterShop } from '../database/statements.ts';
import type { StaffTable } from '../database/tables/people.ts';
import { Failure } from '../problems/failure.ts';
import { type Device, deviceOf, type KnownDevice, knowDevice } from './devices.ts';
import { verifyPassword } from './passwords.ts';
import { ABSOLUTE_MS } from './resolve.ts';
import { hintRights } from './rights-hint.ts';
import { emailKey, kindOfSecret, newSecret } from './secrets.ts';
import { noteSecurity } from './security-events.ts';
import type { SignInLimits } from './sign-in-limits.ts';

interface SignedIn {
  readonly secret: string;
  readonly expiresAt: Date;
  readonly name: string;
  /** By what this browser is known from now on, where it is one. */
  readonly device: KnownDevice | undefined;
}

interface Typed {
  readonly email: string;
  readonly password: string;
  readonly address: string;
  /** Of a browser, what it is known by if it is; left out by a program, which keeps none. */
  readonly browser?: { readonly secret: string | undefined };
}

const CANDIDATE = ['shop_id', 'id', 'name', 'password_hash', 'disabled_at'] as const;
type Candidate = Pick<Selectable<StaffTable>, (typeof CANDIDATE)[number]>;

/** The browser it is typed into, where one of these has signed in with it before. */
async function knownBrowser(
  db: Database,
  { browser }: Typed,
  open: readonly Candidate[],
  now: Date,
): Promise<Device | undefined> {
  const secret = browser?.secret;
  if (secret === undefined || kindOfSecret(secret) !== 'device') return undefined;
  const device = await deviceOf(db, secret, now);
  return open.some((each) => each.id === device?.staffId && each.shop_id === device.shopId)
    ? device
    : undefined;
}

/** Written down for each shop where somebody has the address; an address that nobody has takes a transaction as well. */
async function noteFailed(db: Database, key: string, of: readonly Candidate[], from: string): Promise<void> {
  for (const { shop_id: shopId, name } of of)
    await db.shopTransaction(shopId, (tx) =>
      noteSecurity(tx, shopId, { kind: 'sign-in-failed', who: name, from }),
    );
  if (of.length === 0)
    await db.bySecret(key, (tx) =>
      tx.selectFrom('staff').select('id').where('email_key', '=', key).execute(),
    );
}

async function openSession(
  db: Database,
  staff: Candidate,
  { address, browser }: Typed,
  device: Device | undefined,
  now: Date,
): Promise<SignedIn> {
  const { shop_id: shopId, id: staffId, name } = staff;
  const { secret, hash } = newSecret('session');
  const expiresAt = new Date(now.getTime() + ABSOLUTE_MS);
  const known = await db.shopTransaction(shopId, async (tx) => {
    await tx
      .insertInto('staff_session')
      .values({ shop_id: shopId, staff_id: staffId, token_hash: hash, expires_at: expiresAt })
      .execute();
    await noteSecurity(tx, shopId, { kind: 'signed-in', who: name, from: address });
    return browser === undefined ? undefined : knowDevice(tx, { shopId, staffId }, device, now);
  });
  return { secret, expiresAt, name, device: known };
}

/**
 * Signs a person in by address and password. Unknown, disabled and wrong all get the same answer after the same
 * work. An address of e-mail may be staff of several shops; the password tells which is meant.
 */
export async function signIn(db: Database, limits: SignInLimits, typed: Typed, now: Date): Promise<SignedIn> {
  const key = emailKey(typed.email);
  const candidates = await db.bySecret(key, (tx) =>
    tx
      .selectFrom('staff')
      .select(CANDIDATE)
      .where('email_key', '=', key)
      .orderBy('created_at')
      .limit(5)
      .execute(),
  );
  const open = candidates.filter((each) => each.disabled_at === null);
  const device = await knownBrowser(db, typed, open, now);
  const attempt = { address: typed.address, account: key, device: device?.id };
  await limits.take(attempt);
  // One verification at the least, also for nobody: the time taken tells nothing.
  const tries = open.length === 0 ? [undefined] : open;
  const by = device === undefined ? 'anybody' : 'known';
  for (const staff of tries) {
    if (!(await verifyPassword(staff?.password_hash, typed.password, by)) || staff === undefined) continue;
    const signed = await openSession(db, staff, typed, device, now);
    await limits.forgive(attempt);
    return signed;
  }
  await noteFailed(db, key, candidates, typed.address);
  throw new Failure('sign-in-refused', 'this e-mail address and password do not fit together');
}

/** Ends the sessions of one person: one of them, or all. */
export async function endSessions(
  db: Database,
  shopId: string,
  which: { sessionId: string } | { staffId: string },
  now: Date,
): Promise<void> {
  await db.shopTransaction(shopId, async (tx) => {
    const ended = await tx
      .updateTable('staff_session')
      .set({ ended_at: now })
      .where('shop_id', '=', shopId)
      .where((row) =>
        'sessionId' in which ? row('id', '=', which.sessionId) : row('staff_id', '=', which.staffId),
      )
      .where('ended_at', 'is', null)
      .returning('staff_id')
      .execute();
    for (const staffId of new Set(ended.map(({ staff_id }) => staff_id))) await hintRights(tx, staffId);
  });
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
