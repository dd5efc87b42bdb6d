import type { ColumnType, Generated, JSONColumnType } from 'kysely';
import type { BuildSpec } from '../../shared/schemas/build-spec.ts';
import type { Method } from '../../shared/schemas/method.ts';

/** Column types, declared once; the migrations are their other half. */
type Created = ColumnType<Date, never, never>;
type Fixed<T> = ColumnType<T, T, never>;
type WithDefault<T> = ColumnType<T, T | undefined, T>;
type Moment = ColumnType<Date, Date, Date>;
type MaybeMoment = ColumnType<Date | null, Date | null | undefined, Date | null>;
/** bigint comes as text; sequence numbers stay far below 2^53, so the pool reads them as numbers. */
type Sequence = ColumnType<number, number, number>;

interface Author {
  by_kind: Fixed<string>;
  by_id: Fixed<string>;
  by_name: Fixed<string>;
  created_at: Created;
}

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
  password_hash: string;
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
export interface IdempotencyTable {
  shop_id: Fixed<string>;
  caller: Fixed<string>;
  method: Fixed<string>;
  path: Fixed<string>;
  key: Fixed<string>;
  request_hash: Fixed<string>;
  status: Fixed<number>;
  body: JSONColumnType<object, string, never>;
  location: Fixed<string | null>;
  etag: Fixed<string | null>;
  created_at: Created;
}
export interface FirstAdministratorLinkTable {
  token_hash: Fixed<string>;
  created_at: Created;
  expires_at: Moment;
  used_at: MaybeMoment;
}
export interface BuildTable {
  shop_id: Fixed<string>;
  id: Generated<string>;
  label: string;
  revision: WithDefault<number>;
  last_seq: ColumnType<number, number | undefined, number>;
  created_at: Created;
}
export interface BuildRevisionTable extends Author {
  shop_id: Fixed<string>;
  build_id: Fixed<string>;
  revision: Fixed<number>;
  spec: JSONColumnType<BuildSpec, string, never>;
  reason: Fixed<string>;
}
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
export interface ArmTable extends Author {
  shop_id: Fixed<string>;
  id: Generated<string>;
  build_id: Fixed<string>;
  name: Fixed<string>;
  family: Fixed<string>;
  ratio_stamp: Fixed<string>;
  other_number: Fixed<string>;
  box_label: Fixed<string>;
}
export interface ArmPlacementTable extends Author {
  shop_id: Fixed<string>;
  id: Generated<string>;
  build_id: Fixed<string>;
  arm_id: Fixed<string>;
  cylinder: Fixed<number>;
  valve: Fixed<string>;
  reason: Fixed<string>;
  seq: Sequence;
}
export interface SetUpTable extends Author {
  shop_id: Fixed<string>;
  id: Generated<string>;
  build_id: Fixed<string>;
  number: Fixed<number>;
  revision: Fixed<number>;
  cylinder: Fixed<number>;
  valve: Fixed<string>;
  arm_id: Fixed<string | null>;
  method: JSONColumnType<Method, string, never>;
}
export interface ReadingTable extends Author {
  shop_id: Fixed<string>;
  id: Generated<string>;
  build_id: Fixed<string>;
  set_up_id: Fixed<string>;
  seq: Sequence;
  kind: Fixed<string>;
  pass: Fixed<number>;
  typed: Fixed<string>;
  value: Fixed<number>;
  unit: Fixed<string>;
  read_as: Fixed<string>;
  zero_typed: Fixed<string | null>;
  zero_value: Fixed<number | null>;
  zero_unit: Fixed<string | null>;
  at_typed: Fixed<string | null>;
  at_value: Fixed<number | null>;
  at_unit: Fixed<string | null>;
  at_read_as: Fixed<string | null>;
  counted: ColumnType<boolean, boolean | undefined, never>;
  replaces: Fixed<string | null>;
  struck: ColumnType<boolean, boolean | undefined, never>;
  reason: ColumnType<string, string | undefined, never>;
}
export interface AnswerTable extends Author {
  shop_id: Fixed<string>;
  id: Generated<string>;
  build_id: Fixed<string>;
  set_up_id: Fixed<string | null>;
  question: Fixed<string>;
  answer: Fixed<string>;
  code: ColumnType<string, string | undefined, never>;
  found: Fixed<boolean | null>;
  seq: Sequence;
}
export interface NoteTable extends Author {
  shop_id: Fixed<string>;
  id: Generated<string>;
  build_id: Fixed<string>;
  call_id: Fixed<string>;
  kind: Fixed<string>;
  body: Fixed<string>;
  rests_on: Fixed<string>;
  owner: Fixed<string>;
  due: ColumnType<string | null, string | null | undefined, never>;
  done_at: MaybeMoment;
  seq: Sequence;
}
export interface EventTable extends Author {
  shop_id: Fixed<string>;
  build_id: Fixed<string>;
  seq: Sequence;
  kind: Fixed<string>;
  data: JSONColumnType<object, string, never>;
}

