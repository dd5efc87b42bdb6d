-- Written by `npm run schema` from a migrated database. Do not edit.

CREATE OR REPLACE FUNCTION public.app_lookup()
 RETURNS text
 LANGUAGE sql
 STABLE PARALLEL SAFE
RETURN NULLIF(current_setting('app.lookup'::text, true), ''::text);

CREATE OR REPLACE FUNCTION public.app_shop()
 RETURNS uuid
 LANGUAGE sql
 STABLE PARALLEL SAFE
RETURN (NULLIF(current_setting('app.shop'::text, true), ''::text))::uuid;

CREATE OR REPLACE FUNCTION public.app_whole()
 RETURNS boolean
 LANGUAGE sql
 STABLE PARALLEL SAFE
RETURN (COALESCE(current_setting('app.whole'::text, true), ''::text) = 'read'::text);

CREATE OR REPLACE FUNCTION public.newest_migration()
 RETURNS text
 LANGUAGE sql
 STABLE
RETURN (SELECT max((kysely_migration.name)::text) AS max FROM kysely_migration);

create table answer (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  build_id uuid not null,
  set_up_id uuid,
  question text not null,
  answer text not null,
  seq bigint not null,
  by_kind text not null,
  by_id uuid not null,
  by_name text not null,
  created_at timestamp with time zone not null default now(),
  code text not null default ''::text,
  found boolean,
  question_id text,
  value_typed text,
  value_value double precision,
  value_unit text,
  value_read_as text,
  cylinder integer,
  valve text
);
alter table answer enable row level security;
alter table answer force row level security;

create table api_key (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  name text not null,
  prefix text not null,
  key_hash text not null,
  scopes text[] not null,
  created_by uuid not null,
  created_at timestamp with time zone not null default now(),
  expires_at timestamp with time zone not null,
  revoked_at timestamp with time zone
);
alter table api_key enable row level security;
alter table api_key force row level security;

create table arm (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  build_id uuid not null,
  name text not null,
  family text not null default ''::text,
  ratio_stamp text not null default ''::text,
  other_number text not null default ''::text,
  box_label text not null default ''::text,
  by_kind text not null,
  by_id uuid not null,
  by_name text not null,
  created_at timestamp with time zone not null default now()
);
alter table arm enable row level security;
alter table arm force row level security;

create table arm_marked (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  build_id uuid not null,
  arm_id uuid not null,
  ratio_stamp text not null default ''::text,
  other_number text not null default ''::text,
  box_label text not null default ''::text,
  reason text not null default ''::text,
  seq bigint not null,
  by_kind text not null,
  by_id uuid not null,
  by_name text not null,
  created_at timestamp with time zone not null default now()
);
alter table arm_marked enable row level security;
alter table arm_marked force row level security;

create table arm_placement (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  build_id uuid not null,
  arm_id uuid not null,
  cylinder integer not null,
  valve text not null,
  reason text not null default ''::text,
  seq bigint not null,
  by_kind text not null,
  by_id uuid not null,
  by_name text not null,
  created_at timestamp with time zone not null default now()
);
alter table arm_placement enable row level security;
alter table arm_placement force row level security;

create table build (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  label text not null,
  revision integer not null default 0,
  last_seq bigint not null default 0,
  created_at timestamp with time zone not null default now(),
  units text not null default 'inch'::text
);
alter table build enable row level security;
alter table build force row level security;

create table build_revision (
  shop_id uuid not null,
  build_id uuid not null,
  revision integer not null,
  spec jsonb not null,
  reason text not null default ''::text,
  by_kind text not null,
  by_id uuid not null,
  by_name text not null,
  created_at timestamp with time zone not null default now()
);
alter table build_revision enable row level security;
alter table build_revision force row level security;

create table builder_session (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  share_link_id uuid not null,
  token_hash text not null,
  created_at timestamp with time zone not null default now(),
  expires_at timestamp with time zone not null
);
alter table builder_session enable row level security;
alter table builder_session force row level security;

create table call (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  build_id uuid not null,
  number integer not null,
  caller_name text not null default ''::text,
  caller_role text not null default ''::text,
  call_back text not null default ''::text,
  goal text not null,
  engine_state text not null default 'not-asked'::text,
  contact text not null default 'not-asked'::text,
  held boolean not null default false,
  hold_reason text not null default ''::text,
  opened_by uuid not null,
  opened_at timestamp with time zone not null default now(),
  closed_at timestamp with time zone
);
alter table call enable row level security;
alter table call force row level security;

create table event (
  shop_id uuid not null,
  build_id uuid not null,
  seq bigint not null,
  kind text not null,
  data jsonb not null,
  by_kind text not null,
  by_id uuid not null,
  by_name text not null,
  created_at timestamp with time zone not null default now(),
  typed_at timestamp with time zone,
  before_stop boolean not null default false
);
alter table event enable row level security;
alter table event force row level security;

create table first_administrator_link (
  token_hash text not null,
  created_at timestamp with time zone not null default now(),
  expires_at timestamp with time zone not null,
  used_at timestamp with time zone
);
alter table first_administrator_link enable row level security;
alter table first_administrator_link force row level security;

create table gap_scan (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  build_id uuid not null,
  seq bigint not null,
  cylinder integer not null,
  valve text not null,
  readings jsonb not null,
  read_as text not null,
  tool text not null,
  spring text not null,
  lifter text not null,
  lash text not null,
  lash_setting_value double precision,
  lash_setting_unit text,
  lash_setting_typed text,
  lash_setting_read_as text,
  arms text not null,
  arm_id uuid,
  replaces uuid,
  struck boolean not null default false,
  reason text not null default ''::text,
  by_kind text not null,
  by_id uuid not null,
  by_name text not null,
  created_at timestamp with time zone not null default now()
);
alter table gap_scan enable row level security;
alter table gap_scan force row level security;

create table idempotency (
  shop_id uuid not null,
  caller text not null,
  method text not null,
  path text not null,
  key text not null,
  request_hash text not null,
  status integer not null,
  body jsonb not null,
  location text,
  etag text,
  created_at timestamp with time zone not null default now()
);
alter table idempotency enable row level security;
alter table idempotency force row level security;

create table kysely_migration (
  name character varying(255) not null,
  "timestamp" character varying(255) not null
);

create table kysely_migration_lock (
  id character varying(255) not null,
  is_locked integer not null default 0
);

create table lash_log (
  shop_id uuid not null,
  reading_id uuid not null,
  build_id uuid not null,
  engine text not null,
  moment text not null,
  nut text not null,
  read_on date,
  done_by text not null default ''::text,
  shim_typed text,
  shim_value double precision,
  shim_unit text,
  shim_read_as text
);
alter table lash_log enable row level security;
alter table lash_log force row level security;

