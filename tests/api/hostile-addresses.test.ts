import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { keepReading, openCall, startSetUp } from '../tools/call.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

/** No route answers 500, whatever stands in its address, its query or its form. */
let service: TestService;
let person: Person;
let buildId: string;
let callId: string;
let setUpId: string;

beforeAll(async () => {
  service = await testService({ COMPUTE_PER_MINUTE: '1000000' });
  person = await service.person();
  ({ buildId, callId } = await openCall(service, person));
  setUpId = await startSetUp(service, person, buildId);
});

afterAll(() => service.close());

/** Texts that have broken services: none is an error of ours, wherever it is sent. */
const HOSTILE = [
  '\u0000',
  '%',
  '\\',
  "'; drop table build; --",
  '99999999999999999999',
  '-1',
  '1e999',
  'NaN',
  '\uFFFF',
  '[object Object]',
  '../../etc/passwd',
  '\r\nset-cookie: x=1',
];

/** For the sweeps over every route. */
const FEW = ['\u0000', '%', "'; drop table build; --", '99999999999999999999'];

describe('no 500', () => {
  test('every route that is read, with hostile texts in each place of its address', async () => {
    const broken: string[] = [];
    const routes = service.app.declaredRoutes.filter(
      ({ method, url }) =>
        method === 'GET' && !/\/live|^\/(reference|assets|problems)|^\/api\/v1\/(compute|openapi)/.test(url),
    );
    for (const { url } of routes) {
      for (const text of FEW) {
        const hostile = encodeURIComponent(text);
        const known = url
          .replace('/calls/:callId', `/calls/${callId}`)
          .replace('/calls/:id', `/calls/${callId}`)
          .replace('/builds/:id', `/builds/${buildId}`);
        const query = ['search', 'before', 'after', 'limit', 'next', 'step', 'units', 'q', 'from', 'name']
          .map((name) => `${name}=${hostile}`)
          .join('&');
        for (const address of [
          known.replace(/:[A-Za-z]+/g, hostile),
          `${known.replace(/:[A-Za-z]+/g, '1')}?${query}`,
        ]) {
          const response = await service.request({
            url: address,
            headers: person.bearer,
            cookies: person.cookies,
          });
          if (response.statusCode >= 500)
            broken.push(`${response.statusCode} ${url} ${JSON.stringify(text)}`);
        }
      }
    }
    expect(routes.length).toBeGreaterThan(20);
    expect(broken).toEqual([]);
  }, 180_000);

  test('each parameter of the query alone', async () => {
    const broken: string[] = [];
    for (const name of ['search', 'before', 'limit']) {
      for (const text of HOSTILE) {
        for (const place of ['/api/v1/calls', '/calls']) {
          const url = `${place}?${name}=${encodeURIComponent(text)}`;
          const { statusCode } = await service.request({
            url,
            headers: person.bearer,
            cookies: person.cookies,
          });
          if (statusCode >= 500) broken.push(`${statusCode} ${url}`);
        }
      }
    }
    expect(broken).toEqual([]);
  });

  test('every form, posted with hostile texts in fields it has and has not', async () => {
    const broken: string[] = [];
    const readingId = await keepReading(service, person, buildId, setUpId, 'valve-lift', '.842 in');
    const forms = service.app.declaredRoutes.filter(
      ({ method, url }) => method === 'POST' && !url.startsWith('/api/') && url !== '/sign-out',
    );
    const names = [
      'key',
      'email',
      'password',
      'name',
      'goal',
      'buildLabel',
      'reason',
      'kind',
      'peak',
      'days',
      'person',
      'key-id',
      'version',
      'valve',
      'cylinder',
      'armId',
      'constructor',
      '__proto__',
      'next',
      'spec.engine.description',
      'reading',
      'linkId',
    ];
    for (const { url } of forms) {
      for (const text of FEW) {
        const address = url
          .replace(':readingId', readingId)
          .replace(':setUpId', setUpId)
          .replace(':secret', 'bcl_x')
          .replace(/:(id|callId)\b/, callId)
          .replace(/:[A-Za-z]+/g, crypto.randomUUID());
        const response = await service.request({
          method: 'POST',
          url: address,
          headers: { 'content-type': 'application/x-www-form-urlencoded' },
          cookies: person.cookies,
          payload: names.map((name) => `${encodeURIComponent(name)}=${encodeURIComponent(text)}`).join('&'),
        });
        if (response.statusCode >= 500) broken.push(`${response.statusCode} ${url} ${JSON.stringify(text)}`);
      }
    }
    expect(forms.length).toBeGreaterThan(10);
    expect(broken).toEqual([]);
  }, 180_000);
});
