-- The call, the build it is about, and what is measured on it. Who did something is kept as it was then
-- (by_kind, by_id, by_name): a person who is renamed or leaves does not change the record.

create table build (
  shop_id uuid not null references shop (id),
  id uuid not null default gen_random_uuid(),
  label text not null check (length(label) between 1 and 200),
  revision integer not null default 0,
  -- Counts the build's events; locked by each command, so that the numbers come in commit order.
  last_seq bigint not null default 0,
  created_at timestamptz not null default now(),
  primary key (shop_id, id)
);

create table build_revision (
  shop_id uuid not null,
  build_id uuid not null,
  revision integer not null check (revision > 0),
  spec jsonb not null,
  reason text not null default '',
  by_kind text not null,
  by_id uuid not null,
  by_name text not null,
  created_at timestamptz not null default now(),
  primary key (shop_id, build_id, revision),
  foreign key (shop_id, build_id) references build (shop_id, id)
);

create table call (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  build_id uuid not null,
  number integer not null,
  caller_name text not null default '',
  caller_role text not null default '',
  call_back text not null default '',
  goal text not null,
  engine_state text not null default 'not-asked' check (engine_state in ('not-asked', 'runs', 'has-run', 'apart', 'never-run')),
  contact text not null default 'not-asked' check (contact in ('not-asked', 'none', 'something')),
  held boolean not null default false,
  hold_reason text not null default '',
  opened_by uuid not null,
  opened_at timestamptz not null default now(),
  closed_at timestamptz,
  primary key (shop_id, id),
  unique (shop_id, number),
  foreign key (shop_id, build_id) references build (shop_id, id),
  foreign key (shop_id, opened_by) references staff (shop_id, id)
);
create index call_build on call (shop_id, build_id);

create table share_link (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  build_id uuid not null,
  call_id uuid not null,
  token_hash text not null check (token_hash ~ '^[0-9a-f]{64}$'),
  holder text not null default 'Builder' check (length(holder) between 1 and 200),
  created_by uuid not null,
  created_at timestamptz not null default now(),
  expires_at timestamptz not null,
  revoked_at timestamptz,
  primary key (shop_id, id),
  foreign key (shop_id, build_id) references build (shop_id, id),
  foreign key (shop_id, call_id) references call (shop_id, id),
  foreign key (shop_id, created_by) references staff (shop_id, id)
);
create index share_link_token on share_link (token_hash);
create index share_link_build on share_link (shop_id, build_id);

create table builder_session (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  share_link_id uuid not null,
  token_hash text not null check (token_hash ~ '^[0-9a-f]{64}$'),
  created_at timestamptz not null default now(),
  expires_at timestamptz not null,
  primary key (shop_id, id),
  foreign key (shop_id, share_link_id) references share_link (shop_id, id)
);
create index builder_session_token on builder_session (token_hash);
create index builder_session_link on builder_session (shop_id, share_link_id);

create table arm (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  build_id uuid not null,
  name text not null check (length(name) between 1 and 100),
  family text not null default '',
  -- Three different things, each kept word for word; nothing is ever copied from one to another.
  ratio_stamp text not null default '',
  other_number text not null default '',
  box_label text not null default '',
  by_kind text not null,
  by_id uuid not null,
  by_name text not null,
  created_at timestamptz not null default now(),
  primary key (shop_id, id),
  unique (shop_id, build_id, name),
  foreign key (shop_id, build_id) references build (shop_id, id)
);

create table arm_placement (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  build_id uuid not null,
  arm_id uuid not null,
  cylinder integer not null check (cylinder between 1 and 16),
  valve text not null check (valve in ('intake', 'exhaust')),
  reason text not null default '',
  seq bigint not null,
  by_kind text not null,
  by_id uuid not null,
  by_name text not null,
  created_at timestamptz not null default now(),
  primary key (shop_id, id),
  foreign key (shop_id, build_id) references build (shop_id, id),
  foreign key (shop_id, arm_id) references arm (shop_id, id)
);
create index arm_placement_build on arm_placement (shop_id, build_id, seq);