create table note (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  build_id uuid not null,
  call_id uuid not null,
  kind text not null,
  body text not null,
  rests_on text not null default ''::text,
  owner text not null default ''::text,
  due date,
  done_at timestamp with time zone,
  seq bigint not null,
  by_kind text not null,
  by_id uuid not null,
  by_name text not null,
  created_at timestamp with time zone not null default now()
);
alter table note enable row level security;
alter table note force row level security;

create table part_family (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  code text not null,
  name text not null,
  fits text not null default ''::text,
  mount text not null default ''::text,
  tip text not null default ''::text,
  rings text not null default ''::text,
  nominal_ratio double precision,
  hole_in double precision,
  width_across_trunnion_in double precision,
  roller_diameter_in double precision,
  body_width_in double precision,
  pivot_to_tip_in double precision,
  pivot_to_cup_in double precision,
  weight double precision not null default 1,
  notes text not null default ''::text,
  by_kind text not null,
  by_id uuid not null,
  by_name text not null,
  created_at timestamp with time zone not null default now(),
  changed_at timestamp with time zone not null default now()
);
alter table part_family enable row level security;
alter table part_family force row level security;

create table part_in_hand (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  build_id uuid not null,
  part_id uuid,
  name text not null,
  arm_id uuid,
  seq bigint not null,
  by_kind text not null,
  by_id uuid not null,
  by_name text not null,
  created_at timestamp with time zone not null default now()
);
alter table part_in_hand enable row level security;
alter table part_in_hand force row level security;

create table part_reading (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  build_id uuid not null,
  seq bigint not null,
  kind text not null,
  typed text not null,
  value double precision,
  unit text,
  word text,
  read_as text not null,
  place text not null default ''::text,
  replaces uuid,
  struck boolean not null default false,
  reason text not null default ''::text,
  by_kind text not null,
  by_id uuid not null,
  by_name text not null,
  created_at timestamp with time zone not null default now(),
  part_id uuid,
  tool text not null default 'not-said'::text,
  within_typed text,
  within_value double precision,
  within_unit text,
  within_read_as text,
  thread_count double precision
);
alter table part_reading enable row level security;
alter table part_reading force row level security;

create table photograph (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  build_id uuid not null,
  reading_id uuid,
  arm_id uuid,
  shows text not null,
  caption text not null default ''::text,
  width integer not null,
  height integer not null,
  jpeg bytea not null,
  seq bigint not null,
  by_kind text not null,
  by_id uuid not null,
  by_name text not null,
  created_at timestamp with time zone not null default now()
);
alter table photograph enable row level security;
alter table photograph force row level security;

create table presence (
  shop_id uuid not null,
  build_id uuid not null,
  id uuid not null,
  who text not null,
  kind text not null,
  step text not null default ''::text,
  seen_at timestamp with time zone not null default now()
);
alter table presence enable row level security;
alter table presence force row level security;

create table rate_limit (
  key character varying(255) not null,
  points integer not null default 0,
  expire bigint
);

create table reading (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  build_id uuid not null,
  set_up_id uuid not null,
  seq bigint not null,
  kind text not null,
  pass integer not null,
  typed text not null,
  value double precision not null,
  unit text not null,
  read_as text not null,
  zero_typed text,
  zero_value double precision,
  zero_unit text,
  replaces uuid,
  struck boolean not null default false,
  reason text not null default ''::text,
  by_kind text not null,
  by_id uuid not null,
  by_name text not null,
  created_at timestamp with time zone not null default now(),
  at_typed text,
  at_value double precision,
  at_unit text,
  at_read_as text,
  counted boolean not null default false
);
alter table reading enable row level security;
alter table reading force row level security;

create table security_event (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  kind text not null,
  who text not null,
  about text not null default ''::text,
  from_address text not null default ''::text,
  happened_at timestamp with time zone not null default now()
);
alter table security_event enable row level security;
alter table security_event force row level security;

create table set_up (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  build_id uuid not null,
  number integer not null,
  revision integer not null,
  cylinder integer not null,
  valve text not null,
  arm_id uuid,
  method jsonb not null,
  by_kind text not null,
  by_id uuid not null,
  by_name text not null,
  created_at timestamp with time zone not null default now()
);
alter table set_up enable row level security;
alter table set_up force row level security;

create table set_up_statement (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  build_id uuid not null,
  set_up_id uuid not null,
  seq bigint not null,
  said jsonb not null,
  reason text not null,
  by_kind text not null,
  by_id uuid not null,
  by_name text not null,
  created_at timestamp with time zone not null default now()
);
alter table set_up_statement enable row level security;
alter table set_up_statement force row level security;

create table share_link (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  build_id uuid not null,
  call_id uuid not null,
  token_hash text not null,
  holder text not null default 'Builder'::text,
  created_by uuid not null,
  created_at timestamp with time zone not null default now(),
  expires_at timestamp with time zone not null,
  revoked_at timestamp with time zone
);
alter table share_link enable row level security;
alter table share_link force row level security;

create table shop (
  id uuid not null,
  name text not null,
  is_demo boolean not null default false,
  next_call_number integer not null default 1,
  created_at timestamp with time zone not null default now()
);
alter table shop enable row level security;
alter table shop force row level security;

create table shop_limit (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  name text not null,
  revision integer not null,
  value double precision not null,
  unit text not null,
  typed text not null,
  read_as text not null,
  source text not null,
  by_kind text not null,
  by_id uuid not null,
  by_name text not null,
  created_at timestamp with time zone not null default now()
);
alter table shop_limit enable row level security;
alter table shop_limit force row level security;

create table staff (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  name text not null,
  email text not null,
  email_key text not null,
  password_hash text not null,
  roles text[] not null,
  shortcuts boolean not null default true,
  disabled_at timestamp with time zone,
  created_at timestamp with time zone not null default now()
);
alter table staff enable row level security;
alter table staff force row level security;

create table staff_device (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  staff_id uuid not null,
  token_hash text not null,
  created_at timestamp with time zone not null default now(),
  expires_at timestamp with time zone not null
);
alter table staff_device enable row level security;
alter table staff_device force row level security;

create table staff_session (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  staff_id uuid not null,
  token_hash text not null,
  created_at timestamp with time zone not null default now(),
  seen_at timestamp with time zone not null default now(),
  expires_at timestamp with time zone not null,
  ended_at timestamp with time zone
);
alter table staff_session enable row level security;
alter table staff_session force row level security;

create table tip_mark (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  build_id uuid not null,
  seq bigint not null,
  cylinder integer not null,
  valve text not null,
  side text not null,
  width_value double precision not null,
  width_unit text not null,
  width_typed text not null,
  width_read_as text not null,
  off_value double precision,
  off_unit text,
  off_typed text,
  off_read_as text,
  pushrod_value double precision,
  pushrod_unit text,
  pushrod_typed text,
  pushrod_read_as text,
  pushrod_over text not null,
  stem_value double precision,
  stem_unit text,
  stem_typed text,
  stem_read_as text,
  spring text not null,
  found text not null,
  arm_id uuid,
  read_as text not null,
  replaces uuid,
  struck boolean not null default false,
  reason text not null default ''::text,
  by_kind text not null,
  by_id uuid not null,
  by_name text not null,
  created_at timestamp with time zone not null default now(),
  shims_typed text,
  shims_value double precision,
  shims_unit text,
  shims_read_as text
);
alter table tip_mark enable row level security;
alter table tip_mark force row level security;

