import type { ColumnType, Generated } from 'kysely';
import type { Created, Fixed, MaybeMoment, Moment, WithDefault } from './columns.ts';

/** Calls, the links they are shared by, and who is there now. */

export interface CallTable {
  shop_id: Fixed<string>;
  id: Generated<string>;
  build_id: Fixed<string>;
  number: Fixed<number>;
  caller_name: WithDefault<string>;
  caller_role: WithDefault<string>;
  call_back: WithDefault<string>;
  goal: string;
  engine_state: WithDefault<string>;
  contact: WithDefault<string>;
  held: WithDefault<boolean>;
  hold_reason: WithDefault<string>;
  opened_by: Fixed<string>;
  opened_at: Created;
  closed_at: MaybeMoment;
}

export interface ShareLinkTable {
  shop_id: Fixed<string>;
  id: Generated<string>;
  build_id: Fixed<string>;
  call_id: Fixed<string>;
  token_hash: Fixed<string>;
  holder: Fixed<string>;
  created_by: Fixed<string>;
  created_at: Created;
  expires_at: Moment;
  revoked_at: MaybeMoment;
}

export interface BuilderSessionTable {
  shop_id: Fixed<string>;
  id: Generated<string>;
  share_link_id: Fixed<string>;
  token_hash: Fixed<string>;
  created_at: Created;
  expires_at: Moment;
}

export interface PresenceTable {
  shop_id: Fixed<string>;
  build_id: Fixed<string>;
  id: Fixed<string>;
  who: Fixed<string>;
  kind: Fixed<string>;
  step: string;
  seen_at: ColumnType<Date, never, Date>;
}
