import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { buildOf, cleanSetUp, lobe, passesOf } from './plain.ts';

const ON_INTAKE = { assumedRatio: 1.6, intake: lobe(0.35), exhaust: lobe(0.362) };

/** Lifts and lobes at a dial with these error limits, in inches. */
const readWith = (lifts: readonly number[], lobes: readonly number[], errorLimit: number): Evidence =>
  buildOf([], {
    card: ON_INTAKE,
    setUps: [
      {
        ...cleanSetUp,
        lobeSource: lobes.length === 0 ? 'card' : 'indicator',
        errorLimit: errorLimit * 0.0254,
        lobeErrorLimit: errorLimit * 0.0254,
      },
    ],
    passes: [...passesOf('lobe-lift', lobes), ...passesOf('valve-lift', lifts)],
  });

function widthOf(evidence: Evidence): number {
  const { low, high } = assess(evidence).quantities.find(({ id }) => id === 'set-up-ratio:set-up-1') ?? {};
  return (high ?? Number.NaN) - (low ?? Number.NaN);
}

/** Scatter of single passes with nothing wrong: .0012 in, common practice, no published source. */
const USUAL = 0.0012;

/** Passes about a middle whose own standard deviation (n − 1) is this, by hand: ±s, or ±s and the middle. */
const scattered = (middle: number, n: 2 | 3, s: number): number[] =>
  n === 2 ? [middle - s / Math.SQRT2, middle + s / Math.SQRT2] : [middle - s, middle, middle + s];

describe('one pass never looks surer than several', () => {
  const errorLimit = fc.double({ min: 0.0005, max: 0.0035, noNaN: true });
  const scatter = fc.double({ min: 0, max: USUAL, noNaN: true });
  const middle = fc.double({ min: 0.45, max: 0.62, noNaN: true });

  test('passes that scatter no more than usual are never told wider than one of them', () => {
    fc.assert(
      fc.property(middle, scatter, errorLimit, fc.constantFrom(2 as const, 3 as const), (v, s, limit, n) => {
        const one = widthOf(readWith([v], [], limit));
        expect(widthOf(readWith(scattered(v, n, s), [], limit))).toBeLessThanOrEqual(one * (1 + 1e-9));
      }),
      { numRuns: 60 },
    );
  });

  test('nor where the lobe was read as often', () => {
    fc.assert(
      fc.property(middle, scatter, errorLimit, (v, s, limit) => {
        const one = widthOf(readWith([v], [0.35], limit));
        const three = widthOf(readWith(scattered(v, 3, s), scattered(0.35, 3, s), limit));
        expect(three).toBeLessThanOrEqual(one * (1 + 1e-9));
      }),
      { numRuns: 60 },
    );
  });

  test('a fine dial, ±.001: one pass ± .015, three ± .009, by hand', () => {
    // u² = (.001²/3 + .001²/12 + s²/n)/L² + (R/L)²(.001²/3 + .001²/12 + s²/n) − 2·.5·R/L²·.001²/3, L .350, R 1.6, with
    // s .0012 at 8 degrees of freedom, and of three equal passes s² = 8·.0012²/10 at 10; ν by Welch–Satterthwaite,
    // t(18) = 2.101 and t(48) = 2.011 from a table of Student’s t. JCGM 100:2008, 4.2.4, 5.2.2, G.4.
    const half = (lifts: number[], lobes: number[]) => widthOf(readWith(lifts, lobes, 0.001)) / 2;
    const u = (s2: number, n: number) => {
      const b = 0.001 ** 2 / 12 + s2 / n;
      const limit = 0.001 ** 2 / 3;
      return Math.sqrt((limit + b + 1.6 ** 2 * (limit + b) - 1.6 * limit) / 0.35 ** 2);
    };
    const nu = (s2: number, n: number, own: number) => {
      const part = s2 / n / 0.35 ** 2;
      return u(s2, n) ** 4 / ((part ** 2 + (1.6 ** 2 * part) ** 2) / own);
    };
    const one = 0.0012 ** 2;
    const three = (8 * one) / 10;
    expect(Math.floor(nu(one, 1, 8))).toBe(18);
    expect(half([0.56], [0.35])).toBeCloseTo(2.101 * u(one, 1), 5);
    expect(Math.floor(nu(three, 3, 10))).toBe(48);
    expect(half([0.56, 0.56, 0.56], [0.35, 0.35, 0.35])).toBeCloseTo(2.011 * u(three, 3), 5);
  });

  test('a word from one pass names what it lacks', () => {
    const [one, three] = [[0.56], [0.56, 0.5605, 0.56]].map((lifts) =>
      assess(readWith(lifts, [], 0.0025)).judgements.find(({ against }) => against.to === 'mark'),
    );
    expect(one?.word).toBe('agrees');
    expect(one?.sentence).toMatch(
      /from one pass: agrees .* Two more passes of the valve lift show whether it repeats\.$/,
    );
    expect(three?.sentence).not.toMatch(/one pass|repeats/);
    const lobeOnce = assess(readWith([0.56, 0.56, 0.56], [0.35], 0.0025)).headlines[0]?.sentence;
    expect(lobeOnce).toContain('Two more passes of the lobe lift show whether it repeats.');
  });
});

describe('the word, the interval and the weighing say the same', () => {
  test('over lifts from 12 % under to 12 % over', () => {
    const lifts = Array.from({ length: 49 }, (_, index) => 0.493 + index * 0.0028);
    const words = lifts.map((lift) => {
      const { judgements, quantities, explanations } = assess(readWith([lift, lift, lift], [], 0.0025));
      const word = judgements.find(({ against }) => against.to === 'mark')?.word;
      const { low = 0, high = 0 } = quantities.find(({ id }) => id.startsWith('arm-ratio:')) ?? {};
      const [least, most] = explanations[0]?.result?.ratio.interval95 ?? [0, 9];
      // Within 2 % of 1.6: 1.568 to 1.632, by hand; a thousandth is the last figure told.
      if (word === 'agrees') {
        expect(low).toBeGreaterThanOrEqual(1.568 - 0.0005);
        expect(high).toBeLessThanOrEqual(1.632 + 0.0005);
      }
      if (word === 'differs') {
        expect(high < 1.568 + 0.0005 || low > 1.632 - 0.0005).toBe(true);
        // Of what is weighed no more than .05 is left within the band.
        expect(least > 1.568 && most < 1.632).toBe(false);
      }
      return word;
    });
    expect(new Set(words)).toContain('agrees');
    expect(new Set(words)).toContain('cannot-tell');
  });
});