create table valve_reading (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  build_id uuid not null,
  seq bigint not null,
  place integer not null default 0,
  cylinder integer not null,
  valve text not null,
  kind text not null,
  value double precision,
  low double precision,
  high double precision,
  unit text not null,
  typed text not null,
  read_as text not null,
  tool text not null,
  spring text not null,
  lifter text not null,
  arms text not null,
  arm_id uuid,
  replaces uuid,
  struck boolean not null default false,
  reason text not null default ''::text,
  by_kind text not null,
  by_id uuid not null,
  by_name text not null,
  created_at timestamp with time zone not null default now()
);
alter table valve_reading enable row level security;
alter table valve_reading force row level security;

create table working (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  build_id uuid not null,
  computation text not null,
  inputs jsonb not null,
  answer jsonb not null,
  revision integer not null,
  seq bigint not null,
  by_kind text not null,
  by_id uuid not null,
  by_name text not null,
  created_at timestamp with time zone not null default now(),
  replaces uuid,
  struck boolean not null default false,
  reason text not null default ''::text
);
alter table working enable row level security;
alter table working force row level security;

alter table answer add constraint answer_check CHECK (((value_value IS NULL) = (value_unit IS NULL)));
alter table answer add constraint answer_check1 CHECK (((value_value IS NULL) = (value_read_as IS NULL)));
alter table answer add constraint answer_check2 CHECK (((value_value IS NULL) = (value_typed IS NULL)));
alter table answer add constraint answer_check3 CHECK (((cylinder IS NULL) = (valve IS NULL)));
alter table answer add constraint answer_code_check CHECK ((code ~ '^[a-z0-9-]{0,60}$'::text));
alter table answer add constraint answer_cylinder_check CHECK (((cylinder >= 1) AND (cylinder <= 16)));
alter table answer add constraint answer_question_id_check CHECK (((char_length(question_id) >= 1) AND (char_length(question_id) <= 400)));
alter table answer add constraint answer_valve_check CHECK ((valve ~ '^(intake|exhaust)(-[2-3])?$'::text));
alter table answer add constraint answer_shop_id_build_id_fkey FOREIGN KEY (shop_id, build_id) REFERENCES build(shop_id, id);
alter table answer add constraint answer_shop_id_set_up_id_fkey FOREIGN KEY (shop_id, set_up_id) REFERENCES set_up(shop_id, id);
alter table answer add constraint answer_pkey PRIMARY KEY (shop_id, id);
alter table api_key add constraint api_key_key_hash_check CHECK ((key_hash ~ '^[0-9a-f]{64}$'::text));
alter table api_key add constraint api_key_name_check CHECK (((length(name) >= 1) AND (length(name) <= 200)));
alter table api_key add constraint api_key_scopes_check CHECK (((cardinality(scopes) > 0) AND (scopes <@ ARRAY['read'::text, 'write'::text])));
alter table api_key add constraint api_key_shop_id_created_by_fkey FOREIGN KEY (shop_id, created_by) REFERENCES staff(shop_id, id);
alter table api_key add constraint api_key_shop_id_fkey FOREIGN KEY (shop_id) REFERENCES shop(id);
alter table api_key add constraint api_key_pkey PRIMARY KEY (shop_id, id);
alter table arm add constraint arm_name_check CHECK (((length(name) >= 1) AND (length(name) <= 100)));
alter table arm add constraint arm_shop_id_build_id_fkey FOREIGN KEY (shop_id, build_id) REFERENCES build(shop_id, id);
alter table arm add constraint arm_pkey PRIMARY KEY (shop_id, id);
alter table arm add constraint arm_shop_id_build_id_name_key UNIQUE (shop_id, build_id, name);
alter table arm_marked add constraint arm_marked_shop_id_arm_id_fkey FOREIGN KEY (shop_id, arm_id) REFERENCES arm(shop_id, id);
alter table arm_marked add constraint arm_marked_shop_id_build_id_fkey FOREIGN KEY (shop_id, build_id) REFERENCES build(shop_id, id);
alter table arm_marked add constraint arm_marked_pkey PRIMARY KEY (shop_id, id);
alter table arm_placement add constraint arm_placement_cylinder_check CHECK (((cylinder >= 1) AND (cylinder <= 16)));
alter table arm_placement add constraint arm_placement_valve_check CHECK ((valve ~ '^(intake|exhaust)(-[2-3])?$'::text));
alter table arm_placement add constraint arm_placement_shop_id_arm_id_fkey FOREIGN KEY (shop_id, arm_id) REFERENCES arm(shop_id, id);
alter table arm_placement add constraint arm_placement_shop_id_build_id_fkey FOREIGN KEY (shop_id, build_id) REFERENCES build(shop_id, id);
alter table arm_placement add constraint arm_placement_pkey PRIMARY KEY (shop_id, id);
alter table build add constraint build_label_check CHECK (((length(label) >= 1) AND (length(label) <= 200)));
alter table build add constraint build_units_check CHECK ((units = ANY (ARRAY['inch'::text, 'metric'::text])));
alter table build add constraint build_shop_id_fkey FOREIGN KEY (shop_id) REFERENCES shop(id);
alter table build add constraint build_pkey PRIMARY KEY (shop_id, id);
alter table build_revision add constraint build_revision_revision_check CHECK ((revision > 0));
alter table build_revision add constraint build_revision_shop_id_build_id_fkey FOREIGN KEY (shop_id, build_id) REFERENCES build(shop_id, id);
alter table build_revision add constraint build_revision_pkey PRIMARY KEY (shop_id, build_id, revision);
alter table builder_session add constraint builder_session_token_hash_check CHECK ((token_hash ~ '^[0-9a-f]{64}$'::text));
alter table builder_session add constraint builder_session_shop_id_share_link_id_fkey FOREIGN KEY (shop_id, share_link_id) REFERENCES share_link(shop_id, id);
alter table builder_session add constraint builder_session_pkey PRIMARY KEY (shop_id, id);
alter table call add constraint call_contact_check CHECK ((contact = ANY (ARRAY['not-asked'::text, 'none'::text, 'something'::text])));
alter table call add constraint call_engine_state_check CHECK ((engine_state = ANY (ARRAY['not-asked'::text, 'runs'::text, 'has-run'::text, 'apart'::text, 'never-run'::text])));
alter table call add constraint call_shop_id_build_id_fkey FOREIGN KEY (shop_id, build_id) REFERENCES build(shop_id, id);
alter table call add constraint call_shop_id_opened_by_fkey FOREIGN KEY (shop_id, opened_by) REFERENCES staff(shop_id, id);
alter table call add constraint call_pkey PRIMARY KEY (shop_id, id);
alter table call add constraint call_shop_id_number_key UNIQUE (shop_id, number);
alter table event add constraint event_shop_id_build_id_fkey FOREIGN KEY (shop_id, build_id) REFERENCES build(shop_id, id);
alter table event add constraint event_pkey PRIMARY KEY (shop_id, build_id, seq);
alter table first_administrator_link add constraint first_administrator_link_token_hash_check CHECK ((token_hash ~ '^[0-9a-f]{64}$'::text));
alter table first_administrator_link add constraint first_administrator_link_pkey PRIMARY KEY (token_hash);
alter table gap_scan add constraint gap_scan_arms_check CHECK ((arms = ANY (ARRAY['these'::text, 'before'::text])));
alter table gap_scan add constraint gap_scan_check CHECK (((lash_setting_value IS NULL) = (lash_setting_unit IS NULL)));
alter table gap_scan add constraint gap_scan_check1 CHECK (((lash_setting_value IS NULL) = (lash_setting_typed IS NULL)));
alter table gap_scan add constraint gap_scan_check2 CHECK (((lash_setting_value IS NULL) = (lash_setting_read_as IS NULL)));
alter table gap_scan add constraint gap_scan_check3 CHECK (((lash = 'set'::text) OR (lash_setting_value IS NULL)));
alter table gap_scan add constraint gap_scan_check4 CHECK (((replaces IS NULL) OR (reason <> ''::text)));
alter table gap_scan add constraint gap_scan_check5 CHECK (((NOT struck) OR (replaces IS NOT NULL)));
alter table gap_scan add constraint gap_scan_cylinder_check CHECK (((cylinder >= 1) AND (cylinder <= 16)));
alter table gap_scan add constraint gap_scan_lash_check CHECK ((lash = ANY (ARRAY['not-said'::text, 'zero'::text, 'set'::text])));
alter table gap_scan add constraint gap_scan_readings_check CHECK (((jsonb_typeof(readings) = 'array'::text) AND (jsonb_array_length(readings) > 0)));
alter table gap_scan add constraint gap_scan_valve_check CHECK ((valve ~ '^(intake|exhaust)(-[2-3])?$'::text));
alter table gap_scan add constraint gap_scan_shop_id_arm_id_fkey FOREIGN KEY (shop_id, arm_id) REFERENCES arm(shop_id, id);
alter table gap_scan add constraint gap_scan_shop_id_build_id_fkey FOREIGN KEY (shop_id, build_id) REFERENCES build(shop_id, id);
alter table gap_scan add constraint gap_scan_shop_id_replaces_fkey FOREIGN KEY (shop_id, replaces) REFERENCES gap_scan(shop_id, id);
alter table gap_scan add constraint gap_scan_pkey PRIMARY KEY (shop_id, id);
alter table gap_scan add constraint gap_scan_shop_id_replaces_key UNIQUE (shop_id, replaces);
alter table idempotency add constraint idempotency_key_check CHECK (((length(key) >= 1) AND (length(key) <= 200)));
alter table idempotency add constraint idempotency_shop_id_fkey FOREIGN KEY (shop_id) REFERENCES shop(id);
alter table idempotency add constraint idempotency_pkey PRIMARY KEY (shop_id, caller, method, path, key);
alter table kysely_migration add constraint kysely_migration_pkey PRIMARY KEY (name);
alter table kysely_migration_lock add constraint kysely_migration_lock_pkey PRIMARY KEY (id);
alter table lash_log add constraint lash_log_check CHECK (((shim_value IS NULL) = (shim_unit IS NULL)));
alter table lash_log add constraint lash_log_check1 CHECK (((shim_value IS NULL) = (shim_read_as IS NULL)));
alter table lash_log add constraint lash_log_check2 CHECK (((shim_value IS NULL) = (shim_typed IS NULL)));
alter table lash_log add constraint lash_log_engine_check CHECK ((engine = ANY (ARRAY['not-said'::text, 'cold'::text, 'hot'::text])));
alter table lash_log add constraint lash_log_moment_check CHECK ((moment = ANY (ARRAY['found'::text, 'set'::text])));
alter table lash_log add constraint lash_log_nut_check CHECK ((nut = ANY (ARRAY['not-looked'::text, 'held'::text, 'moved'::text])));
alter table lash_log add constraint lash_log_shop_id_build_id_fkey FOREIGN KEY (shop_id, build_id) REFERENCES build(shop_id, id);
alter table lash_log add constraint lash_log_shop_id_reading_id_fkey FOREIGN KEY (shop_id, reading_id) REFERENCES valve_reading(shop_id, id);
alter table lash_log add constraint lash_log_pkey PRIMARY KEY (shop_id, reading_id);
alter table note add constraint note_body_check CHECK (((length(body) >= 1) AND (length(body) <= 4000)));
alter table note add constraint note_kind_check CHECK ((kind = ANY (ARRAY['note'::text, 'advice'::text, 'promise'::text])));
alter table note add constraint note_shop_id_build_id_fkey FOREIGN KEY (shop_id, build_id) REFERENCES build(shop_id, id);
alter table note add constraint note_shop_id_call_id_fkey FOREIGN KEY (shop_id, call_id) REFERENCES call(shop_id, id);
alter table note add constraint note_pkey PRIMARY KEY (shop_id, id);
alter table part_family add constraint part_family_body_width_in_check CHECK ((body_width_in > (0)::double precision));
alter table part_family add constraint part_family_code_check CHECK (((length(code) >= 1) AND (length(code) <= 60)));
alter table part_family add constraint part_family_hole_in_check CHECK ((hole_in > (0)::double precision));
alter table part_family add constraint part_family_mount_check CHECK ((mount = ANY (ARRAY[''::text, 'stud'::text, 'pedestal'::text, 'shaft'::text])));
alter table part_family add constraint part_family_name_check CHECK (((length(name) >= 1) AND (length(name) <= 120)));
alter table part_family add constraint part_family_nominal_ratio_check CHECK ((nominal_ratio > (0)::double precision));
alter table part_family add constraint part_family_pivot_to_cup_in_check CHECK ((pivot_to_cup_in > (0)::double precision));
alter table part_family add constraint part_family_pivot_to_tip_in_check CHECK ((pivot_to_tip_in > (0)::double precision));
alter table part_family add constraint part_family_rings_check CHECK ((rings = ANY (ARRAY[''::text, 'visible'::text, 'none'::text])));
alter table part_family add constraint part_family_roller_diameter_in_check CHECK ((roller_diameter_in > (0)::double precision));
alter table part_family add constraint part_family_tip_check CHECK ((tip = ANY (ARRAY[''::text, 'roller'::text, 'shoe'::text])));
alter table part_family add constraint part_family_weight_check CHECK ((weight > (0)::double precision));
alter table part_family add constraint part_family_width_across_trunnion_in_check CHECK ((width_across_trunnion_in > (0)::double precision));
alter table part_family add constraint part_family_shop_id_fkey FOREIGN KEY (shop_id) REFERENCES shop(id);
alter table part_family add constraint part_family_pkey PRIMARY KEY (shop_id, id);
alter table part_family add constraint part_family_shop_id_code_key UNIQUE (shop_id, code);
alter table part_in_hand add constraint part_in_hand_shop_id_arm_id_fkey FOREIGN KEY (shop_id, arm_id) REFERENCES arm(shop_id, id);
alter table part_in_hand add constraint part_in_hand_shop_id_build_id_fkey FOREIGN KEY (shop_id, build_id) REFERENCES build(shop_id, id);
alter table part_in_hand add constraint part_in_hand_shop_id_part_id_fkey FOREIGN KEY (shop_id, part_id) REFERENCES part_in_hand(shop_id, id);
alter table part_in_hand add constraint part_in_hand_pkey PRIMARY KEY (shop_id, id);
alter table part_reading add constraint part_reading_check CHECK (((replaces IS NULL) OR (reason <> ''::text)));
alter table part_reading add constraint part_reading_check1 CHECK (((NOT struck) OR (replaces IS NOT NULL)));
alter table part_reading add constraint part_reading_check2 CHECK (((value IS NULL) = (unit IS NULL)));
alter table part_reading add constraint part_reading_check3 CHECK (((within_value IS NULL) = (within_unit IS NULL)));
alter table part_reading add constraint part_reading_check4 CHECK (((within_value IS NULL) = (within_read_as IS NULL)));
alter table part_reading add constraint part_reading_check5 CHECK (((within_value IS NULL) = (within_typed IS NULL)));
alter table part_reading add constraint part_reading_shop_id_build_id_fkey FOREIGN KEY (shop_id, build_id) REFERENCES build(shop_id, id);
alter table part_reading add constraint part_reading_shop_id_part_id_fkey FOREIGN KEY (shop_id, part_id) REFERENCES part_in_hand(shop_id, id);
alter table part_reading add constraint part_reading_shop_id_replaces_fkey FOREIGN KEY (shop_id, replaces) REFERENCES part_reading(shop_id, id);
alter table part_reading add constraint part_reading_pkey PRIMARY KEY (shop_id, id);
alter table part_reading add constraint part_reading_shop_id_replaces_key UNIQUE (shop_id, replaces);
alter table photograph add constraint photograph_height_check CHECK (((height >= 1) AND (height <= 4000)));
alter table photograph add constraint photograph_jpeg_check CHECK (((octet_length(jpeg) >= 1) AND (octet_length(jpeg) <= 2000000)));
alter table photograph add constraint photograph_shows_check CHECK ((shows = ANY (ARRAY['ratio-stamp'::text, 'other-number'::text, 'box-label'::text, 'part'::text, 'tip-mark'::text, 'dial'::text, 'something-else'::text])));
alter table photograph add constraint photograph_width_check CHECK (((width >= 1) AND (width <= 4000)));
alter table photograph add constraint photograph_shop_id_arm_id_fkey FOREIGN KEY (shop_id, arm_id) REFERENCES arm(shop_id, id);
alter table photograph add constraint photograph_shop_id_build_id_fkey FOREIGN KEY (shop_id, build_id) REFERENCES build(shop_id, id);
alter table photograph add constraint photograph_shop_id_reading_id_fkey FOREIGN KEY (shop_id, reading_id) REFERENCES reading(shop_id, id);
alter table photograph add constraint photograph_pkey PRIMARY KEY (shop_id, id);
alter table presence add constraint presence_shop_id_build_id_fkey FOREIGN KEY (shop_id, build_id) REFERENCES build(shop_id, id);
alter table presence add constraint presence_pkey PRIMARY KEY (shop_id, build_id, id);
alter table rate_limit add constraint rate_limit_pkey PRIMARY KEY (key);
alter table reading add constraint reading_check CHECK (((replaces IS NULL) OR (reason <> ''::text)));
alter table reading add constraint reading_check1 CHECK (((NOT struck) OR (replaces IS NOT NULL)));
alter table reading add constraint reading_pass_check CHECK (((pass >= 1) AND (pass <= 99)));
alter table reading add constraint reading_station_check CHECK ((((kind = 'valve-lift-at'::text) = (at_value IS NOT NULL)) AND ((at_value IS NULL) = (at_unit IS NULL)) AND ((at_value IS NULL) = (at_typed IS NULL)) AND ((at_value IS NULL) = (at_read_as IS NULL))));
alter table reading add constraint reading_shop_id_build_id_fkey FOREIGN KEY (shop_id, build_id) REFERENCES build(shop_id, id);
alter table reading add constraint reading_shop_id_replaces_fkey FOREIGN KEY (shop_id, replaces) REFERENCES reading(shop_id, id);
alter table reading add constraint reading_shop_id_set_up_id_fkey FOREIGN KEY (shop_id, set_up_id) REFERENCES set_up(shop_id, id);
alter table reading add constraint reading_pkey PRIMARY KEY (shop_id, id);
alter table reading add constraint reading_shop_id_replaces_key UNIQUE (shop_id, replaces);
alter table security_event add constraint security_event_kind_check CHECK ((kind = ANY (ARRAY['signed-in'::text, 'sign-in-failed'::text, 'first-link-used'::text, 'password-changed'::text, 'password-refused'::text, 'person-added'::text, 'person-left'::text, 'key-made'::text, 'key-ended'::text, 'link-made'::text, 'link-ended'::text])));
alter table security_event add constraint security_event_shop_id_fkey FOREIGN KEY (shop_id) REFERENCES shop(id);
alter table security_event add constraint security_event_pkey PRIMARY KEY (shop_id, id);
alter table set_up add constraint set_up_cylinder_check CHECK (((cylinder >= 1) AND (cylinder <= 16)));
alter table set_up add constraint set_up_valve_check CHECK ((valve ~ '^(intake|exhaust)(-[2-3])?$'::text));
alter table set_up add constraint set_up_shop_id_arm_id_fkey FOREIGN KEY (shop_id, arm_id) REFERENCES arm(shop_id, id);
alter table set_up add constraint set_up_shop_id_build_id_revision_fkey FOREIGN KEY (shop_id, build_id, revision) REFERENCES build_revision(shop_id, build_id, revision);
alter table set_up add constraint set_up_pkey PRIMARY KEY (shop_id, id);
alter table set_up add constraint set_up_shop_id_build_id_number_key UNIQUE (shop_id, build_id, number);
alter table set_up_statement add constraint set_up_statement_reason_check CHECK ((reason <> ''::text));
alter table set_up_statement add constraint set_up_statement_said_check CHECK ((jsonb_typeof(said) = 'object'::text));
alter table set_up_statement add constraint set_up_statement_shop_id_build_id_fkey FOREIGN KEY (shop_id, build_id) REFERENCES build(shop_id, id);
alter table set_up_statement add constraint set_up_statement_shop_id_set_up_id_fkey FOREIGN KEY (shop_id, set_up_id) REFERENCES set_up(shop_id, id);
alter table set_up_statement add constraint set_up_statement_pkey PRIMARY KEY (shop_id, id);
alter table share_link add constraint share_link_holder_check CHECK (((length(holder) >= 1) AND (length(holder) <= 200)));
alter table share_link add constraint share_link_token_hash_check CHECK ((token_hash ~ '^[0-9a-f]{64}$'::text));
alter table share_link add constraint share_link_shop_id_build_id_fkey FOREIGN KEY (shop_id, build_id) REFERENCES build(shop_id, id);
alter table share_link add constraint share_link_shop_id_call_id_fkey FOREIGN KEY (shop_id, call_id) REFERENCES call(shop_id, id);
alter table share_link add constraint share_link_shop_id_created_by_fkey FOREIGN KEY (shop_id, created_by) REFERENCES staff(shop_id, id);
alter table share_link add constraint share_link_pkey PRIMARY KEY (shop_id, id);
alter table shop add constraint shop_name_check CHECK (((length(name) >= 1) AND (length(name) <= 200)));
alter table shop add constraint shop_pkey PRIMARY KEY (id);
alter table shop_limit add constraint shop_limit_name_check CHECK ((name ~ '^[a-z0-9-]{1,60}$'::text));
alter table shop_limit add constraint shop_limit_revision_check CHECK ((revision > 0));
alter table shop_limit add constraint shop_limit_source_check CHECK (((length(source) >= 1) AND (length(source) <= 500)));
alter table shop_limit add constraint shop_limit_shop_id_fkey FOREIGN KEY (shop_id) REFERENCES shop(id);
alter table shop_limit add constraint shop_limit_pkey PRIMARY KEY (shop_id, id);
alter table shop_limit add constraint shop_limit_shop_id_name_revision_key UNIQUE (shop_id, name, revision);
alter table staff add constraint staff_email_check CHECK (((length(email) >= 3) AND (length(email) <= 320)));
alter table staff add constraint staff_email_key_check CHECK ((email_key ~ '^[0-9a-f]{64}$'::text));
alter table staff add constraint staff_name_check CHECK (((length(name) >= 1) AND (length(name) <= 200)));
alter table staff add constraint staff_roles_check CHECK (((cardinality(roles) > 0) AND (roles <@ ARRAY['desk'::text, 'quality'::text, 'administrator'::text])));
alter table staff add constraint staff_shop_id_fkey FOREIGN KEY (shop_id) REFERENCES shop(id);
alter table staff add constraint staff_pkey PRIMARY KEY (shop_id, id);
alter table staff add constraint staff_shop_id_email_key_key UNIQUE (shop_id, email_key);
alter table staff_device add constraint staff_device_token_hash_check CHECK ((token_hash ~ '^[0-9a-f]{64}$'::text));
alter table staff_device add constraint staff_device_shop_id_staff_id_fkey FOREIGN KEY (shop_id, staff_id) REFERENCES staff(shop_id, id);
alter table staff_device add constraint staff_device_pkey PRIMARY KEY (shop_id, id);
alter table staff_session add constraint staff_session_token_hash_check CHECK ((token_hash ~ '^[0-9a-f]{64}$'::text));
alter table staff_session add constraint staff_session_shop_id_staff_id_fkey FOREIGN KEY (shop_id, staff_id) REFERENCES staff(shop_id, id);
alter table staff_session add constraint staff_session_pkey PRIMARY KEY (shop_id, id);
alter table tip_mark add constraint tip_mark_check CHECK (((off_value IS NULL) = (off_read_as IS NULL)));
alter table tip_mark add constraint tip_mark_check1 CHECK (((pushrod_value IS NULL) = (pushrod_read_as IS NULL)));
alter table tip_mark add constraint tip_mark_check2 CHECK (((stem_value IS NULL) = (stem_read_as IS NULL)));
alter table tip_mark add constraint tip_mark_check3 CHECK (((replaces IS NULL) OR (reason <> ''::text)));
alter table tip_mark add constraint tip_mark_check4 CHECK (((NOT struck) OR (replaces IS NOT NULL)));
alter table tip_mark add constraint tip_mark_check5 CHECK (((shims_value IS NULL) = (shims_unit IS NULL)));
alter table tip_mark add constraint tip_mark_check6 CHECK (((shims_value IS NULL) = (shims_read_as IS NULL)));
alter table tip_mark add constraint tip_mark_check7 CHECK (((shims_value IS NULL) = (shims_typed IS NULL)));
alter table tip_mark add constraint tip_mark_cylinder_check CHECK (((cylinder >= 1) AND (cylinder <= 16)));
alter table tip_mark add constraint tip_mark_found_check CHECK ((found = ANY (ARRAY['not-said'::text, 'fresh-ink'::text, 'after-running'::text])));
alter table tip_mark add constraint tip_mark_pushrod_over_check CHECK ((pushrod_over = ANY (ARRAY['not-said'::text, 'ends'::text, 'gauge'::text])));
alter table tip_mark add constraint tip_mark_side_check CHECK ((side = ANY (ARRAY['centred'::text, 'valley'::text, 'exhaust'::text, 'sideways'::text])));
alter table tip_mark add constraint tip_mark_valve_check CHECK ((valve ~ '^(intake|exhaust)(-[2-3])?$'::text));
alter table tip_mark add constraint tip_mark_shop_id_arm_id_fkey FOREIGN KEY (shop_id, arm_id) REFERENCES arm(shop_id, id);
alter table tip_mark add constraint tip_mark_shop_id_build_id_fkey FOREIGN KEY (shop_id, build_id) REFERENCES build(shop_id, id);
alter table tip_mark add constraint tip_mark_shop_id_replaces_fkey FOREIGN KEY (shop_id, replaces) REFERENCES tip_mark(shop_id, id);
alter table tip_mark add constraint tip_mark_pkey PRIMARY KEY (shop_id, id);
alter table tip_mark add constraint tip_mark_shop_id_replaces_key UNIQUE (shop_id, replaces);
alter table valve_reading add constraint valve_reading_arms_check CHECK ((arms = ANY (ARRAY['these'::text, 'before'::text])));
alter table valve_reading add constraint valve_reading_check CHECK (((value IS NOT NULL) <> ((low IS NOT NULL) OR (high IS NOT NULL))));
alter table valve_reading add constraint valve_reading_check1 CHECK (((low IS NULL) OR (high IS NULL) OR (low < high)));
alter table valve_reading add constraint valve_reading_check2 CHECK (((replaces IS NULL) OR (reason <> ''::text)));
alter table valve_reading add constraint valve_reading_check3 CHECK (((NOT struck) OR (replaces IS NOT NULL)));
alter table valve_reading add constraint valve_reading_cylinder_check CHECK (((cylinder >= 1) AND (cylinder <= 16)));
alter table valve_reading add constraint valve_reading_valve_check CHECK ((valve ~ '^(intake|exhaust)(-[2-3])?$'::text));
alter table valve_reading add constraint valve_reading_shop_id_arm_id_fkey FOREIGN KEY (shop_id, arm_id) REFERENCES arm(shop_id, id);
alter table valve_reading add constraint valve_reading_shop_id_build_id_fkey FOREIGN KEY (shop_id, build_id) REFERENCES build(shop_id, id);
alter table valve_reading add constraint valve_reading_shop_id_replaces_fkey FOREIGN KEY (shop_id, replaces) REFERENCES valve_reading(shop_id, id);
alter table valve_reading add constraint valve_reading_pkey PRIMARY KEY (shop_id, id);
alter table valve_reading add constraint valve_reading_shop_id_replaces_key UNIQUE (shop_id, replaces);
alter table working add constraint working_check CHECK (((replaces IS NULL) OR (reason <> ''::text)));
alter table working add constraint working_check1 CHECK (((NOT struck) OR (replaces IS NOT NULL)));
alter table working add constraint working_computation_check CHECK ((computation ~ '^[a-z0-9-]{1,60}$'::text));
alter table working add constraint working_shop_id_build_id_fkey FOREIGN KEY (shop_id, build_id) REFERENCES build(shop_id, id);
alter table working add constraint working_shop_id_replaces_fkey FOREIGN KEY (shop_id, replaces) REFERENCES working(shop_id, id);
alter table working add constraint working_pkey PRIMARY KEY (shop_id, id);
alter table working add constraint working_shop_id_replaces_key UNIQUE (shop_id, replaces);

