import { verify } from '@node-rs/argon2';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { addressKey } from '../../server/access/address-key.ts';
import { passwordFault } from '../../server/access/password-rules.ts';
import { hashPassword } from '../../server/access/passwords.ts';
import { sendJson } from '../tools/call.ts';
import { postForm } from '../tools/post-form.ts';
import { problemIn } from '../tools/problem.ts';
import { PASSWORD, type TestService, testService } from '../tools/service.ts';

/** C4 and C5: passwords and attempts at them. */
let service: TestService;
beforeAll(async () => {
  service = await testService({ TRUSTED_PROXIES: '127.0.0.1' });
});
afterAll(() => service.close());

/** An address of 192.0.2.0/24, which nobody has (RFC 5737). */
let last = 0;
function freshAddress(): string {
  last += 1;
  return `192.0.2.${last}`;
}

const attempt = (email: string, password: string, address: string) =>
  service.app.inject({
    method: 'POST',
    url: '/api/v1/sessions',
    headers: { 'content-type': 'application/json', 'x-forwarded-for': address },
    payload: JSON.stringify({ email, password }),
  });

describe('C4: passwords', () => {
  test('kept as argon2id of 19 MiB, two passes, one lane (OWASP Password Storage Cheat Sheet) with their own salt', async () => {
    const [one, other] = await Promise.all([hashPassword(PASSWORD), hashPassword(PASSWORD)]);
    expect(one).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$[A-Za-z0-9+/]{22,}\$[A-Za-z0-9+/]{43}$/);
    expect(one).not.toBe(other);
    expect(await verify(one, PASSWORD)).toBe(true);
    expect(await verify(one, `${PASSWORD} `)).toBe(false);
  });

  test('more hashes than can run wait in turn, and a flood is told to come again instead of waiting for minutes', async () => {
    const flood = await Promise.allSettled(
      Array.from({ length: 130 }, () => hashPassword('a flood of them')),
    );
    const refused = flood.filter((each) => each.status === 'rejected');
    expect(refused.length).toBeGreaterThan(0);
    expect(refused.length).toBeLessThanOrEqual(30);
    for (const each of refused) expect(each.reason).toMatchObject({ code: 'service-busy' });
    expect(await verify(await hashPassword('after the flood'), 'after the flood')).toBe(true);
  }, 120_000);

  test.each([
    ['seven characters', 'abcdefg', true],
    ['eight', 'kq7vzm2x', false],
    ['eight outside the first plane', '\u{1F527}'.repeat(8), false],
    [
      '64 of one kind: no rule of composition (ASVS 5.0, 6.2.5)',
      'correct horse battery staple '.repeat(3).slice(0, 64),
      false,
    ],
    ['a thousand', 'long words '.repeat(90), false],
    ['one of the most common', 'password1', true],
    ['the same in capitals', 'PASSWORD1', true],
    ['another of the most common', 'qwertyuiop', true],
    ['their own address', 'someone@test.invalid', true],
  ])('%s', (_, password, refused) => {
    expect(passwordFault(password, ['someone@test.invalid']).length > 0).toBe(refused);
  });

  test('what is kept of a request never is a fast hash of a password', async () => {
    const person = await service.person();
    const fields = (password: string) => ({
      name: 'New',
      email: `${crypto.randomUUID()}@test.invalid`,
      role: 'desk',
      password,
    });
    const key = { 'idempotency-key': crypto.randomUUID() };
    const body = fields(PASSWORD);
    expect((await sendJson(service, person.bearer, 'POST', '/api/v1/staff', body, key)).status).toBe(201);
    // With another password it is the same request: the password is no part of what is compared.
    const again = await sendJson(
      service,
      person.bearer,
      'POST',
      '/api/v1/staff',
      { ...body, password: 'another one of words' },
      key,
    );
    expect(again.status).toBe(201);
    const other = await sendJson(service, person.bearer, 'POST', '/api/v1/staff', fields(PASSWORD), key);
    expect([other.status, other.json.code]).toEqual([422, 'key-reused']);
  });
});

