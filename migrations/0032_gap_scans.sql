-- Gaps of piston to valve read at one crank angle after another. One entry holds a whole scan, since its least gap is of
-- all its readings together. Append-only: a correction is a later row that names the one it takes the place of.
create table gap_scan (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  build_id uuid not null,
  seq bigint not null,
  cylinder integer not null check (cylinder between 1 and 16),
  valve text not null check (valve in ('intake', 'exhaust')),
  -- Each with its crank angle and its gap, as typed and as read.
  readings jsonb not null check (jsonb_typeof(readings) = 'array' and jsonb_array_length(readings) > 0),
  read_as text not null,
  tool text not null,
  spring text not null,
  lifter text not null,
  lash text not null check (lash in ('not-said', 'zero', 'set')),
  lash_setting_value double precision,
  lash_setting_unit text,
  lash_setting_typed text,
  lash_setting_read_as text,
  -- With the arms that the build is about, or with those that were on the engine before.
  arms text not null check (arms in ('these', 'before')),
  -- Which arm sat on the valve then, as far as that was on record.
  arm_id uuid,
  replaces uuid,
  struck boolean not null default false,
  reason text not null default '',
  by_kind text not null,
  by_id uuid not null,
  by_name text not null,
  created_at timestamptz not null default now(),
  primary key (shop_id, id),
  foreign key (shop_id, build_id) references build (shop_id, id),
  foreign key (shop_id, arm_id) references arm (shop_id, id),
  foreign key (shop_id, replaces) references gap_scan (shop_id, id),
  unique (shop_id, replaces),
  check ((lash_setting_value is null) = (lash_setting_unit is null)),
  check ((lash_setting_value is null) = (lash_setting_typed is null)),
  check ((lash_setting_value is null) = (lash_setting_read_as is null)),
  check (lash = 'set' or lash_setting_value is null),
  check (replaces is null or reason <> ''),
  check (not struck or replaces is not null)
);
create index gap_scan_build on gap_scan (shop_id, build_id, seq);
alter table gap_scan enable row level security;
alter table gap_scan force row level security;
create policy shop_only on gap_scan using (shop_id = app_shop()) with check (shop_id = app_shop());
grant select, insert on gap_scan to benchcall_service;
