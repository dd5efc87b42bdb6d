import { afterAll, beforeAll, expect, test } from 'vitest';
import { openCall } from '../tools/call.ts';
import { filledCall } from '../tools/filled-call.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

/** D rows of the service standards: the database itself keeps shops apart, whatever the service asks of it. */
let service: TestService;
let owner: Person;
let stranger: Person;

beforeAll(async () => {
  service = await testService();
  owner = await service.person();
  stranger = await service.person();
  await filledCall(service, owner, 'Heron of the north bank, 4711');
  await openCall(service, owner, 'Another build of the same shop');
});
afterAll(() => service.close());

const tables = async (): Promise<string[]> => {
  const { rows } = await service.database.asOwner(
    `select c.relname from pg_class c join pg_namespace n on n.oid = c.relnamespace
     where n.nspname = 'public' and c.relkind in ('r', 'p', 'v', 'm') order by 1`,
  );
  return rows.map((row) => String(row.relname));
};
/** Not a shop's data: the migrator's own, and counters of attempts. */
const SHARED = ['kysely_migration', 'kysely_migration_lock', 'rate_limit'];

test('a query as the service with no shop set sees no row of any table', async () => {
  const seen: string[] = [];
  for (const table of await tables()) {
    if (SHARED.includes(table)) continue;
    const owned = await service.database.asOwner(`select count(*)::int as n from ${table}`);
    const { rows } = await service.database.asService(`select * from ${table}`);
    if (rows.length > 0) seen.push(`${table}: ${rows.length} of ${String(owned.rows[0]?.n)}`);
  }
  expect(seen).toEqual([]);
  const builds = await service.database.asOwner('select count(*)::int as n from build');
  expect(builds.rows[0]?.n, 'there must be rows for this test to mean anything').toBeGreaterThan(1);
});

test('a session of the service that says it reads the whole sees nothing by it, and the owner reads every table', async () => {
  const { rows: policies } = await service.database.asOwner(
    `select tablename, roles::text from pg_policies where policyname = 'whole_read'`,
  );
  const own = (await tables()).filter((table) => !SHARED.includes(table));
  expect(
    policies.map(({ tablename }) => tablename).sort(),
    'a new table is not backed up without it',
  ).toEqual(own);
  expect([...new Set(policies.map(({ roles }) => roles))]).toEqual(['{benchcall_owner}']);
  for (const table of own) {
    const client = await service.database.db.pool.connect();
    try {
      await client.query("begin; set local app.whole = 'read'");
      expect((await client.query(`select 1 from ${table}`)).rowCount, table).toBe(0);
      await client.query('rollback');
    } finally {
      client.release();
    }
  }
});

test('every table has forced row-level security, and the service owns nothing and bypasses nothing', async () => {
  const { rows } = await service.database.asOwner(
    `select c.relname from pg_class c join pg_namespace n on n.oid = c.relnamespace
     where n.nspname = 'public' and c.relkind in ('r', 'p') and not (c.relrowsecurity and c.relforcerowsecurity)`,
  );
  expect(rows.map((row) => row.relname).filter((name) => !SHARED.includes(String(name)))).toEqual([]);
  const role = await service.database.asOwner(
    `select rolsuper, rolbypassrls, rolcreaterole, rolcreatedb,
      (select count(*)::int from pg_class where relowner = pg_roles.oid) as owns,
      (select count(*)::int from pg_proc where prosecdef and pronamespace = 'public'::regnamespace) as definer_functions,
      (select count(*)::int from pg_class where relkind in ('v', 'm') and relnamespace = 'public'::regnamespace) as views
     from pg_roles where rolname = 'benchcall_service'`,
  );
  expect(role.rows[0]).toEqual({
    rolsuper: false,
    rolbypassrls: false,
    rolcreaterole: false,
    rolcreatedb: false,
    owns: 0,
    definer_functions: 0,
    views: 0,
  });
});

test('after a transaction its shop is gone from the connection', async () => {
  const one = await service.database.db.shopTransaction(
    owner.shopId,
    async (tx) => (await tx.selectFrom('build').select('id').execute()).length,
  );
  expect(one).toBeGreaterThan(0);
  const { rows } = await service.database.db.pool.query('select count(*)::int as n from build');
  expect(rows[0]).toEqual({ n: 0 });
  const inOther = await service.database.db.shopTransaction(
    stranger.shopId,
    async (tx) => (await tx.selectFrom('build').select('id').execute()).length,
  );
  expect(inOther).toBe(0);
});

test('every unique index and foreign key between shops’ tables carries the shop', async () => {
  const { rows } = await service.database.asOwner(
    `select conrelid::regclass::text as tab, conname, pg_get_constraintdef(oid) as def from pg_constraint
     where connamespace = 'public'::regnamespace and contype in ('f', 'u', 'p')`,
  );
  const without = rows.filter((row) => {
    const text = String(row.def);
    return (
      !text.includes('shop_id') &&
      !SHARED.includes(String(row.tab)) &&
      !['shop', 'first_administrator_link'].includes(String(row.tab))
    );
  });
  expect(without).toEqual([]);
});

test('a row of another shop can’t be written, not even by naming that shop', async () => {
  await expect(
    service.database.db.shopTransaction(stranger.shopId, (tx) =>
      tx.insertInto('build').values({ shop_id: owner.shopId, label: 'x' }).execute(),
    ),
  ).rejects.toThrow(/row-level security/);
});

test('readings and events can’t be changed or deleted by the service', async () => {
  for (const statement of [
    'update reading set value = 0',
    'delete from reading',
    'update event set kind = $$x$$',
    'delete from event',
    'update build_revision set spec = $${}$$',
  ]) {
    await expect(service.database.asService(statement)).rejects.toThrow(/permission denied/);
  }
});

test('limits on statements, locks and idle transactions belong to the role', async () => {
  const { rows } = await service.database.asOwner(
    `select setconfig from pg_db_role_setting s join pg_roles r on r.oid = s.setrole where rolname = 'benchcall_service'`,
  );
  const config = rows.map((row) => String(row.setconfig)).join();
  for (const name of ['statement_timeout', 'lock_timeout', 'idle_in_transaction_session_timeout'])
    expect(config).toContain(name);
});