describe('C5: attempts', () => {
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

  test('an unknown account takes as long as a known one: both cost one hash', async () => {
    const person = await service.person();
    const times: { known: number[]; unknown: number[] } = { known: [], unknown: [] };
    for (let round = 0; round < 9; round += 1) {
      for (const [kind, email] of [
        ['known', person.email],
        ['unknown', 'nobody@test.invalid'],
      ] as const) {
        const began = performance.now();
        await attempt(email, 'not this one at all', freshAddress());
        times[kind].push(performance.now() - began);
      }
    }
    const median = (all: number[]) => all.toSorted((a, b) => a - b)[4] ?? Number.NaN;
    const ratio = median(times.unknown) / median(times.known);
    // Without the hash it would be a tenth or less.
    expect(ratio).toBeGreaterThan(0.4);
    expect(ratio).toBeLessThan(2.5);
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

  test('nobody is locked out by what a stranger tries: from elsewhere the owner gets in', async () => {
    const person = await service.person();
    for (let round = 0; round < 3; round += 1) {
      const address = freshAddress();
      for (let time = 0; time < 9; time += 1) await attempt(person.email, 'not this one at all', address);
    }
    expect((await attempt(person.email, PASSWORD, freshAddress())).statusCode).toBe(201);
  }, 120_000);

  test('the counters are in the database: another process knows them', async () => {
    const person = await service.person();
    const address = freshAddress();
    for (let time = 0; time < 8; time += 1) await attempt(person.email, 'not this one at all', address);
    const { signInLimits } = await import('../../server/access/sign-in-limits.ts');
    const { emailKey } = await import('../../server/access/secrets.ts');
    const other = signInLimits(service.deps.db.pool);
    await expect(other.take(address, emailKey(person.email))).rejects.toMatchObject({
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
        const response = await plain.app.inject({
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

describe('B1, B2: the form', () => {
  test('a refusal is 422 with what was typed byte for byte, its summary above the heading, and no password', async () => {
    const email = ' “Nobody” & <co>@test.invalid ';
    const response = await postForm(
      service,
      '/sign-in',
      { email, password: 'unheard-of words', next: '/desk' },
      {
        headers: { 'x-forwarded-for': freshAddress() },
      },
    );
    expect(response.statusCode).toBe(422);
    expect(response.body).toContain('<title>Error: Sign in');
    expect(response.body.indexOf('error-summary')).toBeLessThan(response.body.indexOf('<h1'));
    const value = /name="email"[^>]* value="([^"]*)"/.exec(response.body)?.[1] ?? '';
    const plain = value
      .replaceAll('&lt;', '<')
      .replaceAll('&gt;', '>')
      .replaceAll('&quot;', '"')
      .replaceAll('&#39;', "'")
      .replaceAll('&amp;', '&');
    expect(plain).toBe(email);
    expect(response.body).not.toContain('unheard-of words');
    expect(response.body).toContain('name="next" value="/desk"');
    expect(response.body).toContain('novalidate');
    expect(response.body).not.toMatch(/maxlength|type="number"|onpaste/);
    expect(response.body).toContain('autocomplete="current-password"');
  });

  test('empty fields are named, each linked from the summary', async () => {
    const response = await postForm(service, '/sign-in', { email: '', password: '' });
    expect(response.statusCode).toBe(422);
    for (const name of ['email', 'password']) expect(response.body).toContain(`href="#f-${name}"`);
  });

  test('too many attempts are told on the page with 429 and when to come again', async () => {
    const address = freshAddress();
    const send = () =>
      postForm(
        service,
        '/sign-in',
        { email: 'one@test.invalid', password: 'x' },
        { headers: { 'x-forwarded-for': address } },
      );
    for (let time = 0; time < 8; time += 1) expect((await send()).statusCode).toBe(422);
    const refused = await send();
    expect(refused.statusCode).toBe(429);
    expect(Number(refused.headers['retry-after'])).toBeGreaterThan(0);
    expect(refused.body).toMatch(/try again in \d+ min/);
  }, 120_000);

  test('a double click signs in, and the person is there once', async () => {
    const person = await service.person();
    const send = () =>
      postForm(
        service,
        '/sign-in',
        { email: person.email, password: PASSWORD },
        { headers: { 'x-forwarded-for': freshAddress() } },
      );
    const both = await Promise.all([send(), send()]);
    expect(both.map((each) => each.statusCode)).toEqual([303, 303]);
    const { rows } = await service.database.asOwner('select count(*)::int as n from staff where email = $1', [
      person.email,
    ]);
    expect(rows[0]).toEqual({ n: 1 });
  });
});
