import { type Database, enterShop } from '../database/database.ts';
import { hashPassword } from './passwords.ts';
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
      .values({
        shop_id: shopId,
        name: person.name,
        email: person.email,
        email_key: emailKey(person.email),
        password_hash: passwordHash,
        roles: ['administrator', 'desk', 'quality'],
      })
      .execute();
    return true;
  });
}
