import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { ABSOLUTE_MS, IDLE_MS } from '../../server/auth/resolve.ts';
import { sendJson } from '../tools/call.ts';
import { type ClockedService, clockedService } from '../tools/clocked-service.ts';
import { cookieIn, postForm } from '../tools/post-form.ts';
import { PASSWORD, type TestService, testService } from '../tools/service.ts';

/** Cookies and the life of a session (OWASP ASVS 5.0, V3.3, V7.2 to V7.4). */
let service: TestService;
/** The service's clock, which the tests move. */
let clock: ClockedService['clock'];
const at = (moment: number) => {
  clock.now = moment;
};

beforeAll(async () => {
  ({ service, clock } = await clockedService({ PUBLIC_URL: 'https://bench.test' }));
});
afterAll(() => service.close());

const DESK = '__Host-benchcall-desk';
const signIn = (email: string, cookies: Record<string, string> = {}) =>
  postForm(service, '/sign-in', { email, password: PASSWORD, next: '/account' }, { cookies });
const account = (cookies: Record<string, string>) => service.request({ url: '/account', cookies });
const isIn = async (cookies: Record<string, string>) => (await account(cookies)).statusCode === 200;

describe('the cookie', () => {
  test('with an https address it is __Host-, Secure, HttpOnly, SameSite=Strict, for the whole path and no domain', async () => {
    const person = await service.person();
    const signed = await signIn(person.email);
    expect([signed.statusCode, signed.headers.location]).toEqual([303, '/account']);
    const [line = ''] = [signed.headers['set-cookie'] ?? []].flat();
    expect(line).toMatch(/^__Host-benchcall-desk=bcs_[A-Za-z0-9_-]{43};/);
    const attributes = line
      .split('; ')
      .slice(1)
      .map((each) => each.split('=')[0]);
    expect(attributes.sort()).toEqual(['Expires', 'HttpOnly', 'Path', 'SameSite', 'Secure']);
    expect(line).toMatch(/SameSite=Strict/);
    expect(line).toMatch(/Path=\/;|Path=\/$/);
    expect(signed.headers['cache-control']).toBe('no-store');
  });

  test('only its hash is kept, of 256 random bits (V11.5.1 asks for 128)', async () => {
    const person = await service.person();
    const { value } = cookieIn(await signIn(person.email), DESK);
    expect(Buffer.from(value.slice(4), 'base64url').length * 8).toBe(256);
    const { rows } = await service.database.asOwner(
      'select staff_session::text as row from staff_session union all select staff::text from staff',
    );
    expect(rows.length).toBeGreaterThan(0);
    expect(rows.filter(({ row }) => String(row).includes(value.slice(4)))).toEqual([]);
  });

  test('over plain http, where Secure would never come back, it goes without the prefix', async () => {
    const plain = await testService();
    try {
      const person = await plain.person();
      const signed = await postForm(plain, '/sign-in', { email: person.email, password: PASSWORD });
      const line = String(signed.headers['set-cookie']);
      expect(line).toMatch(/^benchcall-desk=/);
      expect(line).toMatch(/HttpOnly/);
      expect(line).not.toMatch(/Secure/);
    } finally {
      await plain.close();
    }
  });
});

