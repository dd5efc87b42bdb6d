import { describe, expect, test } from 'vitest';
import { correlationOf } from '../../../server/mechanics/uncertainty/correlate.ts';
import { knownFactors } from '../../../server/mechanics/uncertainty/known-factors.ts';
import { sampleOf } from '../../../server/mechanics/uncertainty/sample.ts';
import { coverageFactor } from '../../../server/mechanics/uncertainty/student.ts';
import { expectNear } from '../helpers/near.ts';

describe('readings far from zero keep their digits', () => {
  // Whole numbers, so that each reading is exact and what is lost is lost by the arithmetic.
  const one = [3, 7, 1, 9, 4, 12, 6];
  const two = [5, 6, 2, 11, 3, 9, 10];
  const far = 2 ** 44;

  test('two lists go together as much wherever zero is', () => {
    const near = correlationOf(one, two);
    const moved = (list: readonly number[]) => list.map((value) => value + far);
    expectNear(correlationOf(moved(one), moved(two)), near, 1e-9);
    expectNear(correlationOf(moved(one), two), near, 1e-9);
    expectNear(correlationOf(one, moved(two)), near, 1e-9);
  });

  test('two readings one apart, their middle too fine for a double: s = √½ by hand (JCGM 100:2008, 4.2.2)', () => {
    const { s = 0 } = sampleOf([2 ** 53 - 2, 2 ** 53 - 1]);
    expectNear(s, Math.SQRT1_2, 1e-15);
    // Three: 0, 1 and 1 past a whole number, variance 1/3.
    expectNear(sampleOf([2 ** 53 - 3, 2 ** 53 - 2, 2 ** 53 - 2]).s ?? 0, Math.sqrt(1 / 3), 1e-15);
  });

  test('the mean is the nearest double to the exact one, though the first reading is far from it', () => {
    let off = 0;
    for (let first = 1; first <= 400; first += 1) {
      const values = [first * 1e9 + 0.5, first, 3, 5, 7 * first, 11, 13];
      // Halves of whole numbers under 2⁵³: their sum is exact, and dividing it rounds once.
      const exact = values.reduce((sum, value) => sum + value, 0) / values.length;
      off = Math.max(off, Math.abs(sampleOf(values).mean / exact - 1));
    }
    expect(off).toBeLessThanOrEqual(2.3e-16);
  });
});

describe('factors that are found again', () => {
  test('a level of all but 2⁻⁵³ on one degree of freedom: cot(π·tail), as the Cauchy distribution has it', () => {
    const tail = 2 ** -54;
    expectNear(coverageFactor(1 - 2 * tail, 1), 1 / Math.tan(Math.PI * tail), 1e-9);
  });

  test('are kept, and not without limit', () => {
    knownFactors.clear();
    const factor = coverageFactor(0.9, 3);
    coverageFactor(0.9, 4);
    expect(knownFactors.size).toBe(2);
    expect(coverageFactor(0.9, 3)).toBe(factor);
    for (let index = knownFactors.size; index < 10_000; index += 1) knownFactors.set(`${index}`, 0);
    expect(knownFactors.size).toBe(10_000);
    coverageFactor(0.9, 5);
    expect(knownFactors.size).toBe(1);
    knownFactors.clear();
  });
});
