import { expect, test } from 'vitest';
import { growth, type Share } from './processor-time.ts';

/** Work that takes processor time as a power of what it is given. */
const power = (exponent: number) => async (share: Share) => {
  let sum = 0;
  const rounds = 2e8 * share ** exponent;
  for (let round = 0; round < rounds; round += 1) sum += round % 7;
  return sum;
};

test('work that grows with the square of what it is given is found, and work that grows with it is not', async () => {
  expect(await growth(power(2))).toMatch(/each of twice as much/);
  expect(await growth(power(1))).toBeUndefined();
}, 120_000);
