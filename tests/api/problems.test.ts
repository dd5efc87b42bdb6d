import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openCall, sendJson } from '../tools/call.ts';
import { problemIn, withoutRequest } from '../tools/problem.ts';
import { sendRaw } from '../tools/raw-http.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

/** Every refusal is a problem of RFC 9457, whichever part of the service refuses. */
let service: TestService;
let person: Person;
let base: string;

beforeAll(async () => {
  service = await testService();
  person = await service.person();
  base = await service.listen();
});
afterAll(() => service.close());

const json = { 'content-type': 'application/json' };

describe('what reaches no route', () => {
  test('404 for an address nothing is at', async () => {
    problemIn(await service.request({ url: '/api/v1/nothing' }), 404, 'not-found');
    problemIn(await service.request({ method: 'POST', url: '/api/v1/compute/nothing' }), 404, 'not-found');
  });

  test('HEAD of nothing is a 404 of the same kind, without a body', async () => {
    const response = await service.request({ method: 'HEAD', url: '/api/v1/nothing' });
    expect(response.statusCode).toBe(404);
    expect(response.headers['content-type']).toMatch(/^application\/problem\+json/);
    const sent = await sendRaw(base, 'HEAD /api/v1/nothing HTTP/1.1\r\nhost: x\r\nconnection: close\r\n\r\n');
    expect(sent.body).toBe('');
  });

  test.each(['DELETE', 'PUT', 'PATCH', 'OPTIONS'] as const)(
    '405 with Allow for %s where others are taken',
    async (method) => {
      const response = await service.request({ method, url: '/api/v1/compute/lift' });
      problemIn(response, 405, 'method-not-allowed');
      const allowed = String(response.headers.allow).split(', ').sort();
      expect(allowed).toEqual(['GET', 'HEAD', 'POST']);
    },
  );

  test('405 names what each address takes: every declared route, asked with TRACE or another it has not', async () => {
    const wrong: string[] = [];
    for (const { url } of service.app.declaredRoutes.filter((route) => route.url.startsWith('/api/'))) {
      const address = url.replace(/:[A-Za-z]+/g, crypto.randomUUID());
      const response = await service.request({ method: 'PATCH', url: address });
      const allow = String(response.headers.allow ?? '');
      const own = service.app.declaredRoutes
        .filter((route) => route.url === url)
        .map((route) => route.method);
      if (response.statusCode !== 405 || !own.every((method) => allow.includes(method))) wrong.push(url);
    }
    expect(wrong).toEqual([]);
  });

  test('a broken %-escape is 400, also in a page address', async () => {
    problemIn(await service.request({ url: '/api/v1/builds/%zz' }), 400, 'bad-request');
    problemIn(await service.request({ url: '/api/v1/builds/%E0%A4%A' }), 400, 'bad-request');
    expect((await service.request({ url: '/b/%zz' })).statusCode).toBe(400);
  });

  test('414 for a part of an address longer than any id', async () => {
    const response = await service.request({ url: `/api/v1/builds/${'a'.repeat(300)}` });
    problemIn(response, 414, 'url-too-long');
  });

  test('431 for headers beyond what is read', async () => {
    const text = `GET /api/v1/me HTTP/1.1\r\nhost: x\r\nx-long: ${'a'.repeat(20_000)}\r\n\r\n`;
    problemIn(await sendRaw(base, text), 431, 'headers-too-large');
  });

  test('what is not HTTP is 400', async () => {
    problemIn(await sendRaw(base, 'good morning\r\n\r\n'), 400, 'bad-request');
    problemIn(await sendRaw(base, 'ROTATE /api/v1/me HTTP/1.1\r\nhost: x\r\n\r\n'), 400, 'bad-request');
    const doubled =
      'POST /api/v1/calls HTTP/1.1\r\nhost: x\r\ncontent-length: 2\r\ntransfer-encoding: chunked\r\n\r\n{}';
    problemIn(await sendRaw(base, doubled), 400, 'bad-request');
  });

  test('a method of HTTP that nothing takes here is 405 or 404, never silence', async () => {
    const text = 'PROPFIND /api/v1/me HTTP/1.1\r\nhost: x\r\nconnection: close\r\n\r\n';
    problemIn(await sendRaw(base, text), 405, 'method-not-allowed');
  });
});

