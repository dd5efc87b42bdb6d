import type { Database, Tx } from '../database/database.ts';
import { hashOf, newSecret } from './secrets.ts';

/** So long after the last sign-in there a browser is known. */
const DEVICE_MS = 180 * 86_400_000;

/** A browser in which one person has signed in before. */
export interface Device {
  readonly shopId: string;
  readonly id: string;
  readonly staffId: string;
}

/** The browser that a secret is of; undefined for one that is unknown or past its time. */
export async function deviceOf(db: Database, secret: string, now: Date): Promise<Device | undefined> {
  const hash = hashOf(secret);
  const row = await db.bySecret(hash, (tx) =>
    tx
      .selectFrom('staff_device')
      .select(['shop_id', 'id', 'staff_id', 'expires_at'])
      .where('token_hash', '=', hash)
      .executeTakeFirst(),
  );
  if (row === undefined || row.expires_at <= now) return undefined;
  return { shopId: row.shop_id, id: row.id, staffId: row.staff_id };
}

export interface KnownDevice {
  readonly secret: string;
  readonly expiresAt: Date;
}

/** Knows the browser of somebody who has just signed in, for as long again; each sign-in gives it a new secret. */
export async function knowDevice(
  tx: Tx,
  { shopId, staffId }: Omit<Device, 'id'>,
  before: Device | undefined,
  now: Date,
): Promise<KnownDevice> {
  const { secret, hash } = newSecret('device');
  const expiresAt = new Date(now.getTime() + DEVICE_MS);
  if (before !== undefined && before.staffId === staffId && before.shopId === shopId)
    await tx.deleteFrom('staff_device').where('shop_id', '=', shopId).where('id', '=', before.id).execute();
  await tx
    .insertInto('staff_device')
    .values({ shop_id: shopId, staff_id: staffId, token_hash: hash, expires_at: expiresAt })
    .execute();
  return { secret, expiresAt };
}
