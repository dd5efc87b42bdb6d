-- The shop's own catalogue of rocker families, and what was read of a part in the hand. Lengths of a family are
-- the sizes it is made for, in inches; a size left out is not known.
create table part_family (
  shop_id uuid not null references shop (id),
  id uuid not null default gen_random_uuid(),
  code text not null check (length(code) between 1 and 60),
  name text not null check (length(name) between 1 and 120),
  fits text not null default '',
  mount text not null default '' check (mount in ('', 'stud', 'pedestal', 'shaft')),
  tip text not null default '' check (tip in ('', 'roller', 'shoe')),
  rings text not null default '' check (rings in ('', 'visible', 'none')),
  nominal_ratio double precision check (nominal_ratio > 0),
  hole_in double precision check (hole_in > 0),
  width_across_trunnion_in double precision check (width_across_trunnion_in > 0),
  roller_diameter_in double precision check (roller_diameter_in > 0),
  body_width_in double precision check (body_width_in > 0),
  pivot_to_tip_in double precision check (pivot_to_tip_in > 0),
  pivot_to_cup_in double precision check (pivot_to_cup_in > 0),
  -- How often the family comes in, against the others; the ranking starts from it.
  weight double precision not null default 1 check (weight > 0),
  notes text not null default '',
  by_kind text not null,
  by_id uuid not null,
  by_name text not null,
  created_at timestamptz not null default now(),
  changed_at timestamptz not null default now(),
  primary key (shop_id, id),
  unique (shop_id, code)
);

-- One thing read, seen or found written on the part. A size has value and unit, what is only seen has a word,
-- a mark has nothing but what was typed: the three marks are never copied from one to another.
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
  -- Where on the part, and how it was read: "turned 90 degrees", "on the underside, cast".
  place text not null default '',
  replaces uuid,
  struck boolean not null default false,
  reason text not null default '',
  by_kind text not null,
  by_id uuid not null,
  by_name text not null,
  created_at timestamptz not null default now(),
  primary key (shop_id, id),
  foreign key (shop_id, build_id) references build (shop_id, id),
  foreign key (shop_id, replaces) references part_reading (shop_id, id),
  unique (shop_id, replaces),
  check (replaces is null or reason <> ''),
  check (not struck or replaces is not null),
  check ((value is null) = (unit is null))
);
create index part_reading_build on part_reading (shop_id, build_id, seq);

do $$
declare
  t text;
begin
  foreach t in array array['part_family', 'part_reading'] loop
    execute format('alter table %I enable row level security', t);
    execute format('alter table %I force row level security', t);
    execute format('create policy shop_only on %I using (shop_id = app_shop()) with check (shop_id = app_shop())', t);
  end loop;
end $$;

grant select, insert, update on part_family to benchcall_service;
grant select, insert on part_reading to benchcall_service;
