import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { keepReading, openCall, sendJson, startSetUp } from '../tools/call.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

/**
 * B and D rows of the service standards, generated from the routes themselves: whoever has no right to a build
 * gets nothing of it. A new route is in this test as soon as it is declared.
 */
const SECRET_WORDS = 'Heron of the north bank, 4711';
/** Routes that anybody may use; every other one must refuse strangers. */
const OPEN = [
  /^\/$/,
  /^\/sign-in$/,
  /^\/sign-out$/,
  /^\/robots\.txt$/,
  /^\/assets\//,
  /^\/health\//,
  /^\/reference/,
  /^\/problems/,
  /^\/api\/v1\/compute/,
  /^\/api\/v1\/openapi\.json$/,
  /^\/api\/v1\/sessions$/,
  /^\/b\/:secret$/,
  /^\/first-administrator\/:secret$/,
];

let service: TestService;
let owner: Person;
let stranger: Person;
let ids: Record<string, string>;
let otherLink: string;
let revokedLink: string;
let otherBench: string;
let revokedBench: string;

async function makeLink(callId: string): Promise<{ id: string; secret: string; bench: string }> {
  const made = await sendJson(service, owner.bearer, 'POST', `/api/v1/calls/${callId}/share-links`, {
    holder: 'B',
    days: 1,
  });
  const secret = String(made.json.secret);
  const link: unknown = made.json.link;
  const opened = await service.app.inject({ method: 'POST', url: `/b/${secret}` });
  const bench = opened.cookies.find((cookie) => cookie.name === 'benchcall-bench')?.value ?? '';
  expect(bench, 'the link must open for this test to mean anything').not.toBe('');
  const id: unknown = typeof link === 'object' && link !== null ? Reflect.get(link, 'id') : undefined;
  return { id: String(id), secret, bench };
}

beforeAll(async () => {
  service = await testService();
  owner = await service.person();
  stranger = await service.person();
  const mine = await openCall(service, owner, SECRET_WORDS);
  const other = await openCall(service, owner, 'Another build of the same shop');
  const setUpId = await startSetUp(service, owner, mine.buildId);
  const readingId = await keepReading(service, owner, mine.buildId, setUpId, 'valve-lift', '.842 in');
  const mineLink = await makeLink(mine.callId);
  const note = await sendJson(service, owner.bearer, 'POST', `/api/v1/calls/${mine.callId}/notes`, {
    kind: 'promise',
    body: SECRET_WORDS,
  });
  const key = await sendJson(service, owner.bearer, 'POST', '/api/v1/keys', {
    name: SECRET_WORDS,
    scopes: ['read'],
  });
  const keyView: unknown = key.json.key;
  ids = {
    callId: mine.callId,
    buildId: mine.buildId,
    setUpId,
    readingId,
    linkId: mineLink.id,
    noteId: String(note.json.id),
    keyId: String(typeof keyView === 'object' && keyView !== null ? Reflect.get(keyView, 'id') : ''),
    staffId: owner.staffId,
    armId: crypto.randomUUID(),
    step: 'ratio',
    secret: 'bcl_none',
  };
  const otherMade = await makeLink(other.callId);
  otherLink = otherMade.secret;
  otherBench = otherMade.bench;
  const doomed = await makeLink(mine.callId);
  revokedLink = doomed.secret;
  revokedBench = doomed.bench;
  const revoked = await sendJson(
    service,
    owner.bearer,
    'DELETE',
    `/api/v1/calls/${mine.callId}/share-links/${doomed.id}`,
  );
  expect(revoked.status).toBe(200);
});
afterAll(() => service.close());

function addressOf(pattern: string): string {
  return pattern.replace(/:([A-Za-z]+)/g, (_, name: string) => {
    if (name !== 'id') return ids[name] ?? crypto.randomUUID();
    if (pattern.includes('/calls/')) return ids.callId ?? '';
    if (pattern.includes('/builds/')) return ids.buildId ?? '';
    return ids.keyId ?? '';
  });
}

interface Stranger {
  readonly name: string;
  headers(): Record<string, string>;
  cookies(): Record<string, string>;
}

const STRANGERS: readonly Stranger[] = [
  { name: 'nobody', headers: () => ({}), cookies: () => ({}) },
  { name: 'another shop’s staff', headers: () => stranger.bearer, cookies: () => stranger.cookies },
  {
    name: 'another build’s link',
    headers: () => ({ authorization: `Bearer ${otherLink}` }),
    cookies: () => ({ 'benchcall-bench': otherBench }),
  },
  {
    name: 'a revoked link',
    headers: () => ({ authorization: `Bearer ${revokedLink}` }),
    cookies: () => ({ 'benchcall-bench': revokedBench }),
  },
];

/** A stranger's own lists and account are theirs to see: what matters there is that nothing of ours is in them. */
const OWN_PLACES =
  /^\/(api\/v1\/(calls|me|keys|sessions\/current|staff|limits|catalogue|account)|calls|calls\/new|account|desk|bench)(\/|$|\?)/;

