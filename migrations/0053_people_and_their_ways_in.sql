-- Somebody new chooses their own password by a link; until then they have none and can't sign in.
alter table staff alter column password_hash drop not null;

-- A link by which one person sets their password, once: an invitation, or in place of one that was forgotten.
create table password_link (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  staff_id uuid not null,
  token_hash text not null check (token_hash ~ '^[0-9a-f]{64}$'),
  created_at timestamptz not null default now(),
  expires_at timestamptz not null,
  used_at timestamptz,
  primary key (shop_id, id),
  foreign key (shop_id, staff_id) references staff (shop_id, id)
);
create index password_link_token on password_link (token_hash);
-- Of the links of one person one is open at a time: a new one takes the place of the one before.
create unique index password_link_open on password_link (shop_id, staff_id) where used_at is null;

alter table password_link enable row level security;
alter table password_link force row level security;
create policy shop_only on password_link using (shop_id = app_shop()) with check (shop_id = app_shop());
do $$
begin
  execute format('create policy whole_read on password_link for select to %I using (app_whole())', current_user);
end $$;
create policy by_secret on password_link for select using (token_hash = app_lookup());
create policy past_its_time on password_link for delete using (expires_at < now() - interval '30 days');
grant select, insert, update, delete on password_link to benchcall_service;

alter table security_event drop constraint security_event_kind_check;
alter table security_event add constraint security_event_kind_check check (kind in (
  'signed-in', 'sign-in-failed', 'first-link-used', 'password-changed', 'password-refused', 'password-link-made',
  'password-set', 'person-added', 'person-left', 'person-back', 'role-changed', 'session-ended',
  'key-made', 'key-ended', 'link-made', 'link-ended'));

-- A shop keeps one administrator at least, whoever takes whom off at the same moment: the second of two waits for the
-- first and then sees what is left.
create function staff_keeps_an_administrator() returns trigger language plpgsql as $$
begin
  if 'administrator' = any (old.roles) and old.disabled_at is null
    and (new.disabled_at is not null or not 'administrator' = any (new.roles)) then
    perform pg_advisory_xact_lock(hashtextextended('administrators of ' || old.shop_id, 0));
    if not exists (
      select from staff
      where shop_id = old.shop_id and disabled_at is null and 'administrator' = any (roles)) then
      raise exception 'a shop keeps one administrator at least' using errcode = 'BC001';
    end if;
  end if;
  return null;
end $$;
create trigger staff_keeps_an_administrator after update on staff
  for each row execute function staff_keeps_an_administrator();
