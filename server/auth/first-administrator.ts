import type { Database } from '../database/database.ts';
import { enterShop } from '../database/statements.ts';
import { hashPassword, verifyPassword } from './passwords.ts';
import { personRow } from './person-row.ts';
import { emailKey } from './secrets.ts';

/** Makes the shop and its first administrator; false when the link was used before or has ended. */
export async function createFirstAdministrator(
  db: Database,
  linkHash: string,
  person: { readonly shop: string; readonly name: string; readonly email: string; readonly password: string },
  now: Date,
): Promise<boolean> {
  const passwordHash = await hashPassword(person.password);
  const shopId = crypto.randomUUID();
  return db.bySecret(linkHash, async (tx) => {
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
  return verifyPassword(made?.password_hash, person.password);
}
