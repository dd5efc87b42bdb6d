-- What happened to the ways in: who signed in or failed to, whose password changed, which keys and links were made and
-- ended, and from where.
create table security_event (
  shop_id uuid not null references shop (id),
  id uuid not null default gen_random_uuid(),
  kind text not null check (kind in (
    'signed-in', 'sign-in-failed', 'first-link-used', 'password-changed', 'password-refused',
    'person-added', 'person-left', 'key-made', 'key-ended', 'link-made', 'link-ended')),
  -- Who did it; of a failed sign-in, whose account it was tried on.
  who text not null,
  -- What it was done to, where that is something else.
  about text not null default '',
  from_address text not null default '',
  happened_at timestamptz not null default now(),
  primary key (shop_id, id)
);
create index security_event_newest on security_event (shop_id, happened_at desc, id desc);

-- A browser in which somebody has signed in before: what strangers try on their account does not hold it up.
create table staff_device (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  staff_id uuid not null,
  token_hash text not null check (token_hash ~ '^[0-9a-f]{64}$'),
  created_at timestamptz not null default now(),
  expires_at timestamptz not null,
  primary key (shop_id, id),
  foreign key (shop_id, staff_id) references staff (shop_id, id)
);
create index staff_device_token on staff_device (token_hash);
create index staff_device_staff on staff_device (shop_id, staff_id);

do $$
declare
  t text;
begin
  foreach t in array array['security_event', 'staff_device'] loop
    execute format('alter table %I enable row level security', t);
    execute format('alter table %I force row level security', t);
    execute format('create policy shop_only on %I using (shop_id = app_shop()) with check (shop_id = app_shop())', t);
    execute format('create policy whole_read on %I for select to %I using (app_whole())', t, current_user);
  end loop;
end $$;
create policy by_secret on staff_device for select using (token_hash = app_lookup());
grant select, insert, delete on security_event to benchcall_service;
grant select, insert, update, delete on staff_device to benchcall_service;

-- What is past its time may be deleted in whichever shop, and nothing else without a shop: which rows these are is said
-- here alone, and a delete without a shop takes them and no others.
create policy past_its_time on security_event for delete using (happened_at < now() - interval '365 days');
create policy past_its_time on staff_device for delete using (expires_at < now());
create policy past_its_time on staff_session for delete
  using (least(expires_at, coalesce(ended_at, expires_at)) < now() - interval '30 days');
create policy past_its_time on builder_session for delete using (expires_at < now() - interval '30 days');
-- As long as a phone without a signal may keep what it has sent and got no answer to.
create policy past_its_time on idempotency for delete using (created_at < now() - interval '30 days');
grant delete on staff_session to benchcall_service;

-- Of the links that make the first administrator one is open at a time: a new one takes the place of the one before.
-- An owner that is no superuser is itself held by the forced policies.
alter table first_administrator_link no force row level security;
delete from first_administrator_link where used_at is null;
alter table first_administrator_link force row level security;
create unique index first_administrator_link_open on first_administrator_link ((used_at is null)) where used_at is null;
create policy open_ones on first_administrator_link for delete using (used_at is null);
grant delete on first_administrator_link to benchcall_service;
