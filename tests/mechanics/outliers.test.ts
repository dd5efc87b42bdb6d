import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/outliers.ts';
import { grubbsCritical } from '../../server/mechanics/statistics/grubbs.ts';
import { medianOf } from '../../server/mechanics/statistics/median.ts';
import { memberOf } from '../../shared/member.ts';
import { describeContract } from './helpers/bad-input.ts';
import { expectNear } from './helpers/near.ts';
import { runner } from './helpers/runner.ts';
import { expectSoundUnderFire } from './helpers/under-fire.ts';

const { run, number, faults } = runner(computation);

const NIST = [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57];
const SIXTEEN = [
  1.502, 1.498, 1.501, 1.497, 1.503, 1.499, 1.5, 1.531, 1.496, 1.504, 1.5, 1.502, 1.498, 1.501, 1.499, 1.5,
];
const body = { values: NIST, method: 'median-mad' };
const flagged = (given: unknown) => memberOf(run(given).result, 'flagged');

describe('NIST/SEMATECH e-Handbook, 1.3.5.17.1: eight masses, 245.57 stands out', () => {
  const grubbs = { values: NIST, method: 'grubbs', tail: 'upper' };

  test('G 2.4687, critical 2.032 on the upper side at 5 %: flagged', () => {
    expectNear(number(grubbs, 'scores.7'), 2.468765, 1e-6);
    expectNear(number(grubbs, 'critical'), 2.031652, 1e-6);
    expect(flagged(grubbs)).toEqual([7]);
  });

  test('on both sides the critical value is 2.126645, not 2.031652; on the lower nothing is flagged', () => {
    expectNear(number({ ...grubbs, tail: 'two' }, 'critical'), 2.126645, 1e-6);
    const { tail: _left, ...unsaid } = grubbs;
    expectNear(number(unsaid, 'critical'), 2.126645, 1e-6);
    expect(flagged({ ...grubbs, tail: 'lower' })).toEqual([]);
  });

  test('by the median: 201.37, MAD .995, scores −1.396452 … 29.962714', () => {
    const wanted = [-1.396452, -1.247317, -0.79991, -0.372839, 0.372839, 0.393176, 0.54909, 29.962714];
    for (const [index, score] of wanted.entries()) {
      expect(Math.abs(number(body, `scores.${index}`) - score)).toBeLessThan(1e-6);
    }
    expect(number(body, 'critical')).toBe(3.5);
    expect(flagged(body)).toEqual([7]);
    expect(flagged({ ...body, tail: 'lower' })).toEqual([]);
  });
});

describe('sixteen valves, one of them 1.531 (calculated apart)', () => {
  test('by the median 10.45475 and −1.34900; Grubbs 3.612293 past 2.585676', () => {
    const median = { values: SIXTEEN, method: 'median-mad' };
    expectNear(number(median, 'scores.7'), 10.45475, 1e-7);
    expectNear(number(median, 'scores.8'), -1.349, 1e-7);
    const grubbs = { values: SIXTEEN, method: 'grubbs' };
    expectNear(number(grubbs, 'scores.7'), 3.612293, 1e-6);
    expect([flagged(median), flagged(grubbs)]).toEqual([[7], [7]]);
  });
});

test.each([
  [8, 'upper', 0.05, 2.031652],
  [8, 'upper', 0.01, 2.220833],
  [8, 'two', 0.05, 2.126645],
  [8, 'two', 0.01, 2.274365],
  [16, 'lower', 0.05, 2.443272],
  [16, 'lower', 0.01, 2.746963],
  [16, 'two', 0.05, 2.585676],
  [16, 'two', 0.01, 2.85208],
] as const)(
  'critical value of %d values, %s, %d: %d (Grubbs’ tables, to six places)',
  (n, tail, alpha, wanted) => {
    expect(Math.abs(grubbsCritical(n, alpha, tail) - wanted)).toBeLessThan(6e-7);
  },
);

