import type { Selectable } from 'kysely';
import type { Access, Database, Tx } from '../database/database.ts';
import {
  enterShop,
  enterShopReading,
  type FixedQuery,
  thisSecret,
  thisShop,
} from '../database/statements.ts';
import type { BuilderSessionTable, ShareLinkTable } from '../database/tables/calls.ts';
import type { ApiKeyTable, StaffSessionTable, StaffTable } from '../database/tables/people.ts';
import { type Principal, ROLES, type Role } from './principal.ts';
import type { SecretKind } from './secrets.ts';

/** Unused this long, a staff session ends. */
export const IDLE_MS = 12 * 3_600_000;
/** A session's last use is written at most this often: reading a page must not cost a write each time. */
const SEEN_STEP_MS = 60_000;

const SESSION = ['shop_id', 'id', 'seen_at', 'expires_at', 'ended_at'] as const;
const STAFF = ['id', 'name', 'roles', 'disabled_at', 'shortcuts'] as const;
type ShareLink = Selectable<ShareLinkTable>;

function isRole(text: string): text is Role {
  return ROLES.some((role) => role === text);
}

export interface Use {
  /** The staff session whose use is to be written down. */
  session?: { readonly shopId: string; readonly id: string };
}

/** Finds the caller and runs `work` in the same transaction, now one of their shop. */
type Resolve = <T>(
  found: {
    readonly db: Database;
    readonly hash: string;
    readonly now: Date;
    readonly access: Access;
    readonly use: Use;
  },
  work: (tx: Tx, principal: Principal) => Promise<T>,
) => Promise<T | undefined>;

const sessionBySecret: FixedQuery<Pick<Selectable<StaffSessionTable>, (typeof SESSION)[number]>> = (from) =>
  from.selectFrom('staff_session').select(SESSION).where('token_hash', '=', thisSecret);

const staffOfSession: FixedQuery<Pick<Selectable<StaffTable>, (typeof STAFF)[number]>> = (from) =>
  from
    .selectFrom('staff')
    .select(STAFF)
    .where('shop_id', '=', thisShop)
    .where('id', '=', ({ selectFrom }) =>
      selectFrom('staff_session')
        .select('staff_id')
        .where('staff_session.shop_id', '=', thisShop)
        .where('token_hash', '=', thisSecret),
    );

const staffBySession: Resolve = ({ db, hash, now, access, use }, work) =>
  db.bySecretReading(
    hash,
    sessionBySecret,
    async (tx, [session]) => {
      if (session === undefined || session.ended_at !== null || session.expires_at <= now) return undefined;
      const idle = now.getTime() - session.seen_at.getTime();
      if (idle > IDLE_MS) return undefined;
      const [staff] = await enterShopReading(tx, session.shop_id, staffOfSession);
      if (staff === undefined || staff.disabled_at !== null) return undefined;
      if (idle > SEEN_STEP_MS) use.session = { shopId: session.shop_id, id: session.id };
      return work(tx, {
        kind: 'staff',
        shopId: session.shop_id,
        id: staff.id,
        name: staff.name,
        roles: staff.roles.filter(isRole),
        sessionId: session.id,
        shortcuts: staff.shortcuts,
      });
    },
    access,
  );

function builderOf(link: ShareLink | undefined, now: Date): Principal | undefined {
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

const linkBySecret: FixedQuery<ShareLink> = (from) =>
  from.selectFrom('share_link').selectAll().where('token_hash', '=', thisSecret);

const builderByLink: Resolve = ({ db, hash, now, access }, work) =>
  db.bySecretReading(
    hash,
    linkBySecret,
    async (tx, [link]) => {
      const builder = builderOf(link, now);
      if (builder === undefined) return undefined;
      await enterShop(tx, builder.shopId);
      return work(tx, builder);
    },
    access,
  );

const builderSessionBySecret: FixedQuery<Selectable<BuilderSessionTable>> = (from) =>
  from.selectFrom('builder_session').selectAll().where('token_hash', '=', thisSecret);

const linkOfSession: FixedQuery<ShareLink> = (from) =>
  from
    .selectFrom('share_link')
    .selectAll()
    .where('shop_id', '=', thisShop)
    .where('id', '=', ({ selectFrom }) =>
      selectFrom('builder_session')
        .select('share_link_id')
        .where('builder_session.shop_id', '=', thisShop)
        .where('builder_session.token_hash', '=', thisSecret),
    );

const builderBySession: Resolve = ({ db, hash, now, access }, work) =>
  db.bySecretReading(
    hash,
    builderSessionBySecret,
    async (tx, [session]) => {
      if (session === undefined || session.expires_at <= now) return undefined;
      const [link] = await enterShopReading(tx, session.shop_id, linkOfSession);
      const builder = builderOf(link, now);
      return builder === undefined ? undefined : work(tx, builder);
    },
    access,
  );

const keyBySecret: FixedQuery<Selectable<ApiKeyTable>> = (from) =>
  from.selectFrom('api_key').selectAll().where('key_hash', '=', thisSecret);

const programByKey: Resolve = ({ db, hash, now, access }, work) =>
  db.bySecretReading(
    hash,
    keyBySecret,
    async (tx, [key]) => {
      if (key === undefined || key.revoked_at !== null || key.expires_at <= now) return undefined;
      await enterShop(tx, key.shop_id);
      return work(tx, {
        kind: 'program',
        shopId: key.shop_id,
        id: key.id,
        name: key.name,
        scopes: key.scopes,
      });
    },
    access,
  );

/** Those by which a request is made; the others open one thing on a page of their own. */
type Speaking = Exclude<SecretKind, 'first' | 'device' | 'password'>;

export const RESOLVERS: Readonly<Record<Speaking, Resolve>> = {
  session: staffBySession,
  link: builderByLink,
  builder: builderBySession,
  key: programByKey,
};

export const speaksForSomebody = (kind: SecretKind): kind is Speaking => kind in RESOLVERS;
