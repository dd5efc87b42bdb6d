import { verify } from '@node-rs/argon2';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { passwordFault } from '../../server/auth/password-rules.ts';
import { hashPassword, verifyPassword } from '../../server/auth/passwords.ts';
import { sendJson } from '../tools/call.ts';
import { PASSWORD, type TestService, testService } from '../tools/service.ts';

let service: TestService;
beforeAll(async () => {
  service = await testService();
});
afterAll(() => service.close());

describe('passwords', () => {
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

  test('strangers who flood the sign-in hold up nobody who is known: they keep a place of their own', async () => {
    const ended: string[] = [];
    const strangers = Array.from({ length: 40 }, async () => {
      await verifyPassword(undefined, 'whatever it is', 'anybody');
      ended.push('stranger');
    });
    const known = Array.from({ length: 3 }, async () => {
      await verifyPassword(undefined, 'whatever it is', 'known');
      ended.push('known');
    });
    await Promise.all([...strangers, ...known]);
    expect(ended.lastIndexOf('known')).toBeLessThan(10);
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