CREATE INDEX answer_build ON public.answer USING btree (shop_id, build_id, seq);
CREATE INDEX api_key_hash ON public.api_key USING btree (key_hash);
CREATE INDEX arm_marked_arm ON public.arm_marked USING btree (shop_id, arm_id, seq);
CREATE INDEX arm_placement_build ON public.arm_placement USING btree (shop_id, build_id, seq);
CREATE INDEX builder_session_link ON public.builder_session USING btree (shop_id, share_link_id);
CREATE INDEX builder_session_token ON public.builder_session USING btree (token_hash);
CREATE INDEX call_build ON public.call USING btree (shop_id, build_id);
CREATE UNIQUE INDEX first_administrator_link_open ON public.first_administrator_link USING btree (((used_at IS NULL))) WHERE (used_at IS NULL);
CREATE INDEX gap_scan_build ON public.gap_scan USING btree (shop_id, build_id, seq);
CREATE INDEX idempotency_age ON public.idempotency USING btree (shop_id, created_at);
CREATE INDEX lash_log_build ON public.lash_log USING btree (shop_id, build_id);
CREATE INDEX note_build ON public.note USING btree (shop_id, build_id, seq);
CREATE INDEX part_family_ratio ON public.part_family USING btree (shop_id, nominal_ratio);
CREATE INDEX part_in_hand_build ON public.part_in_hand USING btree (shop_id, build_id, seq);
CREATE INDEX part_reading_build ON public.part_reading USING btree (shop_id, build_id, seq);
CREATE INDEX photograph_build ON public.photograph USING btree (shop_id, build_id, seq);
CREATE INDEX reading_build ON public.reading USING btree (shop_id, build_id, seq);
CREATE INDEX reading_set_up ON public.reading USING btree (shop_id, set_up_id, seq);
CREATE INDEX security_event_newest ON public.security_event USING btree (shop_id, happened_at DESC, id DESC);
CREATE INDEX set_up_statement_build ON public.set_up_statement USING btree (shop_id, build_id, seq);
CREATE INDEX share_link_build ON public.share_link USING btree (shop_id, build_id);
CREATE INDEX share_link_token ON public.share_link USING btree (token_hash);
CREATE INDEX staff_email_key ON public.staff USING btree (email_key);
CREATE INDEX staff_device_staff ON public.staff_device USING btree (shop_id, staff_id);
CREATE INDEX staff_device_token ON public.staff_device USING btree (token_hash);
CREATE INDEX staff_session_staff ON public.staff_session USING btree (shop_id, staff_id);
CREATE INDEX staff_session_token ON public.staff_session USING btree (token_hash);
CREATE INDEX tip_mark_build ON public.tip_mark USING btree (shop_id, build_id, seq);
CREATE INDEX valve_reading_build ON public.valve_reading USING btree (shop_id, build_id, seq);
CREATE INDEX working_build ON public.working USING btree (shop_id, build_id, seq);