create table set_up (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  build_id uuid not null,
  number integer not null,
  revision integer not null,
  cylinder integer not null check (cylinder between 1 and 16),
  valve text not null check (valve in ('intake', 'exhaust')),
  arm_id uuid,
  method jsonb not null,
  by_kind text not null,
  by_id uuid not null,
  by_name text not null,
  created_at timestamptz not null default now(),
  primary key (shop_id, id),
  unique (shop_id, build_id, number),
  foreign key (shop_id, build_id, revision) references build_revision (shop_id, build_id, revision),
  foreign key (shop_id, arm_id) references arm (shop_id, id)
);

create table reading (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  build_id uuid not null,
  set_up_id uuid not null,
  seq bigint not null,
  kind text not null,
  pass integer not null check (pass between 1 and 99),
  -- As typed, as read, and the echo that was shown for it.
  typed text not null,
  value double precision not null,
  unit text not null,
  read_as text not null,
  zero_typed text,
  zero_value double precision,
  zero_unit text,
  replaces uuid,
  struck boolean not null default false,
  reason text not null default '',
  by_kind text not null,
  by_id uuid not null,
  by_name text not null,
  created_at timestamptz not null default now(),
  primary key (shop_id, id),
  foreign key (shop_id, build_id) references build (shop_id, id),
  foreign key (shop_id, set_up_id) references set_up (shop_id, id),
  foreign key (shop_id, replaces) references reading (shop_id, id),
  -- A reading is replaced once; of two corrections at the same moment the second is refused.
  unique (shop_id, replaces),
  check (replaces is null or reason <> ''),
  check (not struck or replaces is not null)
);
create index reading_set_up on reading (shop_id, set_up_id, seq);
create index reading_build on reading (shop_id, build_id, seq);

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
  created_at timestamptz not null default now(),
  primary key (shop_id, id),
  foreign key (shop_id, build_id) references build (shop_id, id),
  foreign key (shop_id, set_up_id) references set_up (shop_id, id)
);
create index answer_build on answer (shop_id, build_id, seq);

create table note (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  build_id uuid not null,
  call_id uuid not null,
  kind text not null check (kind in ('note', 'advice', 'promise')),
  body text not null check (length(body) between 1 and 4000),
  rests_on text not null default '',
  owner text not null default '',
  due date,
  done_at timestamptz,
  seq bigint not null,
  by_kind text not null,
  by_id uuid not null,
  by_name text not null,
  created_at timestamptz not null default now(),
  primary key (shop_id, id),
  foreign key (shop_id, build_id) references build (shop_id, id),
  foreign key (shop_id, call_id) references call (shop_id, id)
);
create index note_build on note (shop_id, build_id, seq);

create table event (
  shop_id uuid not null,
  build_id uuid not null,
  seq bigint not null,
  kind text not null,
  data jsonb not null,
  by_kind text not null,
  by_id uuid not null,
  by_name text not null,
  created_at timestamptz not null default now(),
  primary key (shop_id, build_id, seq),
  foreign key (shop_id, build_id) references build (shop_id, id)
);

do $$
declare
  t text;
begin
  foreach t in array array[
    'build', 'build_revision', 'call', 'share_link', 'builder_session', 'arm', 'arm_placement', 'set_up',
    'reading', 'answer', 'note', 'event'
  ] loop
    execute format('alter table %I enable row level security', t);
    execute format('alter table %I force row level security', t);
    execute format('create policy shop_only on %I using (shop_id = app_shop()) with check (shop_id = app_shop())', t);
  end loop;
end $$;
create policy by_secret on share_link for select using (token_hash = app_lookup());
create policy by_secret on builder_session for select using (token_hash = app_lookup());

-- Append-only tables get no update and no delete: the database refuses what the service must not do.
grant select, insert on build_revision, arm, arm_placement, set_up, reading, answer, event to benchcall_service;
grant select, insert, update on build, call, share_link, note to benchcall_service;
grant select, insert, delete on builder_session to benchcall_service;
