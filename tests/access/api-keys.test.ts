import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { hashOf } from '../../server/auth/secrets.ts';
import { openCall, sendJson } from '../tools/call.ts';
import { type ClockedService, clockedService } from '../tools/clocked-service.ts';
import { PASSWORD, type Person, type TestService } from '../tools/service.ts';

/** Keys of programs. */
let service: TestService;
let person: Person;
let clock: ClockedService['clock'];
beforeAll(async () => {
  ({ service, clock } = await clockedService());
  person = await service.person();
});
afterAll(() => service.close());

async function makeKey(scopes: string[], days = 30, headers: Record<string, string> = {}) {
  const body = { name: 'The shop’s own system', scopes, days };
  const made = await sendJson(service, person.bearer, 'POST', '/api/v1/keys', body, headers);
  expect(made.status).toBe(201);
  const secret = String(made.json.secret);
  const id = /"id":"([^"]+)"/.exec(made.text)?.[1] ?? '';
  return { id, secret, bearer: { authorization: `Bearer ${secret}` }, text: made.text };
}
const list = (bearer: { authorization?: string }) => sendJson(service, bearer, 'GET', '/api/v1/calls');
const NEW_CALL = { goal: 'identify', buildLabel: 'From a program' };

describe('a key', () => {
  test('has a prefix that tells it by sight and 256 random bits, of which SHA-256 is kept', async () => {
    const key = await makeKey(['read'], 30, { 'idempotency-key': crypto.randomUUID() });
    expect(key.secret).toMatch(/^bck_[A-Za-z0-9_-]{43}$/);
    const { rows } = await service.database.asOwner(
      'select api_key::text as row from api_key union all select idempotency::text from idempotency',
    );
    const all = rows.map(({ row }) => String(row)).join();
    expect(all).toContain(hashOf(key.secret));
    // What is shown of it afterwards leaves more than 128 bits unknown.
    expect(all).not.toContain(key.secret.slice(4, 26));
    const shown = await sendJson(service, person.bearer, 'GET', '/api/v1/keys');
    expect(shown.text).toContain(key.secret.slice(0, 8));
    expect(shown.text).not.toContain(key.secret.slice(4, 26));
    expect(shown.text).not.toContain(hashOf(key.secret));
  });

  test('reads with read and writes with write, neither with the other', async () => {
    const reading = await makeKey(['read']);
    const writing = await makeKey(['write']);
    const both = await makeKey(['read', 'write']);
    const write = async (bearer: { authorization: string }) =>
      (await sendJson(service, bearer, 'POST', '/api/v1/calls', NEW_CALL)).status;
    expect([(await list(reading.bearer)).status, await write(reading.bearer)]).toEqual([200, 403]);
    expect([(await list(writing.bearer)).status, await write(writing.bearer)]).toEqual([403, 201]);
    expect([(await list(both.bearer)).status, await write(both.bearer)]).toEqual([200, 201]);
  });

  test('with read writes nothing at all: every command refuses it', async () => {
    const { callId, buildId } = await openCall(service, person);
    const { bearer } = await makeKey(['read']);
    const taken: string[] = [];
    const commands = service.app.declaredRoutes.filter(
      ({ method, url }) =>
        !['GET', 'HEAD'].includes(method) && url.startsWith('/api/') && !/\/(compute|sessions$)/.test(url),
    );
    for (const { method, url } of commands) {
      const address = url
        .replace('/calls/:id', `/calls/${callId}`)
        .replace('/builds/:id', `/builds/${buildId}`)
        .replace(/:[A-Za-z]+/g, crypto.randomUUID());
      const verb = method === 'PUT' || method === 'DELETE' ? method : 'POST';
      const answer = await sendJson(service, bearer, verb, address, {}, { 'if-match': '"1"' });
      if (answer.status < 400) taken.push(`${method} ${url} ${answer.status}`);
    }
    expect(commands.length).toBeGreaterThan(15);
    expect(taken).toEqual([]);
  });

  test('never does what a person alone may: keys, people and links', async () => {
    const { callId } = await openCall(service, person);
    const { bearer } = await makeKey(['read', 'write']);
    for (const [url, body] of [
      ['/api/v1/keys', { name: 'x', scopes: ['read'] }],
      ['/api/v1/staff', { name: 'x', email: 'x@test.invalid', role: 'desk', password: PASSWORD }],
      [`/api/v1/calls/${callId}/share-links`, { days: 1 }],
    ] as const)
      expect((await sendJson(service, bearer, 'POST', url, body)).status, url).toBe(403);
  });

  test('revoked, it opens nothing from the next request on', async () => {
    const { id, bearer } = await makeKey(['read']);
    expect((await list(bearer)).status).toBe(200);
    expect((await sendJson(service, person.bearer, 'DELETE', `/api/v1/keys/${id}`)).status).toBe(200);
    expect((await list(bearer)).status).toBe(401);
  });

  test('ends with its time', async () => {
    const start = Date.now();
    clock.now = start;
    const { bearer } = await makeKey(['read'], 1);
    clock.now = start + 86_400_000 - 5_000;
    expect((await list(bearer)).status).toBe(200);
    clock.now = start + 86_400_000 + 5_000;
    expect((await list(bearer)).status).toBe(401);
    clock.now = start;
  });

  test('in an address or a cookie it is no key', async () => {
    const { secret } = await makeKey(['read']);
    for (const name of ['key', 'api_key', 'access_token', 'authorization', 'token'])
      expect((await service.request({ url: `/api/v1/me?${name}=${secret}` })).statusCode).toBe(401);
    for (const name of ['benchcall-desk', 'benchcall-bench', 'authorization']) {
      const page = await service.request({ url: '/calls', cookies: { [name]: secret } });
      expect([page.statusCode, page.headers.location]).toEqual([303, '/sign-in?next=%2Fcalls']);
    }
    const basic = Buffer.from(`${secret}:`).toString('base64');
    expect((await list({ authorization: `Basic ${basic}` })).status).toBe(401);
  });
});
