import type pg from 'pg';

/** A table that is backed up: the columns that are written, and the key that its rows are put in order by. */
export interface BackedUpTable {
  readonly name: string;
  readonly columns: readonly string[];
  readonly key: readonly string[];
}

/** Not of any shop, or gone within the minute: the migrator's own, counters of attempts, and who is here just now. */
const LEFT_OUT = [
  'kysely_migration',
  'kysely_migration_lock',
  'rate_limit',
  'presence',
  'first_administrator_link',
];

const TABLES = `
select c.relname as name,
  (select array_agg(a.attname::text order by a.attnum) from pg_attribute a
    where a.attrelid = c.oid and a.attnum > 0 and not a.attisdropped and a.attgenerated = '') as columns,
  (select array_agg(a.attname::text order by k.at) from pg_constraint p
    cross join unnest(p.conkey) with ordinality as k (num, at)
    join pg_attribute a on a.attrelid = c.oid and a.attnum = k.num
    where p.conrelid = c.oid and p.contype = 'p') as key,
  (select coalesce(array_agg(distinct r.relname::text), '{}') from pg_constraint f
    join pg_class r on r.oid = f.confrelid
    where f.conrelid = c.oid and f.contype = 'f' and f.confrelid <> c.oid) as needs
from pg_class c
where c.relnamespace = current_schema()::regnamespace and c.relkind = 'r' and not c.relname = any($1)
order by c.relname`;

interface Row extends BackedUpTable {
  /** Tables that its rows point into. */
  readonly needs: readonly string[];
}

/** Each behind those that it points into, so that they can be filled one after the other. */
function inOrder(rows: readonly Row[]): Row[] {
  const done: Row[] = [];
  let left = rows;
  while (left.length > 0) {
    const names = new Set(left.map(({ name }) => name));
    const free = left.filter(({ needs }) => !needs.some((each) => names.has(each)));
    if (free.length === 0)
      throw new Error(`tables point at one another in a circle: ${[...names].join(', ')}`);
    done.push(...free);
    left = left.filter((each) => !free.includes(each));
  }
  return done;
}

/** The tables of the service as the catalog has them, in the order in which they are filled. */
export async function backedUpTables(client: pg.Client): Promise<BackedUpTable[]> {
  const { rows } = await client.query<Row>(TABLES, [LEFT_OUT]);
  return inOrder(rows).map(({ name, columns, key }) => ({ name, columns, key }));
}

/** The settings by which the same rows are the same text on every server. */
export const SAME_TEXT =
  "set local timezone = 'UTC'; set local datestyle = 'ISO, YMD'; set local intervalstyle = 'postgres'; " +
  "set local extra_float_digits = 1; set local bytea_output = 'hex'; set local client_encoding = 'UTF8'";

const named = (client: pg.Client, names: readonly string[]): string =>
  names.map((name) => client.escapeIdentifier(name)).join(', ');

/** All rows of a table in the order of its key, as text. */
export const copyOut = (client: pg.Client, { name, columns, key }: BackedUpTable): string =>
  `copy (select ${named(client, columns)} from ${client.escapeIdentifier(name)} order by ${named(client, key)}) to stdout`;

/** The same text as rows again. */
export const copyIn = (client: pg.Client, { name, columns }: BackedUpTable): string =>
  `copy ${client.escapeIdentifier(name)} (${named(client, columns)}) from stdin`;
