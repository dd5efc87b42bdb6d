import { sql } from 'kysely';
import pg from 'pg';
import { afterAll, beforeAll, describe, expect, onTestFinished, test } from 'vitest';
import { buildApp } from '../../server/app.ts';
import { openDatabase, type Tx } from '../../server/database/database.ts';
import { openCall, sendJson } from '../tools/call.ts';
import { problemIn } from '../tools/problem.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

/** What a client is told while the database is busy or full. */

let service: TestService;
let person: Person;
beforeAll(async () => {
  service = await testService();
  person = await service.person();
});
afterAll(() => service.close());

const named = (tx: Tx, label: string) =>
  tx.updateTable('build').set({ label }).where('shop_id', '=', person.shopId);

async function twoBuilds(): Promise<[string, string]> {
  return [(await openCall(service, person, 'one')).buildId, (await openCall(service, person, 'two')).buildId];
}
async function labelOf(id: string): Promise<unknown> {
  return (await service.database.asOwner('select label from build where id = $1', [id])).rows[0]?.label;
}

/** Resolves once it has been called by as many. */
function meeting(count: number): () => Promise<void> {
  let open: () => void = () => undefined;
  const all = new Promise<void>((resolve) => {
    open = resolve;
  });
  let here = 0;
  return () => {
    here += 1;
    if (here >= count) open();
    return all;
  };
}

describe('a transaction that the database gave up', () => {
  test('a real deadlock (40P01): the loser runs again whole, and both effects are there', async () => {
    const [one, two] = await twoBuilds();
    const bothHoldTheirFirst = meeting(2);
    const runs = { a: 0, b: 0 };
    const work = (who: 'a' | 'b', first: string, second: string) =>
      service.deps.db.shopTransaction(person.shopId, async (tx) => {
        runs[who] += 1;
        await sql`update build set label = label || ${who}::text where id = ${first}`.execute(tx);
        await bothHoldTheirFirst();
        await sql`update build set label = label || ${who}::text where id = ${second}`.execute(tx);
      });
    await Promise.all([work('a', one, two), work('b', two, one)]);
    // On a busy machine the loser may lose once more.
    expect(
      runs.a + runs.b,
      'there must have been a deadlock for this test to mean anything',
    ).toBeGreaterThanOrEqual(3);
    // Each exactly once on each build: the half that was done before the deadlock is not there twice.
    expect(await labelOf(one)).toMatch(/^one(ab|ba)$/);
    expect(await labelOf(two)).toMatch(/^two(ab|ba)$/);
  }, 60_000);

  test('a real serialization failure (40001) each time: four tries in all, then 503, and nothing is kept', async () => {
    const [one] = await twoBuilds();
    let tries = 0;
    const always = service.deps.db.shopTransaction(person.shopId, async (tx) => {
      tries += 1;
      await sql`set transaction isolation level repeatable read`.execute(tx);
      await tx.selectFrom('build').select('id').where('id', '=', one).execute();
      // Somebody else is faster every time.
      await service.database.asOwner('update build set label = $2 where id = $1', [one, `other ${tries}`]);
      await named(tx, 'mine').where('id', '=', one).execute();
    });
    await expect(always).rejects.toMatchObject({ code: 'service-busy', headers: { 'retry-after': '2' } });
    expect(tries).toBe(4);
    expect(await labelOf(one)).toBe('other 4');
  });

  test('failing once, it succeeds at the second try', async () => {
    const [one] = await twoBuilds();
    let tries = 0;
    await service.deps.db.shopTransaction(person.shopId, async (tx) => {
      tries += 1;
      await sql`set transaction isolation level repeatable read`.execute(tx);
      await tx.selectFrom('build').select('id').where('id', '=', one).execute();
      if (tries === 1)
        await service.database.asOwner('update build set label = $2 where id = $1', [one, 'other']);
      await named(tx, 'mine').where('id', '=', one).execute();
    });
    expect([tries, await labelOf(one)]).toEqual([2, 'mine']);
  });

  test('any other fault is not run again', async () => {
    let tries = 0;
    const wrong = service.deps.db.shopTransaction(person.shopId, async (tx) => {
      tries += 1;
      await sql`select 1 / 0`.execute(tx);
    });
    await expect(wrong).rejects.toThrow('division by zero');
    expect(tries).toBe(1);
  });
});

