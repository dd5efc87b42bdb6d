import { afterAll, beforeAll, expect, test } from 'vitest';
import { problemIn } from '../tools/problem.ts';
import { type TestService, testService } from '../tools/service.ts';

/** A limit by address: what is over it is refused (RFC 6585, 4), and what is refused says when to come again. */
let service: TestService;

beforeAll(async () => {
  service = await testService({ COMPUTE_PER_MINUTE: '60', TRUSTED_PROXIES: '127.0.0.1' });
});
afterAll(() => service.close());

/** As a proxy passes on what came from this address. */
const from = (address: string) => ({ 'x-forwarded-for': address });

const lift = (address: string) =>
  service.request({
    method: 'POST',
    url: '/api/v1/compute/lift',
    headers: from(address),
    payload: { lobeLift: '.35 in', ratio: 1.6 },
  });

test('sixty in a minute are answered, the sixty-first is 429 and says when to come again', async () => {
  for (let count = 1; count <= 60; count += 1) expect((await lift('192.0.2.1')).statusCode).toBe(200);
  const refused = await lift('192.0.2.1');
  problemIn(refused, 429, 'quota-exceeded');
  expect(Number(refused.headers['retry-after'])).toBeGreaterThanOrEqual(1);
  expect(Number(refused.headers['retry-after'])).toBeLessThanOrEqual(60);
  // Another address has a minute of its own, and looking things up is not counted.
  expect((await lift('192.0.2.2')).statusCode).toBe(200);
  const looked = await service.request({ url: '/api/v1/compute/lift', headers: from('192.0.2.1') });
  expect(looked.statusCode).toBe(200);
});

test('sixty that come at one moment are all answered, and no more than sixty', async () => {
  const responses = await Promise.all(Array.from({ length: 80 }, () => lift('192.0.2.3')));
  const counts = (status: number) => responses.filter(({ statusCode }) => statusCode === status).length;
  expect([counts(200), counts(429)]).toEqual([60, 20]);
});

test('a body that is refused counts as well', async () => {
  const empty = () =>
    service.request({
      method: 'POST',
      url: '/api/v1/compute/lift',
      headers: from('192.0.2.4'),
      payload: {},
    });
  const statuses = await Promise.all(Array.from({ length: 61 }, async () => (await empty()).statusCode));
  expect(statuses.filter((status) => status === 422)).toHaveLength(60);
  expect(statuses.filter((status) => status === 429)).toHaveLength(1);
});
