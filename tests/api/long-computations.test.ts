import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { problemIn } from '../tools/problem.ts';
import { type TestService, testService } from '../tools/service.ts';

/** Work is limited, not only requests: what takes long is done beside the thread that serves pages, and is counted. */
let service: TestService;

beforeAll(async () => {
  service = await testService({ COMPUTE_PER_MINUTE: '2000', TRUSTED_PROXIES: '127.0.0.1' });
});
afterAll(() => service.close());

/** The most that may be asked of it: forty ratios, forty readings. */
const LONGEST = {
  nominals: Array.from({ length: 40 }, (_, at) => 1.3 + at / 100),
  readings: Array.from({ length: 40 }, (_, at) => ({
    of: at % 2 === 0 ? 'lobe-lift' : 'valve-lift',
    value: `${at % 2 === 0 ? 0.3 + at / 1000 : 0.5 + at / 1000} in`,
    spring: 'light',
    lifter: 'solid',
    setUp: Math.floor(at / 10),
  })),
};

const explain = (address: string, payload: object = LONGEST) =>
  service.request({
    method: 'POST',
    url: '/api/v1/compute/explain-readings',
    headers: { 'x-forwarded-for': address },
    payload,
  });

describe('a long computation', () => {
  test('is answered as it would be at once', async () => {
    const answered = await explain('192.0.2.10');
    const here = service.deps.computations.get('explain-readings')?.run(LONGEST, 'inch');
    expect(answered.statusCode).toBe(200);
    expect(answered.json()).toEqual(JSON.parse(JSON.stringify(here)));
  });

  test('that can’t be taken is refused with every fault at its place', async () => {
    const { errors } = problemIn(
      await explain('192.0.2.10', { nominals: [1.5, -1], readings: [{ of: 'valve-lift', value: 'x' }] }),
      422,
      'invalid-input',
    );
    expect(errors?.map(({ pointer }) => pointer).sort()).toEqual(['/nominals/1', '/readings/0/value']);
  });

  test('holds up nobody: what is quick is answered while it runs', async () => {
    const ended: string[] = [];
    const long = Array.from({ length: 12 }, async () => {
      await explain('192.0.2.11');
      ended.push('long');
    });
    const quick = service
      .request({ method: 'POST', url: '/api/v1/compute/lift', payload: { lobeLift: '.35 in', ratio: 1.6 } })
      .then(({ statusCode }) => ended.push(`quick ${statusCode}`));
    await Promise.all([...long, quick]);
    expect(ended[0]).toBe('quick 200');
  });

  test('is refused as busy where too many wait already, and says when to come again', async () => {
    const all = await Promise.all(Array.from({ length: 80 }, (_, at) => explain(`198.51.100.${at}`)));
    const busy = all.filter(({ statusCode }) => statusCode === 503);
    expect(busy.length).toBeGreaterThan(0);
    expect(all.length - busy.length).toBe(all.filter(({ statusCode }) => statusCode === 200).length);
    for (const each of busy) {
      problemIn(each, 503, 'service-busy');
      expect(Number(each.headers['retry-after'])).toBeGreaterThanOrEqual(1);
    }
  });

  test('counts by the time it took: its address has its minute used up before as many requests as short ones', async () => {
    const { computeLimits } = service.deps;
    await computeLimits.take('203.0.113.1');
    computeLimits.charge('203.0.113.1', 4_000);
    await expect(computeLimits.take('203.0.113.1')).rejects.toMatchObject({ code: 'quota-exceeded' });
    // Another address has a minute of its own.
    await computeLimits.take('203.0.113.2');
  });
});

describe('a large body', () => {
  const send = (payload: string) =>
    service.request({
      method: 'POST',
      url: '/api/v1/compute/lift',
      headers: { 'content-type': 'application/json', 'x-forwarded-for': '192.0.2.12' },
      payload,
    });
  const keys = (count: number) => Array.from({ length: count }, (_, at) => `"k${at}":1`).join(',');

  test('is read beside the serving thread: its faults are told as of a small one', async () => {
    const { errors } = problemIn(await send(`{${keys(20_000)}}`), 422, 'invalid-input');
    expect(errors?.some(({ pointer, code }) => pointer === '/k7' && code === 'unknown-field')).toBe(true);
  });

  test('that is not JSON is told so', async () => {
    problemIn(await send(`{${keys(20_000)}`), 400, 'invalid-json');
  });

  test('larger than any input is not read', async () => {
    problemIn(await send(`{${keys(500_000)}}`), 413, 'body-too-large');
  });
});