create policy shop_only on answer for ALL using (shop_id = app_shop()) with check (shop_id = app_shop());
create policy whole_read on answer for SELECT using app_whole() with check -;
create policy by_secret on api_key for SELECT using (key_hash = app_lookup()) with check -;
create policy shop_only on api_key for ALL using (shop_id = app_shop()) with check (shop_id = app_shop());
create policy whole_read on api_key for SELECT using app_whole() with check -;
create policy shop_only on arm for ALL using (shop_id = app_shop()) with check (shop_id = app_shop());
create policy whole_read on arm for SELECT using app_whole() with check -;
create policy shop_only on arm_marked for ALL using (shop_id = app_shop()) with check (shop_id = app_shop());
create policy whole_read on arm_marked for SELECT using app_whole() with check -;
create policy shop_only on arm_placement for ALL using (shop_id = app_shop()) with check (shop_id = app_shop());
create policy whole_read on arm_placement for SELECT using app_whole() with check -;
create policy shop_only on build for ALL using (shop_id = app_shop()) with check (shop_id = app_shop());
create policy whole_read on build for SELECT using app_whole() with check -;
create policy shop_only on build_revision for ALL using (shop_id = app_shop()) with check (shop_id = app_shop());
create policy whole_read on build_revision for SELECT using app_whole() with check -;
create policy by_secret on builder_session for SELECT using (token_hash = app_lookup()) with check -;
create policy past_its_time on builder_session for DELETE using (expires_at < (now() - '30 days'::interval)) with check -;
create policy shop_only on builder_session for ALL using (shop_id = app_shop()) with check (shop_id = app_shop());
create policy whole_read on builder_session for SELECT using app_whole() with check -;
create policy shop_only on call for ALL using (shop_id = app_shop()) with check (shop_id = app_shop());
create policy whole_read on call for SELECT using app_whole() with check -;
create policy shop_only on event for ALL using (shop_id = app_shop()) with check (shop_id = app_shop());
create policy whole_read on event for SELECT using app_whole() with check -;
create policy by_secret on first_administrator_link for ALL using (token_hash = app_lookup()) with check (token_hash = app_lookup());
create policy open_ones on first_administrator_link for DELETE using (used_at IS NULL) with check -;
create policy whole_read on first_administrator_link for SELECT using app_whole() with check -;
create policy shop_only on gap_scan for ALL using (shop_id = app_shop()) with check (shop_id = app_shop());
create policy whole_read on gap_scan for SELECT using app_whole() with check -;
create policy past_its_time on idempotency for DELETE using (created_at < (now() - '30 days'::interval)) with check -;
create policy shop_only on idempotency for ALL using (shop_id = app_shop()) with check (shop_id = app_shop());
create policy whole_read on idempotency for SELECT using app_whole() with check -;
create policy shop_only on lash_log for ALL using (shop_id = app_shop()) with check (shop_id = app_shop());
create policy whole_read on lash_log for SELECT using app_whole() with check -;
create policy shop_only on note for ALL using (shop_id = app_shop()) with check (shop_id = app_shop());
create policy whole_read on note for SELECT using app_whole() with check -;
create policy shop_only on part_family for ALL using (shop_id = app_shop()) with check (shop_id = app_shop());
create policy whole_read on part_family for SELECT using app_whole() with check -;
create policy shop_only on part_in_hand for ALL using (shop_id = app_shop()) with check (shop_id = app_shop());
create policy whole_read on part_in_hand for SELECT using app_whole() with check -;
create policy shop_only on part_reading for ALL using (shop_id = app_shop()) with check (shop_id = app_shop());
create policy whole_read on part_reading for SELECT using app_whole() with check -;
create policy shop_only on photograph for ALL using (shop_id = app_shop()) with check (shop_id = app_shop());
create policy whole_read on photograph for SELECT using app_whole() with check -;
create policy shop_only on presence for ALL using (shop_id = app_shop()) with check (shop_id = app_shop());
create policy whole_read on presence for SELECT using app_whole() with check -;
create policy shop_only on reading for ALL using (shop_id = app_shop()) with check (shop_id = app_shop());
create policy whole_read on reading for SELECT using app_whole() with check -;
create policy past_its_time on security_event for DELETE using (happened_at < (now() - '365 days'::interval)) with check -;
create policy shop_only on security_event for ALL using (shop_id = app_shop()) with check (shop_id = app_shop());
create policy whole_read on security_event for SELECT using app_whole() with check -;
create policy shop_only on set_up for ALL using (shop_id = app_shop()) with check (shop_id = app_shop());
create policy whole_read on set_up for SELECT using app_whole() with check -;
create policy shop_only on set_up_statement for ALL using (shop_id = app_shop()) with check (shop_id = app_shop());
create policy whole_read on set_up_statement for SELECT using app_whole() with check -;
create policy by_secret on share_link for SELECT using (token_hash = app_lookup()) with check -;
create policy shop_only on share_link for ALL using (shop_id = app_shop()) with check (shop_id = app_shop());
create policy whole_read on share_link for SELECT using app_whole() with check -;
create policy shop_only on shop for ALL using (id = app_shop()) with check (id = app_shop());
create policy whole_read on shop for SELECT using app_whole() with check -;
create policy shop_only on shop_limit for ALL using (shop_id = app_shop()) with check (shop_id = app_shop());
create policy whole_read on shop_limit for SELECT using app_whole() with check -;
create policy by_secret on staff for SELECT using (email_key = app_lookup()) with check -;
create policy shop_only on staff for ALL using (shop_id = app_shop()) with check (shop_id = app_shop());
create policy whole_read on staff for SELECT using app_whole() with check -;
create policy by_secret on staff_device for SELECT using (token_hash = app_lookup()) with check -;
create policy past_its_time on staff_device for DELETE using (expires_at < now()) with check -;
create policy shop_only on staff_device for ALL using (shop_id = app_shop()) with check (shop_id = app_shop());
create policy whole_read on staff_device for SELECT using app_whole() with check -;
create policy by_secret on staff_session for SELECT using (token_hash = app_lookup()) with check -;
create policy past_its_time on staff_session for DELETE using (LEAST(expires_at, COALESCE(ended_at, expires_at)) < (now() - '30 days'::interval)) with check -;
create policy shop_only on staff_session for ALL using (shop_id = app_shop()) with check (shop_id = app_shop());
create policy whole_read on staff_session for SELECT using app_whole() with check -;
create policy shop_only on tip_mark for ALL using (shop_id = app_shop()) with check (shop_id = app_shop());
create policy whole_read on tip_mark for SELECT using app_whole() with check -;
create policy shop_only on valve_reading for ALL using (shop_id = app_shop()) with check (shop_id = app_shop());
create policy whole_read on valve_reading for SELECT using app_whole() with check -;
create policy shop_only on working for ALL using (shop_id = app_shop()) with check (shop_id = app_shop());
create policy whole_read on working for SELECT using app_whole() with check -;

