-- The service may ask which migration is the newest, and read nothing else of the migrator's own tables.
grant select on kysely_migration to benchcall_service;
create function newest_migration() returns text
  language sql stable
  return (select max(name) from kysely_migration);
grant execute on function newest_migration() to benchcall_service;
