import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { correlationOf } from '../../../server/mechanics/uncertainty/correlate.ts';
import { sampleOf } from '../../../server/mechanics/uncertainty/sample.ts';
import { expectNear } from '../helpers/near.ts';
import { UNIVARIATE } from './nist-univariate.ts';

/** The form of the textbooks, in one pass: what must not be used. */
function onePass(values: readonly number[]): number {
  const n = values.length;
  const sum = values.reduce((total, value) => total + value, 0);
  const squares = values.reduce((total, value) => total + value ** 2, 0);
  return Math.sqrt((squares - sum ** 2 / n) / (n - 1));
}

describe('NIST Statistical Reference Datasets, univariate, certified to 15 digits', () => {
  test.each(UNIVARIATE)('$name', ({ values, mean, s, r1, within }) => {
    const sample = sampleOf(values);
    expectNear(sample.mean, mean, 1e-14);
    expectNear(sample.s ?? 0, s, within);
    const lagged = values.slice(1).reduce((sum, value, index) => {
      return sum + (value - sample.mean) * ((values[index] ?? 0) - sample.mean);
    }, 0);
    expectNear(lagged / ((sample.s ?? 0) ** 2 * (values.length - 1)), r1, Math.max(1e-9, within));
  });

  test('the one-pass form misses NumAcc3 by a twentieth or more, and NumAcc4 wholly', () => {
    const [third, fourth] = UNIVARIATE.filter(({ name }) => name === 'NumAcc3' || name === 'NumAcc4');
    expect(Math.abs(onePass(third?.values ?? []) - 0.1)).toBeGreaterThan(0.005);
    expect(Math.abs(onePass(fourth?.values ?? []) - 0.1)).not.toBeLessThan(0.05);
  });
});

test('JCGM 100:2008, 4.4.3: mean 100.145, s 1.489, s/√n .333', () => {
  const temperatures = [
    96.9, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07, 100.33, 100.42, 100.68, 100.95,
    101.11, 101.2, 101.57, 101.84, 102.36, 102.72,
  ];
  const { mean, s = 0, n } = sampleOf(temperatures);
  expect(n).toBe(20);
  expect(mean.toFixed(3)).toBe('100.145');
  expect(s.toFixed(3)).toBe('1.489');
  expect((s / Math.sqrt(n)).toFixed(3)).toBe('0.333');
  // With n in place of n − 1 the scatter would be 1.451.
  expect(s * Math.sqrt(19 / 20)).toBeLessThan(1.452);
});

test('readings that are all alike have exactly their own value and no scatter', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -1e6, max: 1e6, noNaN: true }),
      fc.integer({ min: 2, max: 50 }),
      (value, n) => {
        expect(sampleOf(Array.from({ length: n }, () => value))).toEqual({ n, mean: value + 0, s: 0 });
      },
    ),
  );
});

test('moving all readings moves the mean alone; stretching them stretches both', () => {
  const reading = fc.double({ min: -5, max: 5, noNaN: true });
  fc.assert(
    fc.property(
      fc.array(reading, { minLength: 2, maxLength: 40 }),
      fc.integer({ min: -1000, max: 1000 }),
      (list, by) => {
        const before = sampleOf(list);
        const moved = sampleOf(list.map((value) => value + by));
        expect(Math.abs(moved.mean - before.mean - by)).toBeLessThan(1e-10);
        expect(Math.abs((moved.s ?? 0) - (before.s ?? 0))).toBeLessThan(1e-10);
        const stretched = sampleOf(list.map((value) => value * 4));
        expect(stretched.s).toBeCloseTo(4 * (before.s ?? 0), 12);
      },
    ),
  );
});

test('one reading has no scatter to give; none, no mean', () => {
  expect(sampleOf([0.5])).toEqual({ n: 1, mean: 0.5 });
  expect(() => sampleOf([])).toThrow(RangeError);
});

test('a correlation needs two lists as long as each other, and is zero where one does not vary', () => {
  expect(() => correlationOf([1, 2], [1])).toThrow(RangeError);
  expect(correlationOf([1, 2, 3], [5, 5, 5])).toBe(0);
  expectNear(correlationOf([1, 2, 3], [2, 4, 6]), 1, 1e-15);
  expectNear(correlationOf([1, 2, 3], [3, 2, 1]), -1, 1e-15);
});
