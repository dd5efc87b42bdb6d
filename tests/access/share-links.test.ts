import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { hashOf } from '../../server/auth/secrets.ts';
import { openCall, sendJson } from '../tools/call.ts';
import { loggingService } from '../tools/captured-log.ts';
import { type ClockedService, clockedService } from '../tools/clocked-service.ts';
import { cookieIn, postForm } from '../tools/post-form.ts';
import type { Person, TestService } from '../tools/service.ts';

/** The link that a builder gets. */
let service: TestService;
let person: Person;
let callId: string;
let clock: ClockedService['clock'];

beforeAll(async () => {
  ({ service, clock } = await clockedService());
  person = await service.person();
  ({ callId } = await openCall(service, person, 'Shared build'));
});
afterAll(() => service.close());

const BENCH = 'benchcall-bench';

async function makeLink(of: TestService = service, who = person, call = callId, days = 1) {
  const url = `/api/v1/calls/${call}/share-links`;
  const made = await sendJson(of, who.bearer, 'POST', url, { holder: 'B', days });
  expect(made.status).toBe(201);
  const id = /"id":"([^"]+)"/.exec(made.text)?.[1] ?? '';
  return { id, secret: String(made.json.secret), path: String(made.json.path) };
}
const open = (path: string) => postForm(service, path, {});
const whoAmI = (secret: string) =>
  sendJson(service, { authorization: `Bearer ${secret}` }, 'GET', '/api/v1/me');

