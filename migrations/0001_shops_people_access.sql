-- Shops, people and the ways in. Every table but the two at the end belongs to a shop and is kept apart by
-- row-level security: with no shop set, a query sees no rows.

create function app_shop() returns uuid
  language sql stable parallel safe
  -- After a SET LOCAL has ended the setting is '' and not null: a bare cast would throw.
  return nullif(current_setting('app.shop', true), '')::uuid;

-- The hash of a secret that a caller has shown. It opens the one row that holds the same hash, in whichever
-- shop, and nothing else; this is how a sign-in or a link finds its shop.
create function app_lookup() returns text
  language sql stable parallel safe
  return nullif(current_setting('app.lookup', true), '');

create table shop (
  id uuid primary key,
  name text not null check (length(name) between 1 and 200),
  is_demo boolean not null default false,
  next_call_number integer not null default 1,
  created_at timestamptz not null default now()
);

create table staff (
  shop_id uuid not null references shop (id),
  id uuid not null default gen_random_uuid(),
  name text not null check (length(name) between 1 and 200),
  email text not null check (length(email) between 3 and 320),
  email_key text not null check (email_key ~ '^[0-9a-f]{64}$'),
  password_hash text not null,
  roles text[] not null check (cardinality(roles) > 0 and roles <@ array['desk', 'quality', 'administrator']),
  shortcuts boolean not null default true,
  disabled_at timestamptz,
  created_at timestamptz not null default now(),
  primary key (shop_id, id),
  unique (shop_id, email_key)
);
create index staff_email_key on staff (email_key);

create table staff_session (
  shop_id uuid not null,
  id uuid not null default gen_random_uuid(),
  staff_id uuid not null,
  token_hash text not null check (token_hash ~ '^[0-9a-f]{64}$'),
  created_at timestamptz not null default now(),
  seen_at timestamptz not null default now(),
  expires_at timestamptz not null,
  ended_at timestamptz,
  primary key (shop_id, id),
  foreign key (shop_id, staff_id) references staff (shop_id, id)
);
create index staff_session_token on staff_session (token_hash);
create index staff_session_staff on staff_session (shop_id, staff_id);

create table api_key (
  shop_id uuid not null references shop (id),
  id uuid not null default gen_random_uuid(),
  name text not null check (length(name) between 1 and 200),
  prefix text not null,
  key_hash text not null check (key_hash ~ '^[0-9a-f]{64}$'),
  scopes text[] not null check (cardinality(scopes) > 0 and scopes <@ array['read', 'write']),
  created_by uuid not null,
  created_at timestamptz not null default now(),
  expires_at timestamptz not null,
  revoked_at timestamptz,
  primary key (shop_id, id),
  foreign key (shop_id, created_by) references staff (shop_id, id)
);
create index api_key_hash on api_key (key_hash);

create table idempotency (
  shop_id uuid not null references shop (id),
  caller text not null,
  method text not null,
  path text not null,
  key text not null check (length(key) between 1 and 200),
  request_hash text not null,
  status integer not null,
  body jsonb not null,
  location text,
  etag text,
  created_at timestamptz not null default now(),
  primary key (shop_id, caller, method, path, key)
);
create index idempotency_age on idempotency (shop_id, created_at);

-- The one-time link that makes the first administrator. There is no shop yet that it could belong to.
create table first_administrator_link (
  token_hash text primary key check (token_hash ~ '^[0-9a-f]{64}$'),
  created_at timestamptz not null default now(),
  expires_at timestamptz not null,
  used_at timestamptz
);

-- Counters of attempts by address or account, shared by all processes; the layout is the limiter library's.
create table rate_limit (
  key varchar(255) primary key,
  points integer not null default 0,
  expire bigint
);

do $$
declare
  t text;
begin
  foreach t in array array['staff', 'staff_session', 'api_key', 'idempotency'] loop
    execute format('alter table %I enable row level security', t);
    execute format('alter table %I force row level security', t);
    execute format('create policy shop_only on %I using (shop_id = app_shop()) with check (shop_id = app_shop())', t);
  end loop;
end $$;

alter table shop enable row level security;
alter table shop force row level security;
create policy shop_only on shop using (id = app_shop()) with check (id = app_shop());
alter table first_administrator_link enable row level security;
alter table first_administrator_link force row level security;
create policy by_secret on first_administrator_link using (token_hash = app_lookup()) with check (token_hash = app_lookup());
create policy by_secret on staff for select using (email_key = app_lookup());
create policy by_secret on staff_session for select using (token_hash = app_lookup());
create policy by_secret on api_key for select using (key_hash = app_lookup());

grant select, insert, update on shop, staff, staff_session, api_key to benchcall_service;
grant select, insert, delete on idempotency to benchcall_service;
grant select, insert, update on first_administrator_link to benchcall_service;
grant select, insert, update, delete on rate_limit to benchcall_service;
