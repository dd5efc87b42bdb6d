import { afterAll, beforeAll, describe, expect, onTestFinished, test } from 'vitest';
import { buildApp } from '../../server/app.ts';
import { signInLimits } from '../../server/auth/sign-in-limits.ts';
import { openDatabase } from '../../server/database/database.ts';
import { problemIn } from '../tools/problem.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

let service: TestService;
let person: Person;
beforeAll(async () => {
  service = await testService();
  person = await service.person();
});
afterAll(() => service.close());

describe('live and ready', () => {
  test('ready tells the schema; live says nothing of it', async () => {
    const ready = await service.app.inject({ url: '/health/ready' });
    expect([ready.statusCode, ready.json()]).toEqual([
      200,
      { status: 'ready', schema: service.deps.newestMigration },
    ]);
    expect((await service.app.inject({ url: '/health/live' })).statusCode).toBe(200);
  });

  test('without a database it lives, is not ready, computes, and says 503 to whatever needs one', async () => {
    // Port 1 of loopback: nothing listens there.
    const db = openDatabase('postgres://nobody:x@127.0.0.1:1/none', {
      poolSize: 2,
      onIdleError: () => undefined,
    });
    const app = await buildApp({ ...service.deps, db, signInLimits: signInLimits(db.pool) });
    onTestFinished(async () => {
      await app.close();
      await db.close();
    });
    expect((await app.inject({ url: '/health/live' })).statusCode).toBe(200);
    const ready = await app.inject({ url: '/health/ready' });
    expect([ready.statusCode, ready.headers['retry-after']]).toEqual([503, '2']);
    expect(ready.json()).toEqual({ status: 'no-database' });
    problemIn(await app.inject({ url: '/api/v1/me', headers: person.bearer }), 503, 'service-busy');
    const signIn = await app.inject({
      method: 'POST',
      url: '/api/v1/sessions',
      headers: { 'content-type': 'application/json' },
      payload: JSON.stringify({ email: person.email, password: 'x' }),
    });
    problemIn(signIn, 503, 'service-busy');
    const lift = await app.inject({
      method: 'POST',
      url: '/api/v1/compute/lift',
      headers: { 'content-type': 'application/json' },
      payload: '{"lobeLift":".350 in","ratio":1.6,"lash":".016 in"}',
    });
    expect(lift.statusCode).toBe(200);
  });

  test('with another schema than its own it is not ready', async () => {
    const app = await buildApp({ ...service.deps, newestMigration: '9999_later' });
    onTestFinished(async () => app.close());
    const ready = await app.inject({ url: '/health/ready' });
    expect(ready.statusCode).toBe(503);
    expect(ready.json()).toMatchObject({ status: 'schema-differs', expected: '9999_later' });
    expect((await app.inject({ url: '/health/live' })).statusCode).toBe(200);
  });

  test('on tables that came without the rights of its role it is not ready', async () => {
    await service.database.asOwner('revoke select on event from benchcall_service');
    onTestFinished(
      async () => void (await service.database.asOwner('grant select on event to benchcall_service')),
    );
    const ready = await service.app.inject({ url: '/health/ready' });
    expect([ready.statusCode, ready.json()]).toEqual([503, { status: 'no-rights' }]);
  });

  test('while it is ending it is not ready, and every request but health is 503', async () => {
    const app = await buildApp({ ...service.deps, lifecycle: { draining: true } });
    onTestFinished(async () => app.close());
    const ready = await app.inject({ url: '/health/ready' });
    expect([ready.statusCode, ready.json()]).toEqual([503, { status: 'draining' }]);
    expect((await app.inject({ url: '/health/live' })).statusCode).toBe(200);
    const refused = await app.inject({ url: '/api/v1/compute' });
    problemIn(refused, 503, 'service-busy');
    expect(refused.headers.connection).toBe('close');
  });
});
