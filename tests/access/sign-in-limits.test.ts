import { afterAll, beforeAll, expect, test } from 'vitest';
import { signInLimits } from '../../server/auth/sign-in-limits.ts';
import { Failure } from '../../server/problems/failure.ts';
import { type TestService, testService } from '../tools/service.ts';

let service: TestService;
beforeAll(async () => {
  service = await testService();
});
afterAll(() => service.close());

test('people who sign in rightly from one address do not lock it; wrong attempts do', async () => {
  const limits = signInLimits(service.deps.db.pool);
  for (let person = 0; person < 60; person += 1) {
    await limits.take('203.0.113.7', `person-${person}`);
    await limits.forgive('203.0.113.7', `person-${person}`);
  }
  const wrong = async () => {
    for (let guess = 0; guess < 60; guess += 1) await limits.take('203.0.113.7', `guess-${guess}`);
  };
  await expect(wrong()).rejects.toBeInstanceOf(Failure);
});