grant INSERT, SELECT on answer to benchcall_service;
grant INSERT, SELECT, UPDATE on api_key to benchcall_service;
grant INSERT, SELECT on arm to benchcall_service;
grant INSERT, SELECT on arm_marked to benchcall_service;
grant INSERT, SELECT on arm_placement to benchcall_service;
grant INSERT, SELECT, UPDATE on build to benchcall_service;
grant INSERT, SELECT on build_revision to benchcall_service;
grant DELETE, INSERT, SELECT on builder_session to benchcall_service;
grant INSERT, SELECT, UPDATE on call to benchcall_service;
grant INSERT, SELECT on event to benchcall_service;
grant DELETE, INSERT, SELECT, UPDATE on first_administrator_link to benchcall_service;
grant INSERT, SELECT on gap_scan to benchcall_service;
grant DELETE, INSERT, SELECT on idempotency to benchcall_service;
grant SELECT on kysely_migration to benchcall_service;
grant INSERT, SELECT on lash_log to benchcall_service;
grant INSERT, SELECT, UPDATE on note to benchcall_service;
grant INSERT, SELECT, UPDATE on part_family to benchcall_service;
grant INSERT, SELECT on part_in_hand to benchcall_service;
grant INSERT, SELECT on part_reading to benchcall_service;
grant INSERT, SELECT on photograph to benchcall_service;
grant DELETE, INSERT, SELECT, UPDATE on presence to benchcall_service;
grant DELETE, INSERT, SELECT, UPDATE on rate_limit to benchcall_service;
grant INSERT, SELECT on reading to benchcall_service;
grant DELETE, INSERT, SELECT on security_event to benchcall_service;
grant INSERT, SELECT on set_up to benchcall_service;
grant INSERT, SELECT on set_up_statement to benchcall_service;
grant INSERT, SELECT, UPDATE on share_link to benchcall_service;
grant INSERT, SELECT, UPDATE on shop to benchcall_service;
grant INSERT, SELECT on shop_limit to benchcall_service;
grant INSERT, SELECT, UPDATE on staff to benchcall_service;
grant DELETE, INSERT, SELECT, UPDATE on staff_device to benchcall_service;
grant DELETE, INSERT, SELECT, UPDATE on staff_session to benchcall_service;
grant INSERT, SELECT on tip_mark to benchcall_service;
grant INSERT, SELECT on valve_reading to benchcall_service;
grant INSERT, SELECT on working to benchcall_service;
