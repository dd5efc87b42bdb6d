import { hash, verify } from '@node-rs/argon2';
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest';
import { addressKey } from '../../server/auth/address-key.ts';
import { newSecret } from '../../server/auth/secrets.ts';
import { sendJson } from '../tools/call.ts';
import { freshAddress } from '../tools/fresh-address.ts';
import { postForm } from '../tools/post-form.ts';
import { problemIn } from '../tools/problem.ts';
import { PASSWORD, type TestService, testService } from '../tools/service.ts';

/** Attempts at passwords. What they cost is counted. */
vi.mock('@node-rs/argon2', { spy: true });

let service: TestService;

beforeAll(async () => {
  service = await testService({ TRUSTED_PROXIES: '127.0.0.1' });
});

afterAll(() => service.close());

const attempt = (email: string, password: string, address: string) =>
  service.request({
    method: 'POST',
    url: '/api/v1/sessions',
    headers: { 'content-type': 'application/json', 'x-forwarded-for': address },
    payload: JSON.stringify({ email, password }),
  });

describe('attempts', () => {
  test('unknown, wrong and disabled get the same answer to the letter', async () => {
    const boss = await service.person();
    const off = await service.person({ shopId: boss.shopId });
    await sendJson(service, boss.bearer, 'POST', `/api/v1/staff/${off.staffId}/disable`, {});
    const told = [];
    for (const [email, password] of [
      ['nobody@test.invalid', PASSWORD],
      [boss.email, 'not this one at all'],
      [off.email, PASSWORD],
    ] as const) {
      const { requestId: _, ...rest } = problemIn(
        await attempt(email, password, freshAddress()),
        401,
        'sign-in-refused',
      );
      told.push(rest);
    }
    expect(told[1]).toEqual(told[0]);
    expect(told[2]).toEqual(told[0]);
  });

  test('an unknown account costs what a known one does: one hash of the same parameters', async () => {
    const person = await service.person();
    const parameters = (stored: string | Uint8Array) => /^\$argon2id\$v=\d+\$[^$]+/.exec(String(stored))?.[0];
    const costOf = async (email: string) => {
      const before = vi.mocked(verify).mock.calls.length;
      await attempt(email, 'not this one at all', freshAddress());
      return vi
        .mocked(verify)
        .mock.calls.slice(before)
        .map(([stored]) => parameters(stored));
    };
    const known = await costOf(person.email);
    expect(known).toEqual(['$argon2id$v=19$m=19456,t=2,p=1']);
    expect(await costOf('nobody@test.invalid')).toEqual(known);
  }, 120_000);

  test('links that somebody made up cost no hash, however many come at once', async () => {
    const before = [vi.mocked(hash).mock.calls.length, vi.mocked(verify).mock.calls.length];
    const person = { shop: 'A shop', name: 'First', email: 'first@test.invalid', password: PASSWORD };
    const answers = await Promise.all(
      Array.from({ length: 120 }, () =>
        postForm(service, `/first-administrator/${newSecret('first').secret}`, person),
      ),
    );
    expect(new Set(answers.map(({ statusCode }) => statusCode))).toEqual(new Set([404]));
    expect([vi.mocked(hash).mock.calls.length, vi.mocked(verify).mock.calls.length]).toEqual(before);
  }, 120_000);

  test('eight from one address at one account, then 429 with the time to wait, also with the right password', async () => {
    const person = await service.person();
    const address = freshAddress();
    for (let time = 0; time < 8; time += 1)
      expect((await attempt(person.email, 'not this one at all', address)).statusCode).toBe(401);
    const refused = await attempt(person.email, PASSWORD, address);
    problemIn(refused, 429, 'quota-exceeded');
    expect(Number(refused.headers['retry-after'])).toBeGreaterThan(0);
    // Written otherwise it is the same account.
    const same = await attempt(` ${person.email.toUpperCase()} `, PASSWORD, address);
    expect(same.statusCode).toBe(429);
  }, 120_000);

  test('the counters are in the database: another process knows them', async () => {
    const person = await service.person();
    const address = freshAddress();
    for (let time = 0; time < 8; time += 1) await attempt(person.email, 'not this one at all', address);
    const { signInLimits } = await import('../../server/auth/sign-in-limits.ts');
    const { emailKey } = await import('../../server/auth/secrets.ts');
    const other = signInLimits(service.deps.db.pool);
    await expect(other.take({ address, account: emailKey(person.email) })).rejects.toMatchObject({
      code: 'quota-exceeded',
    });
    const { rows } = await service.database.asOwner('select key from rate_limit');
    expect(rows.map(({ key }) => String(key)).join()).not.toContain(address);
  }, 120_000);

  test('fifty from one address at whatever accounts, then 429', async () => {
    const address = freshAddress();
    const codes: number[] = [];
    for (let time = 0; time < 51; time += 1)
      codes.push((await attempt(`${time}@test.invalid`, 'x', address)).statusCode);
    expect(codes.slice(0, 50).every((code) => code === 401)).toBe(true);
    expect(codes[50]).toBe(429);
  }, 180_000);

  test('a client’s own X-Forwarded-For is not believed: without a named proxy the connection counts', async () => {
    const plain = await testService();
    try {
      const codes: number[] = [];
      for (let time = 0; time < 9; time += 1) {
        const response = await plain.request({
          method: 'POST',
          url: '/api/v1/sessions',
          headers: { 'content-type': 'application/json', 'x-forwarded-for': freshAddress() },
          payload: JSON.stringify({ email: 'one@test.invalid', password: 'x' }),
        });
        codes.push(response.statusCode);
      }
      expect(codes.at(-1)).toBe(429);
    } finally {
      await plain.close();
    }
  }, 120_000);

  test('an IPv6 network of one customer is one address (RFC 6177)', () => {
    const same = [
      '2001:db8:1:2::1',
      '2001:db8:1:2:ffff:ffff:ffff:ffff',
      '2001:0DB8:0001:0002::',
      '2001:db8:1:2::1%eth0',
    ];
    expect(new Set(same.map(addressKey)).size).toBe(1);
    expect(addressKey('2001:db8:1:3::1')).not.toBe(addressKey('2001:db8:1:2::1'));
    expect(addressKey('::ffff:192.0.2.1')).toBe(addressKey('192.0.2.1'));
    expect(addressKey('192.0.2.2')).not.toBe(addressKey('192.0.2.1'));
    expect(addressKey('::1')).toBe(addressKey('0:0:0:0:0:0:0:1'));
  });
});
