-- A backup is of every shop, and the owner of the tables is held by their forced policies like everybody. It reads the
-- rows of all shops where a session says that it does, and only reads them; the service's own role never has this.
create function app_whole() returns boolean
  language sql stable parallel safe
  return coalesce(current_setting('app.whole', true), '') = 'read';

do $$
declare
  t text;
begin
  for t in
    select relname from pg_class
    where relnamespace = current_schema()::regnamespace and relkind = 'r' and relrowsecurity order by relname
  loop
    execute format('create policy whole_read on %I for select to %I using (app_whole())', t, current_user);
  end loop;
end $$;