test('with more than half alike the mean distance stands in for a MAD of zero: 6.383, by hand', () => {
  const alike = { values: [1.5, 1.5, 1.5, 1.5, 1.56, 1.5, 1.5, 1.5], method: 'median-mad' };
  expectNear(number(alike, 'scores.4'), 0.06 / (1.253314 * 0.0075), 1e-9);
  expect(flagged(alike)).toEqual([4]);
  expect(run(alike).assumptions.join()).toContain('alike');
});

test.each(['median-mad', 'grubbs'])('all alike, nothing stands out by %s', (method) => {
  expect(run({ values: [1.1, 1.1, 1.1], method }).result).toMatchObject({ scores: [0, 0, 0], flagged: [] });
});

const values = fc.array(fc.integer({ min: -500, max: 500 }), { minLength: 3, maxLength: 40 });

test('the median leaves half on each side; no Grubbs score passes (n − 1)/√n', () => {
  fc.assert(
    fc.property(values, (list) => {
      const middle = medianOf(list);
      expect(list.filter((each) => each < middle).length).toBeLessThanOrEqual(list.length / 2);
      expect(list.filter((each) => each > middle).length).toBeLessThanOrEqual(list.length / 2);
      const most = (list.length - 1) / Math.sqrt(list.length);
      for (const [index] of list.entries()) {
        const score = number({ values: list, method: 'grubbs' }, `scores.${index}`);
        expect(Math.abs(score)).toBeLessThanOrEqual(most * (1 + 1e-12));
      }
      expect(grubbsCritical(list.length, 1e-200, 'two')).toBeLessThanOrEqual(most);
    }),
  );
});

test('scores don’t change with the unit, and turn their sign with the values', () => {
  fc.assert(
    fc.property(values, fc.constantFrom('grubbs', 'median-mad'), (list, method) => {
      for (const [index] of list.entries()) {
        const score = number({ values: list, method }, `scores.${index}`);
        const turned = number({ values: list.map((each) => each * -25.4), method }, `scores.${index}`);
        expect(Math.abs(score + turned)).toBeLessThan(1e-9 * Math.max(1, Math.abs(score)));
      }
    }),
  );
});

/** Uniform numbers that are the same at every run. */
function uniform(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

test('of normal samples of ten, Grubbs flags one in twenty (second route)', () => {
  const next = uniform(11);
  const normal = () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
  const draws = 4000;
  let hits = 0;
  for (let draw = 0; draw < draws; draw += 1) {
    const sample = Array.from({ length: 10 }, normal);
    if (JSON.stringify(flagged({ values: sample, method: 'grubbs' })) !== '[]') hits += 1;
  }
  // One deviation of the count is .0034.
  expect(Math.abs(hits / draws - 0.05)).toBeLessThan(0.014);
});

test.each([
  [{ values: [1, 2] }, ['/values required']],
  [{ values: [] }, ['/values required']],
  [{ values: [1, 2, 'x', Number.NaN] }, ['/values/2 not-a-number', '/values/3 out-of-range']],
  [{ values: [1, 2, 1e308] }, ['/values/2 impossible-input']],
  [{ values: [1, 2, { value: 1, unit: 'in' }] }, ['/values/2 wrong-dimension']],
  [{ values: Array(2001).fill(1) }, ['/values too-many']],
  [{ values: Array(100_000).fill(1) }, ['/values too-many']],
  [{ method: 'guess' }, ['/method not-allowed']],
  [{ tail: 'both' }, ['/tail not-allowed']],
  [{ alpha: 0 }, ['/alpha out-of-range']],
  [{ alpha: 1 }, ['/alpha out-of-range']],
])('refuses %#', (change, refused) => {
  expect(faults({ ...body, ...change })).toEqual(refused);
});

test('anything in place of any field is answered or refused at its place', () => {
  expectSoundUnderFire(computation, { ...body, tail: 'two', alpha: 0.05 });
});

describeContract(computation, { body });
