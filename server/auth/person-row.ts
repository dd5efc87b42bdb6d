import type { Role } from './principal.ts';
import { emailKey } from './secrets.ts';

export interface NewPerson {
  readonly name: string;
  readonly email: string;
  /** Left out of somebody who chooses one by a link. */
  readonly passwordHash?: string;
  readonly roles: readonly Role[];
}

/** The row of a person who comes to a shop: the address is looked for by its key. */
export const personRow = (shopId: string, { name, email, passwordHash, roles }: NewPerson) => ({
  shop_id: shopId,
  name,
  email,
  email_key: emailKey(email),
  password_hash: passwordHash ?? null,
  roles: [...roles],
});
