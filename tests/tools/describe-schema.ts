import pg from 'pg';

const TABLES = `
select c.relname as name, c.relrowsecurity as secured, c.relforcerowsecurity as forced,
  (select string_agg(format('  %I %s%s%s', a.attname, format_type(a.atttypid, a.atttypmod),
      case when a.attnotnull then ' not null' else '' end,
      coalesce(' default ' || pg_get_expr(d.adbin, d.adrelid), '')), E',\\n' order by a.attnum)
    from pg_attribute a left join pg_attrdef d on d.adrelid = a.attrelid and d.adnum = a.attnum
    where a.attrelid = c.oid and a.attnum > 0 and not a.attisdropped) as columns
from pg_class c where c.relnamespace = 'public'::regnamespace and c.relkind = 'r' order by c.relname`;

const CONSTRAINTS = `
select conrelid::regclass::text as tab, conname as name, pg_get_constraintdef(oid) as def from pg_constraint
where connamespace = 'public'::regnamespace and contype in ('p', 'u', 'f', 'c') order by 1, contype, 2`;

const INDEXES = `
select i.tablename as tab, i.indexdef as def from pg_indexes i
where i.schemaname = 'public' and not exists (select 1 from pg_constraint c where c.conname = i.indexname) order by 1, 2`;

const POLICIES = `
select tablename as tab, policyname as name, cmd, qual, with_check from pg_policies where schemaname = 'public' order by 1, 2`;

const GRANTS = `
select table_name as tab, string_agg(privilege_type, ', ' order by privilege_type) as privileges
from information_schema.role_table_grants where grantee = 'benchcall_service' group by 1 order by 1`;

const FUNCTIONS = `
select pg_get_functiondef(p.oid) as def from pg_proc p where p.pronamespace = 'public'::regnamespace order by p.proname`;

interface Row {
  readonly [column: string]: string | boolean | null;
}

/**
 * The schema as text, from the catalog itself. The npm package of PostgreSQL brings no pg_dump, and a text of
 * our own order also stays the same between server versions.
 */
export async function describeSchema(url: string): Promise<string> {
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  const rows = async (text: string) => (await client.query<Row>(text)).rows;
  try {
    const lines = ['-- Written by `npm run schema` from a migrated database. Do not edit.', ''];
    for (const fn of await rows(FUNCTIONS)) lines.push(`${String(fn.def).trim()};`, '');
    for (const table of await rows(TABLES)) {
      lines.push(`create table ${table.name} (`, String(table.columns), ');');
      if (table.secured) lines.push(`alter table ${table.name} enable row level security;`);
      if (table.forced) lines.push(`alter table ${table.name} force row level security;`);
      lines.push('');
    }
    for (const each of await rows(CONSTRAINTS))
      lines.push(`alter table ${each.tab} add constraint ${each.name} ${each.def};`);
    lines.push('');
    for (const each of await rows(INDEXES)) lines.push(`${each.def};`);
    lines.push('');
    for (const each of await rows(POLICIES)) {
      lines.push(
        `create policy ${each.name} on ${each.tab} for ${each.cmd} using ${each.qual ?? '-'} with check ${each.with_check ?? '-'};`,
      );
    }
    lines.push('');
    for (const each of await rows(GRANTS))
      lines.push(`grant ${each.privileges} on ${each.tab} to benchcall_service;`);
    return `${lines.join('\n')}\n`;
  } finally {
    await client.end();
  }
}