describe('the life of a session', () => {
  test('each sign-in has a new id, and the one before in the same browser ends', async () => {
    const person = await service.person();
    const first = cookieIn(await signIn(person.email), DESK).value;
    const second = cookieIn(await signIn(person.email, { [DESK]: first }), DESK).value;
    expect(second).not.toBe(first);
    expect(await isIn({ [DESK]: first })).toBe(false);
    expect(await isIn({ [DESK]: second })).toBe(true);
  });

  test('an id that somebody else put into the browser is never taken over', async () => {
    const person = await service.person();
    const planted = `bcs_${'a'.repeat(43)}`;
    const { value } = cookieIn(await signIn(person.email, { [DESK]: planted }), DESK);
    expect(value).not.toBe(planted);
    expect(await isIn({ [DESK]: planted })).toBe(false);
  });

  test('signing out ends it at the service, not only in the browser', async () => {
    const person = await service.person();
    const { value } = cookieIn(await signIn(person.email), DESK);
    const out = await postForm(service, '/sign-out', {}, { cookies: { [DESK]: value } });
    expect(out.statusCode).toBe(303);
    expect(String(out.headers['set-cookie'])).toMatch(/^__Host-benchcall-desk=;.*Secure/);
    expect(await isIn({ [DESK]: value })).toBe(false);
  });

  test('a session by JSON ends likewise', async () => {
    const person = await service.person();
    const made = await sendJson(service, {}, 'POST', '/api/v1/sessions', {
      email: person.email,
      password: PASSWORD,
    });
    const bearer = { authorization: `Bearer ${String(made.json.token)}` };
    expect((await sendJson(service, bearer, 'GET', '/api/v1/me')).status).toBe(200);
    expect((await sendJson(service, bearer, 'DELETE', '/api/v1/sessions/current')).status).toBe(204);
    expect((await sendJson(service, bearer, 'GET', '/api/v1/me')).status).toBe(401);
  });

  test('taking a person off the desk ends their sessions at once, and they can’t sign in again', async () => {
    const boss = await service.person();
    const leaving = await service.person({ shopId: boss.shopId, roles: ['desk'] });
    const { value } = cookieIn(await signIn(leaving.email), DESK);
    expect(await isIn({ [DESK]: value })).toBe(true);
    const off = await sendJson(service, boss.bearer, 'POST', `/api/v1/staff/${leaving.staffId}/disable`, {});
    expect(off.status).toBe(200);
    expect(await isIn({ [DESK]: value })).toBe(false);
    expect((await sendJson(service, leaving.bearer, 'GET', '/api/v1/me')).status).toBe(401);
    expect((await signIn(leaving.email)).statusCode).toBe(422);
  });

  test('a new password ends every other session, and the old one opens nothing', async () => {
    const person = await service.person();
    const here = cookieIn(await signIn(person.email), DESK).value;
    const elsewhere = cookieIn(await signIn(person.email), DESK).value;
    const wrong = await postForm(
      service,
      '/account/password',
      { current: 'not this one', password: 'four wide elm trees', key: crypto.randomUUID() },
      { cookies: { [DESK]: here } },
    );
    expect(wrong.statusCode).toBe(422);
    expect(wrong.body).not.toContain('four wide elm trees');
    expect(await isIn({ [DESK]: elsewhere })).toBe(true);
    const changed = await postForm(
      service,
      '/account/password',
      { current: PASSWORD, password: 'four wide elm trees', key: crypto.randomUUID() },
      { cookies: { [DESK]: here } },
    );
    expect(changed.statusCode).toBe(303);
    expect(await isIn({ [DESK]: here })).toBe(true);
    expect(await isIn({ [DESK]: elsewhere })).toBe(false);
    expect((await sendJson(service, person.bearer, 'GET', '/api/v1/me')).status).toBe(401);
    expect((await signIn(person.email)).statusCode).toBe(422);
  });

  test('unused for longer than the idle limit it has ended; used in between it lasts', async () => {
    const start = Date.now();
    at(start);
    const person = await service.person();
    const idle = { [DESK]: cookieIn(await signIn(person.email), DESK).value };
    const used = { [DESK]: cookieIn(await signIn(person.email), DESK).value };
    at(start + IDLE_MS - 60_000);
    expect(await isIn(used)).toBe(true);
    at(start + IDLE_MS + 60_000);
    expect(await isIn(idle)).toBe(false);
    expect(await isIn(used)).toBe(true);
    at(Date.now());
  });

  test('at the absolute limit it ends, however much it is used', async () => {
    const start = Date.now();
    at(start);
    const person = await service.person();
    const cookies = { [DESK]: cookieIn(await signIn(person.email), DESK).value };
    for (let now = start; now < start + ABSOLUTE_MS; now += IDLE_MS - 60_000) {
      at(now);
      expect(await isIn(cookies), new Date(now).toISOString()).toBe(true);
    }
    at(start + ABSOLUTE_MS);
    expect(await isIn(cookies)).toBe(false);
    at(Date.now());
  });
});

describe('after signing in', () => {
  test.each([
    '//elsewhere.test',
    'https://elsewhere.test/calls',
    '/\\elsewhere.test',
    '/calls/../../x\\y',
    '/calls?a=\r\nset-cookie: x=1',
    '/calls/é',
    'javascript:alert(1)',
    '/sign-out',
  ])('it goes to the calls and not to %j', async (next) => {
    const person = await service.person();
    const signed = await postForm(service, '/sign-in', { email: person.email, password: PASSWORD, next });
    expect([signed.statusCode, signed.headers.location]).toEqual([303, '/calls']);
    expect(signed.cookies.map((cookie) => cookie.name)).toEqual([DESK, '__Host-benchcall-known']);
  });
});
