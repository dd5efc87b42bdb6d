import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openCall, sendJson } from '../tools/call.ts';
import { postForm } from '../tools/post-form.ts';
import { PASSWORD, type Person, type TestService, testService } from '../tools/service.ts';

/** Forms that another site makes a browser send (OWASP CSRF Prevention Cheat Sheet: Fetch metadata). */
let service: TestService;
let person: Person;
beforeAll(async () => {
  service = await testService();
  person = await service.person();
});
afterAll(() => service.close());

const HOST = 'bench.test:3000';
const FOREIGN: readonly (readonly [string, Record<string, string>])[] = [
  ['another site', { 'sec-fetch-site': 'cross-site' }],
  ['a neighbour domain', { 'sec-fetch-site': 'same-site' }],
  ['another origin, told by Origin alone', { origin: 'https://elsewhere.test' }],
  ['another port of the same machine', { origin: 'http://bench.test:4000' }],
  ['no origin at all, such as a sandboxed frame', { origin: 'null' }],
  ['an origin that is none', { origin: 'bench.test:3000' }],
  ['another site that claims our origin', { 'sec-fetch-site': 'cross-site', origin: `http://${HOST}` }],
];

describe('every form', () => {
  test.each(FOREIGN)('from %s is refused on every address that takes one', async (_, headers) => {
    const open: string[] = [];
    const forms = service.app.declaredRoutes.filter(
      ({ method, url }) => !['GET', 'HEAD', 'OPTIONS'].includes(method) && !url.startsWith('/api/'),
    );
    expect(forms.map((form) => form.url)).toEqual(
      expect.arrayContaining(['/sign-in', '/sign-out', '/b/:secret', '/first-administrator/:secret']),
    );
    for (const { url } of forms) {
      const address = url.replace(/:[A-Za-z]+/g, crypto.randomUUID());
      const response = await postForm(
        service,
        address,
        {},
        {
          headers: { host: HOST, ...headers },
          cookies: person.cookies,
        },
      );
      if (response.statusCode !== 403) open.push(`${url} ${response.statusCode}`);
    }
    expect(open).toEqual([]);
  });

  test('signing in from another site sets no cookie', async () => {
    const fields = { email: person.email, password: PASSWORD };
    const refused = await postForm(service, '/sign-in', fields, {
      headers: { 'sec-fetch-site': 'cross-site' },
    });
    expect([refused.statusCode, refused.headers['set-cookie']]).toEqual([403, undefined]);
  });

  test.each([
    ['our own page', { 'sec-fetch-site': 'same-origin' }],
    ['the address bar', { 'sec-fetch-site': 'none' }],
    ['our own page over plain http', { origin: `http://${HOST}` }],
  ])('from %s is taken', async (_, headers) => {
    const fields = { email: person.email, password: PASSWORD };
    const response = await postForm(service, '/sign-in', fields, { headers: { host: HOST, ...headers } });
    expect(response.statusCode).toBe(303);
  });

  test('from a link’s page over plain http, whose Origin is null by its own referrer policy, it is taken', async () => {
    const { callId } = await openCall(service, person);
    const made = await sendJson(service, person.bearer, 'POST', `/api/v1/calls/${callId}/share-links`, {});
    const url = `/b/${String(made.json.secret)}`;
    const page = await service.request({ url, headers: { host: HOST } });
    const opening = page.cookies.find((cookie) => cookie.name === 'benchcall-opening');
    expect(opening).toMatchObject({ sameSite: 'Strict', httpOnly: true, path: '/' });
    const headers = { host: HOST, origin: 'null' };
    const without = await postForm(service, url, {}, { headers });
    expect(without.statusCode, 'a Strict cookie is not sent along by another site').toBe(403);
    const opened = await postForm(service, url, {}, { headers, cookies: { 'benchcall-opening': '1' } });
    expect([opened.statusCode, opened.headers.location]).toEqual([303, '/bench']);
  });
});

describe('the JSON API has no ambient credentials', () => {
  test('a session’s cookie opens no JSON route', async () => {
    const answers: string[] = [];
    const routes = service.app.declaredRoutes.filter(
      ({ url, method }) =>
        method !== 'HEAD' &&
        url.startsWith('/api/') &&
        !/^\/api\/v1\/(compute|openapi|sessions$|password-links\/use$)/.test(url),
    );
    for (const { method, url } of routes) {
      const response = await service.request({
        method: method === 'GET' || method === 'PUT' || method === 'DELETE' ? method : 'POST',
        url: url.replace(/:[A-Za-z]+/g, crypto.randomUUID()),
        cookies: person.cookies,
        ...(method === 'GET' || method === 'DELETE'
          ? {}
          : { payload: '{}', headers: { 'content-type': 'application/json' } }),
      });
      if (response.statusCode !== 401 && response.statusCode !== 415)
        answers.push(`${method} ${url} ${response.statusCode}`);
    }
    expect(routes.length).toBeGreaterThan(25);
    expect(answers).toEqual([]);
  });

  test('no answer lets another origin read it', async () => {
    for (const url of ['/api/v1/compute', '/api/v1/me', '/calls']) {
      const response = await service.request({ url, headers: { origin: 'https://elsewhere.test' } });
      expect(response.headers['access-control-allow-origin']).toBeUndefined();
    }
  });
});

describe('headers', () => {
  test.each(['/', '/sign-in', '/nowhere', '/reference', '/api/v1/compute', '/api/v1/none', '/health/live'])(
    '%s has them',
    async (url) => {
      const { headers } = await service.request({ url });
      const policy = String(headers['content-security-policy']);
      for (const part of ["default-src 'none'", "base-uri 'none'", "frame-ancestors 'none'"])
        expect(policy).toContain(part);
      expect(policy).not.toMatch(/unsafe-(inline|eval|hashes)|\*/);
      expect(headers['x-content-type-options']).toBe('nosniff');
      const age = /max-age=(\d+)/.exec(String(headers['strict-transport-security']))?.[1];
      expect(Number(age)).toBeGreaterThanOrEqual(365 * 86_400);
    },
  );

  test('a page names its script by a nonce that is new each time, and has no inline code or style', async () => {
    const nonces = new Set<string>();
    for (let time = 0; time < 3; time += 1) {
      const { headers, body } = await service.request({ url: '/sign-in' });
      const policy = String(headers['content-security-policy']);
      expect(policy).toContain("object-src 'none'");
      const nonce = /'nonce-([^']+)'/.exec(policy)?.[1] ?? '';
      expect(Buffer.from(nonce, 'base64').length * 8).toBeGreaterThanOrEqual(128);
      nonces.add(nonce);
      const scripts = [...body.matchAll(/<script[^>]*>/g)].map(([tag]) => tag);
      expect(scripts.every((tag) => tag.includes(`nonce="${nonce}"`) && tag.includes('src='))).toBe(true);
      expect(body).not.toMatch(/ style="| on[a-z]+="|<style/);
    }
    expect(nonces.size).toBe(3);
  });
});
