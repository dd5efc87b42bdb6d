-- Photographs of a part and its marks, made anew by us from what came: no location, no camera data, no names.
create table photograph (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  build_id uuid not null,
  reading_id uuid,
  arm_id uuid,
  shows text not null check (shows in ('ratio-stamp', 'other-number', 'box-label', 'part', 'tip-mark', 'dial', 'something-else')),
  caption text not null default '',
  width integer not null check (width between 1 and 4000),
  height integer not null check (height between 1 and 4000),
  jpeg bytea not null check (octet_length(jpeg) between 1 and 2000000),
  seq bigint not null,
  by_kind text not null,
  by_id uuid not null,
  by_name text not null,
  created_at timestamptz not null default now(),
  primary key (shop_id, id),
  foreign key (shop_id, build_id) references build (shop_id, id),
  foreign key (shop_id, reading_id) references reading (shop_id, id),
  foreign key (shop_id, arm_id) references arm (shop_id, id)
);
create index photograph_build on photograph (shop_id, build_id, seq);
alter table photograph enable row level security;
alter table photograph force row level security;
create policy shop_only on photograph using (shop_id = app_shop()) with check (shop_id = app_shop());
grant select, insert on photograph to benchcall_service;
