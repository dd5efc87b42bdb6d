import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { toldShares } from '../../../server/mechanics/ratio-readings/told-shares.ts';

/**
 * Whole numbers that keep their sum: the method of the largest remainder, each number rounded down and what is left
 * given one by one to the largest rests (any handbook of apportionment; the cases are worked by hand).
 */
const line = (source: string, share: number) => ({ source, share });
const plain = (...shares: number[]) => shares.map((share, at) => line(`part ${at}`, share));

describe('shares of a budget in whole per cent', () => {
  test.each([
    // .5 and .5 and .6 and .4 over their whole per cents: two are left, and the first of equals is before the second.
    [
      [0.305, 0.305, 0.206, 0.184],
      [31, 30, 21, 18],
    ],
    [
      [1 / 3, 1 / 3, 1 / 3],
      [34, 33, 33],
    ],
    [
      [1 / 6, 1 / 3, 1 / 2],
      [17, 33, 50],
    ],
    [
      [0.5, 0.25, 0.25],
      [50, 25, 25],
    ],
    // In doubles .29 · 100 is 28.999…; it is told as 29.
    [
      [0.29, 0.57, 0.14],
      [29, 57, 14],
    ],
    [[1], [100]],
    [
      [0, 1],
      [0, 100],
    ],
  ])('%j: %j', (shares, told) => {
    expect(toldShares(plain(...shares))).toEqual(told);
  });

  test('any shares of one whole: together a hundred, each within one of what it is', () => {
    const weights = fc.array(fc.integer({ min: 0, max: 1000 }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(weights, (drawn) => {
        const sum = drawn.reduce((all, each) => all + each, 0);
        fc.pre(sum > 0);
        const shares = drawn.map((each) => each / sum);
        const told = toldShares(plain(...shares)).map((each) => each ?? Number.NaN);
        expect(told.reduce((all, each) => all + each, 0)).toBe(100);
        for (const [at, each] of told.entries()) {
          expect(Math.abs(each - 100 * (shares[at] ?? 0))).toBeLessThan(1);
          // Of two shares the greater is not told as the smaller.
          const greater = told.filter((_, other) => (shares[other] ?? 0) > (shares[at] ?? 0) + 1e-9);
          for (const other of greater) expect(other).toBeGreaterThanOrEqual(each);
        }
      }),
    );
  });
});

describe('what cancels because one indicator read both', () => {
  test('is taken off the two error limits in proportion, and has no share itself (by hand)', () => {
    // .20 + .90 + .30 − .40 = 1: of the limits’ 1.20 two thirds are left, .60 and .20.
    expect(
      toldShares([
        line('valve lift, repeatability', 0.2),
        line('valve lift, error limit', 0.9),
        line('lobe lift, error limit', 0.3),
        line('one indicator for both, errors that cancel', -0.4),
      ]),
    ).toEqual([20, 60, 20, undefined]);
  });

  test('the order of the lines is kept; a limit of zero is told as zero', () => {
    expect(
      toldShares([
        line('errors that cancel', -0.25),
        line('valve lift, error limit', 1.25),
        line('lobe lift, error limit', 0),
      ]),
    ).toEqual([undefined, 100, 0]);
  });

  test('only what ends as an error limit is one', () => {
    expect(
      toldShares([
        line('error limit of the dial, read twice', 0.5),
        line('valve lift, error limit', 0.75),
        line('errors that cancel', -0.25),
      ]),
    ).toEqual([50, 50, undefined]);
  });

  test('without a limit nothing is taken off', () => {
    expect(
      toldShares([line('valve lift, repeatability', 0.75), line('valve lift, graduation', 0.25)]),
    ).toEqual([75, 25]);
  });
});