describe('bodies', () => {
  const post = (payload: string, headers: Record<string, string>, url = '/api/v1/calls') =>
    service.request({ method: 'POST', url, headers: { ...person.bearer, ...headers }, payload });

  test('413 for a body beyond the limit', async () => {
    problemIn(await post(`"${'a'.repeat(1024 * 1024 + 1)}"`, json), 413, 'body-too-large');
    // Told by its length before a byte of it is read.
    const text = `POST /api/v1/calls HTTP/1.1\r\nhost: x\r\n${'content-type: application/json'}\r\ncontent-length: 99999999\r\nconnection: close\r\n\r\n`;
    problemIn(await sendRaw(base, text), 413, 'body-too-large');
  });

  test.each([
    ['text/plain', '{"goal":"identify","buildLabel":"x"}'],
    ['application/xml', '<goal/>'],
    ['application/x-www-form-urlencoded', 'goal=identify&buildLabel=x'],
    ['multipart/form-data; boundary=x', '--x--'],
    ['nonsense', '{}'],
    ['application/json5', '{}'],
  ])('415 for %s, and nothing is made', async (type, payload) => {
    const before = await sendJson(service, person.bearer, 'GET', '/api/v1/calls');
    problemIn(await post(payload, { 'content-type': type }), 415, 'media-type-not-taken');
    const after = await sendJson(service, person.bearer, 'GET', '/api/v1/calls');
    expect(after.json).toEqual(before.json);
  });

  test('415 for a sign-in by JSON that says it is text, as another site’s form could send', async () => {
    const payload = JSON.stringify({ email: person.email, password: 'x' });
    const response = await post(payload, { 'content-type': 'text/plain' }, '/api/v1/sessions');
    problemIn(response, 415, 'media-type-not-taken');
  });

  test('415 for a body without a type', async () => {
    const text = `POST /api/v1/calls HTTP/1.1\r\nhost: x\r\nauthorization: ${person.bearer.authorization}\r\ncontent-length: 2\r\nconnection: close\r\n\r\n{}`;
    problemIn(await sendRaw(base, text), 415, 'media-type-not-taken');
  });

  test.each(['', '{', "{'goal':1}", '{"goal":NaN}', '{"a":1,}', '\u0000'])(
    '400 for %j, which is not JSON',
    async (payload) => {
      problemIn(await post(payload, json), 400, 'invalid-json');
    },
  );

  test.each(['null', '1', '"goal"', 'true', '[]', '[{"goal":"identify"}]'])(
    '422 for %s, which is JSON and no object',
    async (payload) => {
      problemIn(await post(payload, json), 422, 'invalid-input');
    },
  );

  test('every fault is told at its own pointer', async () => {
    const response = await post('{"goal":"sell","buildLabel":"","cylinders":8,"a/b":1}', json);
    const { errors } = problemIn(response, 422, 'invalid-input');
    const pointers = (errors ?? []).map((fault) => fault.pointer).sort();
    expect(pointers).toEqual(['/a~1b', '/buildLabel', '/cylinders', '/goal']);
  });
});

describe('what a caller may not do', () => {
  test('401 with a challenge without a bearer (RFC 9110, 15.5.2)', async () => {
    const response = await service.request({ url: '/api/v1/me' });
    problemIn(response, 401, 'sign-in-required');
    expect(response.headers['www-authenticate']).toMatch(/^Bearer/);
  });

  test('403 where the role does not reach', async () => {
    const quality = await service.person({ shopId: person.shopId, roles: ['quality'] });
    const response = await service.request({ url: '/api/v1/keys', headers: quality.bearer });
    problemIn(response, 403, 'not-permitted');
  });

  test('409 where things stand otherwise', async () => {
    const url = `/api/v1/staff/${person.staffId}/disable`;
    problemIn(await service.request({ method: 'POST', url, headers: person.bearer }), 409, 'conflict');
  });
});

describe('what is not there and what is another’s', () => {
  test('every JSON route with an id gives the same 404 for another shop’s as for none', async () => {
    const stranger = await service.person();
    const { callId, buildId } = await openCall(service, person);
    const differing: string[] = [];
    const routes = service.app.declaredRoutes.filter(
      ({ url, method }) => /^\/api\/v1\/(calls|builds)\/:id/.test(url) && method !== 'HEAD',
    );
    expect(routes.length).toBeGreaterThan(15);
    for (const { method, url } of routes) {
      const ask = async (id: string) => {
        const verb = method === 'PUT' || method === 'DELETE' || method === 'GET' ? method : 'POST';
        const address = url.replace(':id', id).replace(/:[A-Za-z]+/g, '00000000-0000-4000-8000-000000000000');
        const { status, json: told } = await sendJson(service, stranger.bearer, verb, address, undefined, {
          'if-match': '"1"',
        });
        const { requestId: _, ...rest } = told;
        return { status, rest };
      };
      const foreign = await ask(url.includes('/calls/') ? callId : buildId);
      const missing = await ask(crypto.randomUUID());
      if (JSON.stringify(foreign) !== JSON.stringify(missing)) differing.push(`${method} ${url}`);
      if (foreign.status < 400) differing.push(`${method} ${url} answers ${foreign.status}`);
    }
    expect(differing).toEqual([]);
  });

  test('an id that can’t be one is the same 404', async () => {
    const missing = await service.request({
      url: `/api/v1/builds/${crypto.randomUUID()}`,
      headers: person.bearer,
    });
    problemIn(missing, 404, 'not-found');
    for (const id of ['1', 'x', "' or 1=1 --", '00000000-0000-0000-0000-00000000000g']) {
      const url = `/api/v1/builds/${encodeURIComponent(id)}`;
      const response = await service.request({ url, headers: person.bearer });
      expect(Object.keys(withoutRequest(problemIn(response, 404, 'not-found')))).toContain('detail');
    }
  });
});

describe('pages', () => {
  test('a page that is not there is a page, with the number of the request', async () => {
    const response = await service.request({ url: '/nowhere' });
    expect(response.statusCode).toBe(404);
    expect(response.headers['content-type']).toMatch(/^text\/html/);
    expect(response.body).toContain(String(response.headers['x-request-id']).slice(0, 8));
  });

  test('405 with Allow, and 415 for JSON, where a form is taken', async () => {
    const wrong = await service.request({ method: 'DELETE', url: '/sign-in' });
    expect(wrong.statusCode).toBe(405);
    expect(wrong.headers.allow).toContain('POST');
    const asJson = await service.request({
      method: 'POST',
      url: '/sign-in',
      headers: json,
      payload: '{"email":{"toString":1}}',
    });
    expect(asJson.statusCode).toBe(415);
  });
});
