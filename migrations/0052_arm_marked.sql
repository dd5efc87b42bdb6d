-- Marks of an arm as they were read again, or more of them: the newest stand for the arm, and what it was put on record
-- with stays.
create table arm_marked (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  build_id uuid not null,
  arm_id uuid not null,
  ratio_stamp text not null default '',
  other_number text not null default '',
  box_label text not null default '',
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
create index arm_marked_arm on arm_marked (shop_id, arm_id, seq);

alter table arm_marked enable row level security;
alter table arm_marked force row level security;
create policy shop_only on arm_marked using (shop_id = app_shop()) with check (shop_id = app_shop());
do $$
begin
  execute format('create policy whole_read on arm_marked for select to %I using (app_whole())', current_user);
end $$;
grant select, insert on arm_marked to benchcall_service;
