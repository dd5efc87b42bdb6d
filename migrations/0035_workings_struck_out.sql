-- A computation that was kept can be struck out, with the reason: a later row that names it, as of every other entry.
alter table working
  add column replaces uuid,
  add column struck boolean not null default false,
  add column reason text not null default '',
  add foreign key (shop_id, replaces) references working (shop_id, id),
  add unique (shop_id, replaces),
  add check (replaces is null or reason <> ''),
  add check (not struck or replaces is not null);