export interface PhotographTable extends Author {
  shop_id: Fixed<string>;
  id: Generated<string>;
  build_id: Fixed<string>;
  reading_id: Fixed<string | null>;
  arm_id: Fixed<string | null>;
  shows: Fixed<string>;
  caption: Fixed<string>;
  width: Fixed<number>;
  height: Fixed<number>;
  jpeg: Fixed<Buffer>;
  seq: Sequence;
}
export interface WorkingTable extends Author {
  shop_id: Fixed<string>;
  id: Generated<string>;
  build_id: Fixed<string>;
  computation: Fixed<string>;
  inputs: JSONColumnType<object, string, never>;
  answer: JSONColumnType<object, string, never>;
  revision: Fixed<number>;
  seq: Sequence;
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

export interface PartFamilyTable {
  shop_id: Fixed<string>;
  id: Generated<string>;
  code: Fixed<string>;
  name: string;
  fits: string;
  mount: string;
  tip: string;
  rings: string;
  nominal_ratio: number | null;
  hole_in: number | null;
  width_across_trunnion_in: number | null;
  roller_diameter_in: number | null;
  body_width_in: number | null;
  pivot_to_tip_in: number | null;
  pivot_to_cup_in: number | null;
  weight: number;
  notes: string;
  by_kind: string;
  by_id: string;
  by_name: string;
  created_at: Created;
  changed_at: ColumnType<Date, never, Date>;
}
export interface PartReadingTable extends Author {
  shop_id: Fixed<string>;
  id: Generated<string>;
  build_id: Fixed<string>;
  seq: Sequence;
  kind: Fixed<string>;
  typed: Fixed<string>;
  value: Fixed<number | null>;
  unit: Fixed<string | null>;
  word: Fixed<string | null>;
  read_as: Fixed<string>;
  place: Fixed<string>;
  replaces: Fixed<string | null>;
  struck: Fixed<boolean>;
  reason: Fixed<string>;
}

export interface ShopLimitTable extends Author {
  shop_id: Fixed<string>;
  id: Generated<string>;
  name: Fixed<string>;
  revision: Fixed<number>;
  value: Fixed<number>;
  unit: Fixed<string>;
  typed: Fixed<string>;
  read_as: Fixed<string>;
  source: Fixed<string>;
}
export interface ValveReadingTable extends Author {
  shop_id: Fixed<string>;
  id: Generated<string>;
  build_id: Fixed<string>;
  seq: Sequence;
  place: Fixed<number>;
  cylinder: Fixed<number>;
  valve: Fixed<string>;
  kind: Fixed<string>;
  value: Fixed<number | null>;
  low: Fixed<number | null>;
  high: Fixed<number | null>;
  unit: Fixed<string>;
  typed: Fixed<string>;
  read_as: Fixed<string>;
  tool: Fixed<string>;
  spring: Fixed<string>;
  lifter: Fixed<string>;
  arms: Fixed<string>;
  arm_id: Fixed<string | null>;
  replaces: Fixed<string | null>;
  struck: ColumnType<boolean, boolean | undefined, never>;
  reason: ColumnType<string, string | undefined, never>;
}

export interface Tables {
  shop: ShopTable;
  staff: StaffTable;
  staff_session: StaffSessionTable;
  api_key: ApiKeyTable;
  idempotency: IdempotencyTable;
  first_administrator_link: FirstAdministratorLinkTable;
  build: BuildTable;
  build_revision: BuildRevisionTable;
  call: CallTable;
  share_link: ShareLinkTable;
  builder_session: BuilderSessionTable;
  arm: ArmTable;
  arm_placement: ArmPlacementTable;
  set_up: SetUpTable;
  reading: ReadingTable;
  answer: AnswerTable;
  note: NoteTable;
  event: EventTable;
  part_family: PartFamilyTable;
  part_reading: PartReadingTable;
  presence: PresenceTable;
  working: WorkingTable;
  photograph: PhotographTable;
  shop_limit: ShopLimitTable;
  valve_reading: ValveReadingTable;
}
