-- A shop's own limits. Append-only: the highest revision of a name stands, and a figure that was judged by an
-- earlier one can still say by which.
create table shop_limit (
  shop_id uuid not null references shop (id),
  id uuid not null default gen_random_uuid(),
  name text not null check (name ~ '^[a-z0-9-]{1,60}$'),
  revision integer not null check (revision > 0),
  value double precision not null,
  unit text not null,
  typed text not null,
  read_as text not null,
  source text not null check (length(source) between 1 and 500),
  by_kind text not null,
  by_id uuid not null,
  by_name text not null,
  created_at timestamptz not null default now(),
  primary key (shop_id, id),
  unique (shop_id, name, revision)
);

-- The sheet: what was read valve by valve. A reading between two gauges keeps its two bounds and no value of
-- its own; an end that no gauge has found stays null.
create table valve_reading (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  build_id uuid not null,
  seq bigint not null,
  -- Several readings come with one event; this is their order in it.
  place integer not null default 0,
  cylinder integer not null check (cylinder between 1 and 16),
  valve text not null check (valve in ('intake', 'exhaust')),
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
  -- With the arms of this sheet, or with those that were on the engine before.
  arms text not null check (arms in ('these', 'before')),
  -- Which arm sat on the valve when it was read, as far as that was on record.
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
  foreign key (shop_id, replaces) references valve_reading (shop_id, id),
  unique (shop_id, replaces),
  check ((value is not null) <> (low is not null or high is not null)),
  check (low is null or high is null or low < high),
  check (replaces is null or reason <> ''),
  check (not struck or replaces is not null)
);
create index valve_reading_build on valve_reading (shop_id, build_id, seq);

do $$
declare
  t text;
begin
  foreach t in array array['shop_limit', 'valve_reading'] loop
    execute format('alter table %I enable row level security', t);
    execute format('alter table %I force row level security', t);
    execute format('create policy shop_only on %I using (shop_id = app_shop()) with check (shop_id = app_shop())', t);
  end loop;
end $$;
grant select, insert on shop_limit, valve_reading to benchcall_service;
