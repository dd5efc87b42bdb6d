import type { ColumnType, Generated } from 'kysely';
import type { Created, Fixed, MaybeMoment, Moment, WithDefault } from './columns.ts';

/** Shops, and who may work for them. */

export interface ShopTable {
  id: Fixed<string>;
  name: string;
  is_demo: WithDefault<boolean>;
  next_call_number: Generated<number>;
  created_at: Created;
}

export interface StaffTable {
  shop_id: Fixed<string>;
  id: Generated<string>;
  name: string;
  email: string;
  email_key: string;
  /** Null until the person has chosen one by a link. */
  password_hash: string | null;
  roles: string[];
  shortcuts: WithDefault<boolean>;
  disabled_at: MaybeMoment;
  created_at: Created;
}

export interface StaffSessionTable {
  shop_id: Fixed<string>;
  id: Generated<string>;
  staff_id: Fixed<string>;
  token_hash: Fixed<string>;
  created_at: Created;
  seen_at: ColumnType<Date, never, Date>;
  expires_at: Moment;
  ended_at: MaybeMoment;
}

export interface ApiKeyTable {
  shop_id: Fixed<string>;
  id: Generated<string>;
  name: Fixed<string>;
  prefix: Fixed<string>;
  key_hash: Fixed<string>;
  scopes: Fixed<string[]>;
  created_by: Fixed<string>;
  created_at: Created;
  expires_at: Moment;
  revoked_at: MaybeMoment;
}

export interface PasswordLinkTable {
  shop_id: Fixed<string>;
  id: Generated<string>;
  staff_id: Fixed<string>;
  token_hash: Fixed<string>;
  created_at: Created;
  expires_at: Moment;
  used_at: MaybeMoment;
}

export interface SecurityEventTable {
  shop_id: Fixed<string>;
  id: Generated<string>;
  kind: Fixed<string>;
  who: Fixed<string>;
  about: Fixed<string>;
  from_address: Fixed<string>;
  happened_at: Created;
}

export interface StaffDeviceTable {
  shop_id: Fixed<string>;
  id: Generated<string>;
  staff_id: Fixed<string>;
  token_hash: Fixed<string>;
  created_at: Created;
  expires_at: Moment;
}

export interface FirstAdministratorLinkTable {
  token_hash: Fixed<string>;
  created_at: Created;
  expires_at: Moment;
  used_at: MaybeMoment;
}