describe('strangers get nothing', () => {
  test('every declared route refuses them', async () => {
    const routes = service.app.declaredRoutes.filter(
      (route) =>
        route.method !== 'HEAD' && route.method !== 'OPTIONS' && !OPEN.some((open) => open.test(route.url)),
    );
    expect(routes.length).toBeGreaterThan(20);
    const leaks: string[] = [];
    for (const route of routes) {
      for (const who of STRANGERS) {
        // It would end the stranger's own session, and every later refusal would mean nothing.
        if (route.url === '/api/v1/sessions/current' && who.name !== 'nobody') continue;
        // Its own build's stream, which is its to watch and does not end.
        if (route.url === '/live/bench' && who.name === 'another build’s link') continue;
        const url = addressOf(route.url);
        const unsafe = route.method !== 'GET';
        const response = await service.app.inject({
          method:
            route.method === 'GET'
              ? 'GET'
              : route.method === 'PUT'
                ? 'PUT'
                : route.method === 'DELETE'
                  ? 'DELETE'
                  : 'POST',
          url,
          headers: {
            ...who.headers(),
            ...(unsafe && url.startsWith('/api/')
              ? { 'content-type': 'application/json', 'if-match': '"1"' }
              : {}),
          },
          cookies: who.cookies(),
          ...(unsafe && url.startsWith('/api/') ? { payload: '{}' } : {}),
        });
        const refused =
          [401, 403, 404, 422, 428].includes(response.statusCode) ||
          (response.statusCode === 303 && String(response.headers.location).startsWith('/sign-in'));
        const hasParts = route.url.includes(':') || who.name === 'nobody' || who.name === 'a revoked link';
        const own =
          OWN_PLACES.test(route.url) &&
          !route.url.includes(':') &&
          who.name !== 'nobody' &&
          who.name !== 'a revoked link';
        const says = `${who.name}: ${route.method} ${route.url} → ${response.statusCode}`;
        if (response.body.includes(SECRET_WORDS)) leaks.push(`${says} shows the build`);
        if (!refused && hasParts && !own && !(who.name !== 'nobody' && route.url.startsWith('/bench')))
          leaks.push(says);
      }
    }
    expect(leaks).toEqual([]);
    const still = await sendJson(service, stranger.bearer, 'GET', '/api/v1/me');
    expect(still.status, 'the stranger must still be signed in for this test to mean anything').toBe(200);
    const otherStill = await sendJson(service, { authorization: `Bearer ${otherLink}` }, 'GET', '/api/v1/me');
    expect(otherStill.status).toBe(200);
  });

  test('the precondition: the owner does get each page and route that a stranger does not', async () => {
    const call = await sendJson(service, owner.bearer, 'GET', `/api/v1/builds/${ids.buildId}`);
    expect(call.status).toBe(200);
    expect(call.text).toContain(SECRET_WORDS);
  });

  test('A10: a foreign id and one that never was get the same answer', async () => {
    const foreign = await sendJson(service, stranger.bearer, 'GET', `/api/v1/builds/${ids.buildId}`);
    const missing = await sendJson(service, stranger.bearer, 'GET', `/api/v1/builds/${crypto.randomUUID()}`);
    expect(foreign.status).toBe(404);
    const strip = ({ requestId: _, ...rest }: Record<string, unknown>) => rest;
    expect(strip(foreign.json)).toEqual(strip(missing.json));
  });
});

describe('the database itself keeps shops apart', () => {
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

  test('D1: every table has forced row-level security, and the service owns nothing and bypasses nothing', async () => {
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

  test('D2, D3: after a transaction its shop is gone from the connection', async () => {
    const one = await service.database.db.inShop(
      owner.shopId,
      async (tx) => (await tx.selectFrom('build').select('id').execute()).length,
    );
    expect(one).toBeGreaterThan(0);
    const { rows } = await service.database.db.pool.query('select count(*)::int as n from build');
    expect(rows[0]).toEqual({ n: 0 });
    const inOther = await service.database.db.inShop(
      stranger.shopId,
      async (tx) => (await tx.selectFrom('build').select('id').execute()).length,
    );
    expect(inOther).toBe(0);
  });

  test('D4: every unique index and foreign key between shops’ tables carries the shop', async () => {
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

  test('D3: a row of another shop can’t be written, not even by naming that shop', async () => {
    await expect(
      service.database.db.inShop(stranger.shopId, (tx) =>
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

  test('E5: limits on statements, locks and idle transactions belong to the role', async () => {
    const { rows } = await service.database.asOwner(
      `select setconfig from pg_db_role_setting s join pg_roles r on r.oid = s.setrole where rolname = 'benchcall_service'`,
    );
    const config = rows.map((row) => String(row.setconfig)).join();
    for (const name of ['statement_timeout', 'lock_timeout', 'idle_in_transaction_session_timeout'])
      expect(config).toContain(name);
  });
});
