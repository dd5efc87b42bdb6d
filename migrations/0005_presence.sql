-- Who has a build open now, and at which step. One row per open stream, renewed while it lives; a row that
-- was not renewed belongs to a stream that is gone.
create table presence (
  shop_id uuid not null,
  build_id uuid not null,
  id uuid not null,
  who text not null,
  kind text not null,
  step text not null default '',
  seen_at timestamptz not null default now(),
  primary key (shop_id, build_id, id),
  foreign key (shop_id, build_id) references build (shop_id, id)
);
alter table presence enable row level security;
alter table presence force row level security;
create policy shop_only on presence using (shop_id = app_shop()) with check (shop_id = app_shop());
grant select, insert, update, delete on presence to benchcall_service;
