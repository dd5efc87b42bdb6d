-- Several parts in the hand of one call. A row says the name of a part and which arm of the build it is; a later row
-- of the same part counts before an earlier one. The first part of a build needs no row: it has no id.
create table part_in_hand (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  build_id uuid not null,
  -- The first row of the part; null for the first part of the build.
  part_id uuid,
  name text not null,
  arm_id uuid,
  seq bigint not null,
  by_kind text not null,
  by_id uuid not null,
  by_name text not null,
  created_at timestamptz not null default now(),
  primary key (shop_id, id),
  foreign key (shop_id, build_id) references build (shop_id, id),
  foreign key (shop_id, part_id) references part_in_hand (shop_id, id),
  foreign key (shop_id, arm_id) references arm (shop_id, id)
);
create index part_in_hand_build on part_in_hand (shop_id, build_id, seq);

alter table part_in_hand enable row level security;
alter table part_in_hand force row level security;
create policy shop_only on part_in_hand using (shop_id = app_shop()) with check (shop_id = app_shop());
grant select, insert on part_in_hand to benchcall_service;

-- Of which part it was read, with what, how far off it may be, and over how many threads a length goes. What is there
-- already is of the first part, and nobody said the tool.
alter table part_reading
  add column part_id uuid,
  add column tool text not null default 'not-said',
  add column within_typed text,
  add column within_value double precision,
  add column within_unit text,
  add column within_read_as text,
  add column thread_count double precision,
  add foreign key (shop_id, part_id) references part_in_hand (shop_id, id),
  add check ((within_value is null) = (within_unit is null)),
  add check ((within_value is null) = (within_read_as is null)),
  add check ((within_value is null) = (within_typed is null));
