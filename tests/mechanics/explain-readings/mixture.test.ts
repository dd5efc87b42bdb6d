import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEFAULT_ASSUMPTIONS } from '../../../server/mechanics/explain-readings/assumptions.ts';
import {
  type Mixture,
  mixtureCdf,
  mixturePercentile,
} from '../../../server/mechanics/explain-readings/mixture.ts';
import { normalCdf, normalDensity } from '../../../server/mechanics/explain-readings/normal.ts';
import {
  againstMark,
  intervalIsTight,
  remainingNames,
} from '../../../server/mechanics/explain-readings/verdicts.ts';

const mixture = (
  ...lines: readonly (readonly [weight: number, mean: number, spread: number])[]
): Mixture => ({
  weights: Float64Array.from(lines, ([weight]) => weight),
  means: Float64Array.from(lines, ([, mean]) => mean),
  spreads: Float64Array.from(lines, ([, , spread]) => spread),
});

describe('the normal distribution, M. Abramowitz, I. Stegun, table 26.1', () => {
  it.each([
    [0, 0.5, 0.3989422804],
    [0.5, 0.6914624613, 0.3520653268],
    [1, 0.8413447461, 0.2419707245],
    [1.96, 0.9750021049, 0.0584409443],
    [3, 0.998650102, 0.0044318484],
  ])('at %f', (z, below, density) => {
    expect(normalCdf(z)).toBeCloseTo(below, 6);
    expect(normalCdf(-z)).toBeCloseTo(1 - below, 6);
    expect(normalDensity(z, 1)).toBeCloseTo(density, 9);
    // Twice as wide it is half as high.
    expect(normalDensity(-2 * z, 2)).toBeCloseTo(density / 2, 9);
  });
});

describe('a weighted sum of normals', () => {
  const two = mixture([0.25, 1, 0.1], [0.75, 3, 0.5]);

  it('has below it each line’s share', () => {
    expect(mixtureCdf(two, 1)).toBeCloseTo(0.25 * 0.5 + 0.75 * normalCdf(-4), 6);
    expect(mixtureCdf(two, 2)).toBeCloseTo(0.25 + 0.75 * normalCdf(-2), 6);
  });

  it('of one line, the percentiles of the table: 1.959964 spreads either way at 2.5 and 97.5 %', () => {
    const one = mixture([1, 1.6, 0.02]);
    expect(mixturePercentile(one, 0.5)).toBeCloseTo(1.6, 8);
    expect(mixturePercentile(one, 0.975)).toBeCloseTo(1.6 + 0.02 * 1.959964, 6);
    expect(mixturePercentile(one, 0.025)).toBeCloseTo(1.6 - 0.02 * 1.959964, 6);
  });

  it('any share lies below its percentile', () => {
    const line = fc.tuple(
      fc.double({ min: 0.05, max: 1, noNaN: true }),
      fc.double({ min: -3, max: 3, noNaN: true }),
      fc.double({ min: 0.01, max: 1, noNaN: true }),
    );
    fc.assert(
      fc.property(
        fc.array(line, { minLength: 1, maxLength: 5 }),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        (lines, p) => {
          const all = lines.reduce((sum, [weight]) => sum + weight, 0);
          const given = mixture(
            ...lines.map(([weight, mean, spread]) => [weight / all, mean, spread] as const),
          );
          expect(Math.abs(mixtureCdf(given, mixturePercentile(given, p)) - p)).toBeLessThan(1e-6);
        },
      ),
    );
  });
});

describe('against the mark: 95 % within 2 % of it agrees, 5 % differs, assumptions of the design note', () => {
  const word = (mean: number, spread: number, noMistake = 0.9) =>
    againstMark(mixture([1, mean, spread]), 1.6, noMistake, DEFAULT_ASSUMPTIONS);
  it('by hand: half-widths of .032 are two spreads of .016, one of .032', () => {
    expect(word(1.6, 0.016)).toBe('agrees');
    expect(word(1.6, 0.0165)).toBe('cannot-tell');
    expect(word(1.6, 0.032)).toBe('cannot-tell');
    // .032 and 1.645 spreads of .01 past the mark leave 5 % within.
    expect(word(1.6 + 0.032 + 0.0166, 0.01)).toBe('differs');
    expect(word(1.6 - 0.032 - 0.0166, 0.01)).toBe('differs');
    expect(word(1.6 + 0.032 + 0.0163, 0.01)).toBe('cannot-tell');
  });

  it('differs only where a mistake is the less likely', () => {
    expect(word(1.8, 0.01, 0.5)).toBe('differs');
    expect(word(1.8, 0.01, 0.49)).toBe('cannot-tell');
    expect(word(1.6, 0.01, 0.1)).toBe('agrees');
  });
});

describe('what remains', () => {
  it('the fewest names that reach the share, likeliest first', () => {
    const names = [
      { ratio: 1.5, probability: 0.125 },
      { ratio: 1.6, probability: 0.5 },
      { ratio: 1.7, probability: 0.25 },
    ];
    expect(remainingNames(names, 0.5)).toEqual([1.6]);
    expect(remainingNames(names, 0.51)).toEqual([1.6, 1.7]);
    expect(remainingNames(names, 0.75)).toEqual([1.6, 1.7]);
    expect(remainingNames(names, 0.95)).toEqual([1.6, 1.7, 1.5]);
  });

  it('an interval is tight by its half-width over the middle', () => {
    const tight = (low: number, high: number) =>
      intervalIsTight({ median: 2, interval95: [low, high] }, 0.0625);
    expect([tight(1.875, 2.125), tight(1.875, 2.2), tight(1.9, 2.1), tight(1.5, 2.5)]).toEqual([
      true,
      false,
      true,
      false,
    ]);
  });
});
