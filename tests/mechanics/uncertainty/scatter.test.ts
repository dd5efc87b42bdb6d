import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { correlationOf } from '../../../server/mechanics/uncertainty/correlate.ts';
import { pooledScatter } from '../../../server/mechanics/uncertainty/pooled.ts';
import { sampleOf } from '../../../server/mechanics/uncertainty/sample.ts';
import { coverageFactor } from '../../../server/mechanics/uncertainty/student.ts';

describe('coverage factors of JCGM 100:2008, table G.2', () => {
  test.each([
    [1, 0.9, 6.31],
    [1, 0.95, 12.71],
    [1, 0.99, 63.66],
    [3, 0.6827, 1.2],
    [5, 0.95, 2.57],
    [10, 0.99, 3.17],
    [20, 0.9545, 2.13],
    [50, 0.95, 2.01],
    [100, 0.99, 2.626],
    [Number.POSITIVE_INFINITY, 0.95, 1.96],
    [Number.POSITIVE_INFINITY, 0.99, 2.576],
  ])('ν = %d, p = %d: %d', (freedom, level, wanted) => {
    const places = String(wanted).split('.')[1]?.length ?? 0;
    expect(coverageFactor(level, freedom)).toBeCloseTo(wanted, places);
    // Asked again, it is the same.
    expect(coverageFactor(level, freedom)).toBeCloseTo(wanted, places);
  });
});

/** The plain form of the definition, in exact whole numbers: the second route. */
function plain(values: readonly number[]): { mean: number; variance: number } {
  const n = values.length;
  const sum = values.reduce((all, each) => all + each, 0);
  const squares = values.reduce((all, each) => all + each * each, 0);
  return { mean: sum / n, variance: (n * squares - sum * sum) / (n * (n - 1)) };
}
const whole = fc.integer({ min: -1000, max: 1000 });

test('mean and scatter against the one-pass form in whole numbers', () => {
  fc.assert(
    fc.property(fc.array(whole, { minLength: 2, maxLength: 12 }), (values) => {
      const { n, mean, s = Number.NaN } = sampleOf(values);
      expect(n).toBe(values.length);
      expect(mean).toBeCloseTo(plain(values).mean, 9);
      expect(s ** 2).toBeCloseTo(plain(values).variance, 6);
    }),
  );
});

test('readings far from zero keep their scatter: 1, 2, 3 and a billion on each', () => {
  expect(sampleOf([1e9 + 1, 1e9 + 2, 1e9 + 3]).s).toBeCloseTo(1, 12);
  // .1 and .3 on a million: s = .1·√2, to all the figures that the readings themselves hold.
  expect(sampleOf([1e6 + 0.1, 1e6 + 0.3]).s).toBeCloseTo(0.1 * Math.SQRT2, 9);
});

describe('how far two lists go together (JCGM 100:2008, 5.2.3)', () => {
  test('against the sums of the definition', () => {
    const pairs = fc.array(fc.tuple(whole, whole), { minLength: 2, maxLength: 10 });
    fc.assert(
      fc.property(pairs, (list) => {
        const [x, y] = [list.map(([a]) => a), list.map(([, b]) => b)];
        const both = plain(x.map((each, index) => each + (y[index] ?? 0))).variance;
        const [own, other] = [plain(x).variance, plain(y).variance];
        fc.pre(own > 0 && other > 0);
        // Var(x + y) = Var(x) + Var(y) + 2 Cov(x, y).
        const wanted = (both - own - other) / 2 / Math.sqrt(own * other);
        expect(correlationOf(x, y)).toBeCloseTo(wanted, 9);
      }),
    );
  });

  test.each([
    [[1, 2], [5, 9], 1],
    [[1, 2], [9, 5], -1],
    [[1, 2, 3], [4, 4, 4], 0],
    [[1, 1], [1, 2], 0],
  ])('%j and %j: %d', (first, second, wanted) => {
    expect(correlationOf(first, second)).toBeCloseTo(wanted, 12);
  });

  test.each([
    [[1], [2]],
    [[], []],
    [
      [1, 2, 3],
      [1, 2],
    ],
    [
      [1, 2],
      [1, 2, 3],
    ],
  ])('%j and %j can’t be', (first, second) => {
    expect(() => correlationOf(first, second)).toThrow(RangeError);
  });
});

describe('pooled scatter', () => {
  test('of two groups is that of both about their own means (the sum of squares over its freedom)', () => {
    // Group one: 9 readings of s = 3 (72 over 8); group two: 1, 2, 6 (14 over 2): 86/10.
    const pooled = pooledScatter(sampleOf([1, 2, 6]), { s: 3, degreesOfFreedom: 8 });
    expect(pooled.degreesOfFreedom).toBe(10);
    expect(pooled.s ** 2).toBeCloseTo(8.6, 12);
  });

  test('one reading shows none: the usual one stays as it is', () => {
    expect(pooledScatter(sampleOf([5]), { s: 3, degreesOfFreedom: 8 })).toEqual({
      s: 3,
      degreesOfFreedom: 8,
    });
  });
});
