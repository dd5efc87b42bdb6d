-- What was learnt of a set-up later: how it was read, or on which valve. Append-only: the set-up keeps what was said
-- when it was started, and a later row counts before an earlier one.
create table set_up_statement (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  build_id uuid not null,
  set_up_id uuid not null,
  seq bigint not null,
  -- Only what is put right: the others stand as they were.
  said jsonb not null check (jsonb_typeof(said) = 'object'),
  reason text not null check (reason <> ''),
  by_kind text not null,
  by_id uuid not null,
  by_name text not null,
  created_at timestamptz not null default now(),
  primary key (shop_id, id),
  foreign key (shop_id, build_id) references build (shop_id, id),
  foreign key (shop_id, set_up_id) references set_up (shop_id, id)
);
create index set_up_statement_build on set_up_statement (shop_id, build_id, seq);

alter table set_up_statement enable row level security;
alter table set_up_statement force row level security;
create policy shop_only on set_up_statement using (shop_id = app_shop()) with check (shop_id = app_shop());
grant select, insert on set_up_statement to benchcall_service;

-- An amount that goes with an answer: how much lash was in it.
alter table answer
  add column value_typed text,
  add column value_value double precision,
  add column value_unit text,
  add column value_read_as text,
  add check ((value_value is null) = (value_unit is null)),
  add check ((value_value is null) = (value_read_as is null)),
  add check ((value_value is null) = (value_typed is null));
