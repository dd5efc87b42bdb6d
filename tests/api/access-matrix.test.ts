import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openCall, sendJson } from '../tools/call.ts';
import { filledCall, makeLink } from '../tools/filled-call.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

/**
 * B rows of the service standards, generated from the routes themselves: whoever has no right to a build
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
  // What a phone keeps to go on without a signal; no word of any build is in them.
  /^\/bench-worker\.js$/,
  /^\/bench\/no-signal$/,
  /^\/health\//,
  /^\/reference/,
  /^\/problems/,
  /^\/api\/v1\/compute/,
  /^\/api\/v1\/openapi\.json$/,
  /^\/api\/v1\/sessions$/,
  /^\/b\/:secret$/,
  /^\/first-administrator\/:secret$/,
  /^\/password\/:secret$/,
  /^\/api\/v1\/password-links\/use$/,
];

let service: TestService;
let owner: Person;
let stranger: Person;
let ids: Record<string, string>;
let otherLink: string;
let revokedLink: string;
let otherBench: string;
let revokedBench: string;

beforeAll(async () => {
  service = await testService();
  owner = await service.person();
  stranger = await service.person();
  const mine = await filledCall(service, owner, SECRET_WORDS);
  ids = { ...mine, line: '1' };
  const other = await openCall(service, owner, 'Another build of the same shop');
  const otherMade = await makeLink(service, owner, other.callId);
  otherLink = otherMade.secret;
  otherBench = otherMade.bench;
  const doomed = await makeLink(service, owner, mine.callId);
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
  /^\/(api\/v1\/(calls|me|keys|security-events|sessions\/current|staff|limits|catalogue|account)|calls|calls\/new|account|desk|bench)(\/|$|\?)/;

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
        const response = await service.request({
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

  test('a foreign id and one that never was get the same answer', async () => {
    const foreign = await sendJson(service, stranger.bearer, 'GET', `/api/v1/builds/${ids.buildId}`);
    const missing = await sendJson(service, stranger.bearer, 'GET', `/api/v1/builds/${crypto.randomUUID()}`);
    expect(foreign.status).toBe(404);
    const strip = ({ requestId: _, ...rest }: Record<string, unknown>) => rest;
    expect(strip(foreign.json)).toEqual(strip(missing.json));
  });
});
