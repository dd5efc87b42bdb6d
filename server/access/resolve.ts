import { type Database, enterShop, type Tx } from '../database/database.ts';
import { type Caller, ROLES, type Role } from './caller.ts';
import { hashOf, kindOfSecret } from './secrets.ts';

/** Unused this long, a staff session ends; and after the absolute time in any case. */
export const IDLE_MS = 12 * 3_600_000;
export const ABSOLUTE_MS = 7 * 86_400_000;
/** A session's last use is written at most this often: reading a page must not cost a write each time. */
const SEEN_STEP_MS = 60_000;

function isRole(text: string): text is Role {
  return ROLES.some((role) => role === text);
}

async function staffBySession(tx: Tx, hash: string, now: Date): Promise<Caller | undefined> {
  const session = await tx
    .selectFrom('staff_session')
    .select(['shop_id', 'id', 'staff_id', 'seen_at', 'expires_at', 'ended_at'])
    .where('token_hash', '=', hash)
    .executeTakeFirst();
  if (session === undefined || session.ended_at !== null || session.expires_at <= now) return undefined;
  const idle = now.getTime() - session.seen_at.getTime();
  if (idle > IDLE_MS) return undefined;
  await enterShop(tx, session.shop_id);
  const staff = await tx
    .selectFrom('staff')
    .select(['id', 'name', 'roles', 'disabled_at', 'shortcuts'])
    .where('shop_id', '=', session.shop_id)
    .where('id', '=', session.staff_id)
    .executeTakeFirst();
  if (staff === undefined || staff.disabled_at !== null) return undefined;
  if (idle > SEEN_STEP_MS) {
    await tx
      .updateTable('staff_session')
      .set({ seen_at: now })
      .where('shop_id', '=', session.shop_id)
      .where('id', '=', session.id)
      .execute();
  }
  return {
    kind: 'staff',
    shopId: session.shop_id,
    id: staff.id,
    name: staff.name,
    roles: staff.roles.filter(isRole),
    sessionId: session.id,
    shortcuts: staff.shortcuts,
  };
}

async function builderByLink(tx: Tx, hash: string, now: Date): Promise<Caller | undefined> {
  const link = await tx
    .selectFrom('share_link')
    .selectAll()
    .where('token_hash', '=', hash)
    .executeTakeFirst();
  if (link === undefined || link.revoked_at !== null || link.expires_at <= now) return undefined;
  return {
    kind: 'builder',
    shopId: link.shop_id,
    id: link.id,
    name: link.holder,
    buildId: link.build_id,
    callId: link.call_id,
  };
}

async function builderBySession(tx: Tx, hash: string, now: Date): Promise<Caller | undefined> {
  const session = await tx
    .selectFrom('builder_session')
    .selectAll()
    .where('token_hash', '=', hash)
    .executeTakeFirst();
  if (session === undefined || session.expires_at <= now) return undefined;
  await enterShop(tx, session.shop_id);
  const link = await tx
    .selectFrom('share_link')
    .select('token_hash')
    .where('shop_id', '=', session.shop_id)
    .where('id', '=', session.share_link_id)
    .executeTakeFirst();
  return link === undefined ? undefined : builderByLink(tx, link.token_hash, now);
}

async function programByKey(tx: Tx, hash: string, now: Date): Promise<Caller | undefined> {
  const key = await tx.selectFrom('api_key').selectAll().where('key_hash', '=', hash).executeTakeFirst();
  if (key === undefined || key.revoked_at !== null || key.expires_at <= now) return undefined;
  return { kind: 'program', shopId: key.shop_id, id: key.id, name: key.name, scopes: key.scopes };
}

/** Whom a secret speaks for; undefined for one that is unknown, ended, expired or revoked. */
export async function callerOf(db: Database, secret: string, now: Date): Promise<Caller | undefined> {
  const kind = kindOfSecret(secret);
  if (kind === undefined || kind === 'first') return undefined;
  const hash = hashOf(secret);
  const resolvers = {
    session: staffBySession,
    link: builderByLink,
    builder: builderBySession,
    key: programByKey,
  };
  return db.bySecret(hash, (tx) => resolvers[kind](tx, hash, now));
}