describe('a share link', () => {
  test('is 256 random bits, of which only the hash is kept', async () => {
    const { secret } = await makeLink();
    expect(secret).toMatch(/^bcl_[A-Za-z0-9_-]{43}$/);
    const { rows } = await service.database.asOwner(
      'select share_link::text as row from share_link union all select event::text from event union all select idempotency::text from idempotency',
    );
    const all = rows.map(({ row }) => String(row)).join();
    expect(all).toContain(hashOf(secret));
    expect(all).not.toContain(secret.slice(4));
  });

  test('is not kept for a replay either: the first answer alone shows it', async () => {
    const key = { 'idempotency-key': crypto.randomUUID() };
    const url = `/api/v1/calls/${callId}/share-links`;
    const first = await sendJson(service, person.bearer, 'POST', url, { days: 1 }, key);
    const again = await sendJson(service, person.bearer, 'POST', url, { days: 1 }, key);
    expect([first.status, again.status]).toEqual([201, 201]);
    expect(again.json).toEqual({ link: first.json.link });
    const { rows } = await service.database.asOwner('select idempotency::text as row from idempotency');
    expect(rows.map(({ row }) => String(row)).join()).not.toContain(String(first.json.secret).slice(4));
  });

  test('looked at any number of times, as scanners of mail do, it is not spent', async () => {
    const { path, secret } = await makeLink();
    for (let time = 0; time < 5; time += 1) {
      const seen = await service.request({ url: path });
      expect(seen.statusCode).toBe(200);
      expect(seen.cookies.map((cookie) => cookie.name)).not.toContain(BENCH);
    }
    expect((await service.request({ method: 'HEAD', url: path })).statusCode).toBe(200);
    const { rows } = await service.database.asOwner(
      'select count(*)::int as n from builder_session s join share_link l on l.id = s.share_link_id where l.token_hash = $1',
      [hashOf(secret)],
    );
    expect(rows[0]).toEqual({ n: 0 });
    expect((await open(path)).statusCode).toBe(303);
  });

  test('its page is not kept, not listed and not told to others, and neither is the answer to its form', async () => {
    const { path } = await makeLink();
    const seen = await service.request({ url: path });
    expect(seen.headers['referrer-policy']).toBe('no-referrer');
    expect(seen.headers['cache-control']).toBe('no-store');
    expect(String(seen.headers['x-robots-tag'])).toContain('noindex');
    // Nothing of another origin is loaded that could be told the address.
    expect(seen.body).not.toMatch(/(src|href)="(https?:)?\/\//);
    const opened = await open(path);
    expect(opened.headers['referrer-policy']).toBe('no-referrer');
    expect(opened.headers['cache-control']).toBe('no-store');
  });

  test('is swapped by its form for a cookie and a clean address', async () => {
    const { path, secret } = await makeLink();
    const opened = await open(path);
    expect([opened.statusCode, opened.headers.location]).toEqual([303, '/bench']);
    const { value } = cookieIn(opened, BENCH);
    expect(value).toMatch(/^bcb_/);
    expect(value).not.toContain(secret.slice(4));
    const line = String(opened.headers['set-cookie']);
    expect(line).toMatch(/HttpOnly/);
    expect(line).toMatch(/SameSite=Lax/);
    const bench = await service.request({ url: '/bench', cookies: { [BENCH]: value } });
    expect([200, 303]).toContain(bench.statusCode);
    expect(bench.headers['cache-control']).toBe('no-store');
  });

  test('ends with its time, for the link and every session opened with it', async () => {
    const start = Date.now();
    clock.now = start;
    const { path, secret } = await makeLink();
    const cookies = { [BENCH]: cookieIn(await open(path), BENCH).value };
    clock.now = start + 86_400_000 - 5_000;
    expect((await whoAmI(secret)).status).toBe(200);
    expect((await service.request({ url: '/bench', cookies })).statusCode).toBeLessThan(400);
    clock.now = start + 86_400_000 + 5_000;
    expect((await whoAmI(secret)).status).toBe(401);
    expect((await service.request({ url: '/bench', cookies })).statusCode).toBe(401);
    expect((await open(path)).statusCode).toBe(410);
    clock.now = Date.now();
  });

  test('revoked, it opens nothing and every session and stream opened with it ends', async () => {
    const { id, path, secret } = await makeLink();
    const cookies = { [BENCH]: cookieIn(await open(path), BENCH).value };
    const base = await service.listen();
    const stream = await fetch(`${base}/live/bench`, { headers: { cookie: `${BENCH}=${cookies[BENCH]}` } });
    expect(stream.status).toBe(200);
    expect(stream.headers.get('x-content-type-options')).toBe('nosniff');
    const url = `/api/v1/calls/${callId}/share-links/${id}`;
    expect((await sendJson(service, person.bearer, 'DELETE', url)).status).toBe(200);
    // It ends by itself: reading to the end would wait for ever otherwise.
    await stream.text();
    expect((await whoAmI(secret)).status).toBe(401);
    expect((await service.request({ url: '/bench', cookies })).statusCode).toBe(401);
    expect((await open(path)).statusCode).toBe(410);
    const { rows } = await service.database.asOwner(
      'select count(*)::int as n from builder_session where share_link_id = $1',
      [id],
    );
    expect(rows[0]).toEqual({ n: 0 });
  });

  test('does nothing but its own build: it makes no links, keys or people', async () => {
    const { secret } = await makeLink();
    const bearer = { authorization: `Bearer ${secret}` };
    for (const [url, body] of [
      [`/api/v1/calls/${callId}/share-links`, { days: 90 }],
      ['/api/v1/keys', { name: 'x', scopes: ['write'] }],
      [
        '/api/v1/staff',
        { name: 'x', email: 'x@test.invalid', role: 'administrator', password: 'three tall oaks' },
      ],
      ['/api/v1/calls', { goal: 'identify', buildLabel: 'x' }],
    ] as const)
      expect((await sendJson(service, bearer, 'POST', url, body)).status, url).toBe(404);
  });
});

describe('the log at info', () => {
  test('has no link, token, password, body or address with a secret, whatever is refused or fails', async () => {
    const { service: logging, lines } = await loggingService();
    try {
      const who = await logging.person();
      const { callId: call, buildId } = await openCall(logging, who, 'Unlogged words');
      const link = await makeLink(logging, who, call);
      const first = `bcf_${'f'.repeat(43)}`;
      const escaped = link.secret.replace('_', '%5F');
      const post = (url: string, fields: Record<string, string>, headers = {}) =>
        postForm(logging, url, fields, { headers });
      await logging.request({ url: link.path });
      await logging.request({ url: `/b/${escaped}` });
      await logging.request({ url: `/b/${escaped}x` });
      await logging.request({ url: `/b/${link.secret.slice(4)}` });
      await logging.request({ url: `/nowhere/${link.secret}?link=${link.secret}` });
      await post(link.path, {}, { 'sec-fetch-site': 'cross-site' });
      await post(`/b/${escaped}`, {}, { 'sec-fetch-site': 'cross-site' });
      await post(`/first-administrator/${first}`, {
        shop: 'x',
        name: 'y',
        email: 'a@test.invalid',
        password: 'unlogged password',
      });
      await post('/sign-in', { email: who.email, password: 'unlogged password' });
      await sendJson(logging, {}, 'POST', '/api/v1/sessions', {
        email: who.email,
        password: 'unlogged password',
      });
      await sendJson(logging, { authorization: `Bearer ${link.secret}` }, 'POST', '/api/v1/keys', {
        name: 'Unlogged words',
      });
      await sendJson(logging, who.bearer, 'GET', `/api/v1/calls?search=Unlogged%20words&before=x`);
      // A failure of ours: the database refuses the row, and tells its values to whoever prints its error whole.
      await logging.database.asOwner(
        `alter table note add constraint never check (body <> 'Unlogged words')`,
      );
      const failed = await sendJson(logging, who.bearer, 'POST', `/api/v1/calls/${call}/notes`, {
        kind: 'note',
        body: 'Unlogged words',
      });
      expect([failed.status, failed.json.code]).toEqual([500, 'internal-error']);
      expect(failed.text).not.toMatch(/constraint|note_|Unlogged/);

      const log = lines().join('');
      const paths = lines().map((line) => /"path":"([^"]*)"/.exec(line)?.[1]);
      expect(lines().length, 'refusals must be logged for this test to mean anything').toBeGreaterThan(8);
      expect(log).toContain('violates check constraint');
      expect(paths).toContain('/b/(secret)');
      expect(paths).toContain('/nowhere/(secret)');
      expect(log).toContain(String(failed.json.requestId));
      for (const secret of [
        link.secret.slice(4),
        first.slice(4),
        who.token.slice(4),
        'unlogged password',
        'Unlogged words',
        who.email,
        'Bearer',
      ])
        expect(log, secret).not.toContain(secret);
      expect(paths.filter((path) => path?.includes('?'))).toEqual([]);
      expect(buildId).not.toBe('');
    } finally {
      await logging.close();
    }
  });
});
