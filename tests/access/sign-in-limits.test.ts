import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { signInLimits } from '../../server/auth/sign-in-limits.ts';
import { Failure } from '../../server/problems/failure.ts';
import { freshAddress } from '../tools/fresh-address.ts';
import { cookieIn, postForm } from '../tools/post-form.ts';
import { PASSWORD, type TestService, testService } from '../tools/service.ts';

/** Guessing is slowed down, by account and by address, and shuts nobody out for good. */
let service: TestService;
beforeAll(async () => {
  service = await testService({ TRUSTED_PROXIES: '127.0.0.1' });
});
afterAll(() => service.close());

const signIn = (email: string, password: string, address: string, cookies: Record<string, string> = {}) =>
  postForm(
    service,
    '/sign-in',
    { email, password, next: '/account' },
    { cookies, headers: { 'x-forwarded-for': address } },
  );

/** As if the time had passed until which the next attempt has to wait. */
const waited = () => service.database.asOwner(`update rate_limit set expire = 0 where key like '%-next:%'`);

describe('the counters', () => {
  test('people who sign in rightly from one address do not slow it down; wrong attempts do', async () => {
    const limits = signInLimits(service.deps.db.pool);
    const attempt = (account: string) => ({ address: '203.0.113.7', account });
    for (let person = 0; person < 60; person += 1) {
      await limits.take(attempt(`person-${person}`));
      await limits.forgive(attempt(`person-${person}`));
    }
    const wrong = async () => {
      for (let guess = 0; guess < 60; guess += 1) await limits.take(attempt(`guess-${guess}`));
    };
    await expect(wrong()).rejects.toBeInstanceOf(Failure);
  });

  test('however many come at once, past the free ones one gets through at a time', async () => {
    const limits = signInLimits(service.deps.db.pool);
    const at = await Promise.allSettled(
      Array.from({ length: 40 }, () => limits.take({ address: freshAddress(), account: 'at once' })),
    );
    expect(at.filter(({ status }) => status === 'fulfilled')).toHaveLength(8);
  });

  test('the time to wait grows and has an end', async () => {
    const limits = signInLimits(service.deps.db.pool);
    const asked: number[] = [];
    for (let time = 0; time < 14; time += 1) {
      await limits.take({ address: freshAddress(), account: 'slower' }).catch(() => undefined);
      const { rows } = await service.database.asOwner(
        `select expire from rate_limit where key like 'sign-in-account-next:slower'`,
      );
      const expire = Number(rows[0]?.expire ?? 0);
      if (expire > 0) asked.push(Math.round((expire - Date.now()) / 1000));
      await waited();
    }
    expect(asked.length).toBeGreaterThan(4);
    expect(asked[0]).toBeLessThanOrEqual(15);
    expect(Math.max(...asked)).toBeGreaterThan(60);
    expect(Math.max(...asked)).toBeLessThanOrEqual(120);
  });
});

describe('an account that is tried from everywhere', () => {
  test('is slowed down for strangers, and its owner comes in at once in a browser that is known', async () => {
    const person = await service.person();
    const first = await signIn(person.email, PASSWORD, freshAddress());
    const known = { 'benchcall-known': cookieIn(first, 'benchcall-known').value };
    const codes: number[] = [];
    for (let time = 0; time < 10; time += 1)
      codes.push((await signIn(person.email, 'not this one at all', freshAddress())).statusCode);
    expect(codes.slice(0, 8)).toEqual(Array(8).fill(422));
    expect(codes.slice(8)).toEqual([429, 429]);
    const owner = await signIn(person.email, PASSWORD, freshAddress(), known);
    expect([owner.statusCode, owner.headers.location]).toEqual([303, '/account']);
    // In another browser they wait as everybody does, and then come in.
    const elsewhere = await signIn(person.email, PASSWORD, freshAddress());
    expect(elsewhere.statusCode).toBe(429);
    expect(Number(elsewhere.headers['retry-after'])).toBeLessThanOrEqual(120);
    await waited();
    expect((await signIn(person.email, PASSWORD, freshAddress())).statusCode).toBe(303);
  }, 120_000);

  test('a browser that is known to another account, or to nobody, helps nothing', async () => {
    const person = await service.person();
    const other = await service.person();
    const signed = await signIn(other.email, PASSWORD, freshAddress());
    const device = cookieIn(signed, 'benchcall-known').value;
    for (let time = 0; time < 8; time += 1) await signIn(person.email, 'not this one', freshAddress());
    for (const cookie of [device, `bcd_${'a'.repeat(43)}`, 'x'])
      expect(
        (await signIn(person.email, PASSWORD, freshAddress(), { 'benchcall-known': cookie })).statusCode,
      ).toBe(429);
  }, 120_000);

  test('the password can’t be guessed faster in a browser that is known', async () => {
    const person = await service.person();
    const signed = await signIn(person.email, PASSWORD, freshAddress());
    const known = { 'benchcall-known': cookieIn(signed, 'benchcall-known').value };
    const codes: number[] = [];
    for (let time = 0; time < 10; time += 1)
      codes.push((await signIn(person.email, 'not this one', freshAddress(), known)).statusCode);
    expect(codes.slice(8)).toEqual([429, 429]);
  }, 120_000);
});

describe('where all come from one address', () => {
  test('strangers slow one another down, and a browser that is known waits for nobody', async () => {
    const address = freshAddress();
    const person = await service.person();
    const signed = await signIn(person.email, PASSWORD, address);
    const known = { 'benchcall-known': cookieIn(signed, 'benchcall-known').value };
    const limits = signInLimits(service.deps.db.pool);
    for (let guess = 0; guess < 50; guess += 1) await limits.take({ address, account: `stranger-${guess}` });
    const refused = await signIn('nobody@test.invalid', PASSWORD, address);
    expect(refused.statusCode).toBe(429);
    expect(Number(refused.headers['retry-after'])).toBeLessThanOrEqual(15);
    expect((await signIn(person.email, PASSWORD, address, known)).statusCode).toBe(303);
  }, 120_000);
});
