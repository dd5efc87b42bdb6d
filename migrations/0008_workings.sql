-- A computation made within a call: what went in, what came out, who asked for it. Append-only.
create table working (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  build_id uuid not null,
  computation text not null check (computation ~ '^[a-z0-9-]{1,60}$'),
  inputs jsonb not null,
  answer jsonb not null,
  revision integer not null,
  seq bigint not null,
  by_kind text not null,
  by_id uuid not null,
  by_name text not null,
  created_at timestamptz not null default now(),
  primary key (shop_id, id),
  foreign key (shop_id, build_id) references build (shop_id, id)
);
create index working_build on working (shop_id, build_id, seq);
alter table working enable row level security;
alter table working force row level security;
create policy shop_only on working using (shop_id = app_shop()) with check (shop_id = app_shop());
grant select, insert on working to benchcall_service;