/** The same service, whose role waits for a lock no longer than .2 s in this database instead of its 5 s. */
async function impatientApp() {
  const { database, deps } = service;
  const shown = await database.asService('show lock_timeout');
  expect(shown.rows).toEqual([{ lock_timeout: '5s' }]);
  const role = `alter role benchcall_service in database ${new URL(database.ownerUrl).pathname.slice(1)}`;
  await database.asOwner(`${role} set lock_timeout = '200ms'`);
  const db = openDatabase(database.serviceUrl, { poolSize: 2, onIdleError: () => undefined });
  const app = await buildApp({ ...deps, db });
  onTestFinished(async () => {
    await app.close();
    await db.close();
    await database.asOwner(`${role} reset lock_timeout`);
  });
  return app;
}

describe('a full pool', () => {
  test('with every connection lent out a request is 503 with Retry-After, and the next after it is served', async () => {
    const { pool } = service.deps.db;
    // The service waits 5 s for a connection; here the same wait is shorter.
    expect(pool.options.connectionTimeoutMillis).toBe(5_000);
    pool.options.connectionTimeoutMillis = 200;
    onTestFinished(() => {
      pool.options.connectionTimeoutMillis = 5_000;
    });
    const lent = await Promise.all(Array.from({ length: 5 }, () => pool.connect()));
    const refused = await Promise.all([
      service.app.inject({ url: '/api/v1/calls', headers: person.bearer }),
      service.app.inject({
        method: 'POST',
        url: '/api/v1/sessions',
        headers: { 'content-type': 'application/json' },
        payload: JSON.stringify({ email: person.email, password: 'x' }),
      }),
      service.app.inject({ url: '/calls', cookies: person.cookies }),
    ]);
    for (const client of lent) client.release();
    for (const answer of refused) {
      expect(answer.statusCode).toBe(503);
      expect(Number(answer.headers['retry-after'])).toBeGreaterThan(0);
    }
    const [api, signIn, page] = refused;
    problemIn(api, 503, 'service-busy');
    problemIn(signIn, 503, 'service-busy');
    expect(page.headers['content-type']).toMatch(/^text\/html/);
    expect((await sendJson(service, person.bearer, 'GET', '/api/v1/calls')).status).toBe(200);
  }, 60_000);

  test('a row that somebody holds longer than the role may wait is 503, not an error of ours', async () => {
    const { buildId } = await openCall(service, person);
    const holder = new pg.Client({ connectionString: service.database.ownerUrl });
    await holder.connect();
    onTestFinished(() => holder.end());
    await holder.query('begin');
    await holder.query('select 1 from build where id = $1 for update', [buildId]);
    const app = await impatientApp();
    const answer = await app.inject({
      method: 'POST',
      url: `/api/v1/builds/${buildId}/arms`,
      headers: { ...person.bearer, 'content-type': 'application/json' },
      payload: '{"name":"waits"}',
    });
    problemIn(answer, 503, 'service-busy');
    expect(Number(answer.headers['retry-after'])).toBeGreaterThan(0);
  }, 60_000);

  test('a server that ends our connections between two statements is 503, and the process lives', async () => {
    const killed = service.deps.db.shopTransaction(person.shopId, async (tx) => {
      const { rows } = await sql<{ pid: number }>`select pg_backend_pid() as pid`.execute(tx);
      await service.database.asOwner('select pg_terminate_backend($1)', [rows[0]?.pid]);
      // Until the client has heard of it, and nobody waits for an answer of the server.
      await expect
        .poll(
          async () =>
            (await service.database.asOwner('select 1 from pg_stat_activity where pid = $1', [rows[0]?.pid]))
              .rowCount,
        )
        .toBe(0);
      await sql`select 1`.execute(tx);
    });
    await expect(killed).rejects.toMatchObject({ code: 'service-busy' });
    expect((await sendJson(service, person.bearer, 'GET', '/api/v1/calls')).status).toBe(200);
  });
});
