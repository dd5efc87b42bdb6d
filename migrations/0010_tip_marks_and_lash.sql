-- Marks that the roller or shoe leaves on a stem's end, as they were measured. Append-only: a correction is a later
-- row that names the one it takes the place of.
create table tip_mark (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  build_id uuid not null,
  seq bigint not null,
  cylinder integer not null check (cylinder between 1 and 16),
  valve text not null check (valve in ('intake', 'exhaust')),
  side text not null check (side in ('centred', 'valley', 'exhaust', 'sideways')),
  width_value double precision not null,
  width_unit text not null,
  width_typed text not null,
  width_read_as text not null,
  -- How far the mark's middle is from the stem's; a centred mark has none.
  off_value double precision,
  off_unit text,
  off_typed text,
  off_read_as text,
  pushrod_value double precision,
  pushrod_unit text,
  pushrod_typed text,
  pushrod_read_as text,
  -- The same pushrod has two lengths: over its ends, and to a gauge.
  pushrod_over text not null check (pushrod_over in ('not-said', 'ends', 'gauge')),
  stem_value double precision,
  stem_unit text,
  stem_typed text,
  stem_read_as text,
  spring text not null,
  found text not null check (found in ('not-said', 'fresh-ink', 'after-running')),
  -- Which arm sat on the valve then, as far as that was on record.
  arm_id uuid,
  read_as text not null,
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
  foreign key (shop_id, replaces) references tip_mark (shop_id, id),
  unique (shop_id, replaces),
  check ((off_value is null) = (off_read_as is null)),
  check ((pushrod_value is null) = (pushrod_read_as is null)),
  check ((stem_value is null) = (stem_read_as is null)),
  check (replaces is null or reason <> ''),
  check (not struck or replaces is not null)
);
create index tip_mark_build on tip_mark (shop_id, build_id, seq);

-- What a lash of the sheet lacks to be a line of a log: hot or cold, found or left, whether the nut had moved, on
-- which day and by whom it was read or set. It goes with the first reading; a correction of that keeps it.
create table lash_log (
  shop_id uuid not null,
  reading_id uuid not null,
  build_id uuid not null,
  engine text not null check (engine in ('not-said', 'cold', 'hot')),
  moment text not null check (moment in ('found', 'set')),
  nut text not null check (nut in ('not-looked', 'held', 'moved')),
  read_on date,
  done_by text not null default '',
  primary key (shop_id, reading_id),
  foreign key (shop_id, reading_id) references valve_reading (shop_id, id),
  foreign key (shop_id, build_id) references build (shop_id, id)
);
create index lash_log_build on lash_log (shop_id, build_id);

do $$
declare
  t text;
begin
  foreach t in array array['tip_mark', 'lash_log'] loop
    execute format('alter table %I enable row level security', t);
    execute format('alter table %I force row level security', t);
    execute format('create policy shop_only on %I using (shop_id = app_shop()) with check (shop_id = app_shop())', t);
  end loop;
end $$;
grant select, insert on tip_mark, lash_log to benchcall_service;
