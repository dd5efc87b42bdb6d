import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/control-chart.ts';
import { controlConstants } from '../../server/mechanics/statistics/control-constants.ts';
import { memberOf } from '../../shared/member.ts';
import { describeContract } from './helpers/bad-input.ts';
import { expectNear } from './helpers/near.ts';
import { runner } from './helpers/runner.ts';
import { expectSoundUnderFire } from './helpers/under-fire.ts';
import { rangeOfNormal } from './statistics/range-distribution.ts';

const { run, number, faults } = runner(computation);
const signals = (given: unknown) => memberOf(run(given).result, 'signals');

describe('constants', () => {
  /** ISO 7870-2 and the control-chart tables of the handbooks, four places. */
  test.each([
    [2, 1.128379, 0.852502, 1.879971, 0, 3.266532],
    [3, 1.692569, 0.888368, 1.023327, 0, 2.574591],
    [4, 2.058751, 0.879808, 0.728597, 0, 2.282052],
    [5, 2.325929, 0.864082, 0.576819, 0, 2.114499],
    [8, 2.847201, 0.819831, 0.372527, 0.136171, 1.863829],
    [16, 3.531983, 0.749908, 0.212345, 0.363042, 1.636958],
  ])('of %d: d2 %d, d3 %d, A2 %d, D3 %d, D4 %d', (size, d2, d3, a2, lowerRange, upperRange) => {
    const found = controlConstants(size);
    for (const [value, wanted] of [
      [found.d2, d2],
      [found.d3, d3],
      [found.a2, a2],
      [found.lowerRange, lowerRange],
      [found.upperRange, upperRange],
    ] as const) {
      expect(Math.abs(value - wanted)).toBeLessThan(1.1e-6);
    }
  });

  test('d2 and d3 of every size agree with the range’s distribution, integrated again (second route)', () => {
    for (let size = 2; size <= 25; size += 1) {
      const { d2, d3 } = rangeOfNormal(size);
      expect(Math.abs(controlConstants(size).d2 - d2)).toBeLessThan(2e-6);
      expect(Math.abs(controlConstants(size).d3 - d3)).toBeLessThan(2e-6);
    }
  });

  test('of two and three in closed form: 2/√π, √(2 − 4/π), 3/√π', () => {
    expectNear(controlConstants(2).d2, 2 / Math.sqrt(Math.PI), 1e-11);
    expectNear(controlConstants(2).d3, Math.sqrt(2 - 4 / Math.PI), 1e-11);
    expectNear(controlConstants(3).d2, 3 / Math.sqrt(Math.PI), 1e-11);
    expect(() => controlConstants(26)).toThrow(RangeError);
    expect(() => controlConstants(1)).toThrow(RangeError);
  });
});

const body = {
  subgroups: [
    [1.502, 1.498, 1.501, 1.497],
    [1.503, 1.499, 1.5, 1.501],
    [1.496, 1.504, 1.5, 1.502],
    [1.498, 1.501, 1.499, 1.5],
  ],
  chart: 'xbar-r',
};

describe('means and ranges', () => {
  test('by hand: mean 1.5000625, mean range .005, limits by A2 .728597 and D4 2.282052', () => {
    expectNear(number(body, 'centre.mean'), 24.001 / 16, 1e-12);
    expectNear(number(body, 'centre.range'), (0.005 + 0.004 + 0.008 + 0.003) / 4, 1e-12);
    expectNear(number(body, 'limits.mean.upper'), 24.001 / 16 + 0.728597 * 0.005, 1e-8);
    expectNear(number(body, 'limits.mean.lower'), 24.001 / 16 - 0.728597 * 0.005, 1e-8);
    expect(number(body, 'limits.range.lower')).toBe(0);
    expectNear(number(body, 'limits.range.upper'), 2.282052 * 0.005, 1e-6);
    expect(signals(body)).toEqual([]);
  });

  test('a mean and a range past their limits are told, each at its subgroup', () => {
    const steady = Array.from({ length: 20 }, (_, index) => [1.5, 1.502, index % 2 === 0 ? 1.501 : 1.499]);
    const shifted = [...steady.slice(0, 19), [1.51, 1.512, 1.511]];
    expect(signals({ subgroups: shifted, chart: 'xbar-r' })).toContainEqual({
      index: 19,
      rule: 'beyond-limits',
    });
    const wide = [[1.49, 1.502, 1.512], ...steady.slice(1)];
    expect(signals({ subgroups: wide, chart: 'xbar-r' })).toContainEqual({
      index: 0,
      rule: 'range-beyond-limits',
    });
  });
});

describe('single values', () => {
  const swing = (n: number) => Array.from({ length: n }, (_, index) => (index % 2 === 0 ? 10 : 11));
  const single = (individuals: readonly number[]) => ({ individuals, chart: 'individuals' });

  test('NIST/SEMATECH e-Handbook, 6.3.2.2 (from memory): 50.81, moving range 1.8778, limits 55.8041 and 45.8159', () => {
    const flow = single([49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1]);
    expectNear(number(flow, 'centre.mean'), 50.81, 1e-12);
    expectNear(number(flow, 'centre.range'), 16.9 / 9, 1e-12);
    // The handbook divides by 1.128, cut from 1.128379.
    expect(Math.abs(number(flow, 'limits.mean.upper') - 55.8041)).toBeLessThan(0.0018);
    expect(Math.abs(number(flow, 'limits.mean.lower') - 45.8159)).toBeLessThan(0.0018);
    expectNear(number(flow, 'limits.range.upper'), (3.266532 * 16.9) / 9, 1e-6);
  });

  test('steady swings give no signal', () => {
    expect(signals(single(swing(20)))).toEqual([]);
  });

  test('one far out: the point, and the range to and from it', () => {
    const spike = swing(24).map((value, index) => (index === 9 ? 20 : value));
    expect(signals(single(spike))).toEqual([
      { index: 9, rule: 'beyond-limits' },
      { index: 9, rule: 'range-beyond-limits' },
      { index: 10, rule: 'range-beyond-limits' },
    ]);
  });

  /** Values about 0 with limits held at ±3 by many steady swings of 1.128 before them. */
  const followedBy = (tail: readonly number[]) => {
    const half = 1.128379167 / 2;
    const steady = Array.from({ length: 400 }, (_, index) => (index % 2 === 0 ? half : -half));
    return signals(single([...steady, ...tail]));
  };

  test('eight in a row on one side, not seven', () => {
    const low = Array.from({ length: 8 }, () => -0.3);
    // The last steady value is on the low side as well: seven more make eight.
    expect(followedBy(low.slice(0, 6))).toEqual([]);
    expect(followedBy(low.slice(0, 7))).toEqual([{ index: 406, rule: 'eight-on-one-side' }]);
  });

  test('two of three beyond two sigma on one side; on two sides it is none', () => {
    expect(followedBy([2.3, 0.4, 2.3])).toContainEqual({ index: 402, rule: 'two-of-three-beyond-two-sigma' });
    expect(followedBy([2.3, 0.4, -2.3])).not.toContainEqual({
      index: 402,
      rule: 'two-of-three-beyond-two-sigma',
    });
    expect(followedBy([2.3, 0.4, -0.4, 2.3])).toEqual([]);
  });

  test('four of five beyond one sigma on one side', () => {
    expect(followedBy([1.3, 1.4, 0.2, 1.3, 1.4])).toEqual([
      { index: 404, rule: 'four-of-five-beyond-one-sigma' },
    ]);
    expect(followedBy([1.3, 1.4, 0.2, 0.3, 1.4])).toEqual([]);
  });

  test('values all alike have limits on the centre and no signal', () => {
    const alike = single(Array.from({ length: 9 }, () => 1.1));
    expect(run(alike).result).toMatchObject({ centre: { mean: 1.1, range: 0 }, signals: [] });
  });

  test('normal values are called out about once in 92 points (second route: run length 91.75 of the four rules)', () => {
    let state = 5;
    const uniform = () => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      return state / 2 ** 32;
    };
    const normal = () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
    const starts: number[] = [];
    for (let chart = 0; chart < 60; chart += 1) {
      const found = signals(single(Array.from({ length: 2000 }, normal)));
      const onValues = Array.isArray(found)
        ? found.filter((each) => memberOf(each, 'rule') !== 'range-beyond-limits')
        : [];
      starts.push(Number(memberOf(onValues[0], 'index')) + 1);
    }
    const mean = starts.reduce((sum, each) => sum + each, 0) / starts.length;
    expect(mean).toBeGreaterThan(60);
    expect(mean).toBeLessThan(130);
  });
});

test('the chart goes with its values when they are moved and stretched', () => {
  const value = fc.integer({ min: -400, max: 400 });
  const groups = fc
    .integer({ min: 2, max: 8 })
    .chain((size) =>
      fc.array(fc.array(value, { minLength: size, maxLength: size }), { minLength: 2, maxLength: 12 }),
    );
  fc.assert(
    fc.property(groups, (subgroups) => {
      const plain = { subgroups, chart: 'xbar-r' };
      const moved = { subgroups: subgroups.map((each) => each.map((one) => one * 2 + 16)), chart: 'xbar-r' };
      for (const path of ['centre.mean', 'limits.mean.lower', 'limits.mean.upper']) {
        expect(Math.abs(number(moved, path) - (number(plain, path) * 2 + 16))).toBeLessThan(1e-8);
      }
      for (const path of ['centre.range', 'limits.range.lower', 'limits.range.upper']) {
        expect(Math.abs(number(moved, path) - number(plain, path) * 2)).toBeLessThan(1e-8);
      }
      expect(signals(moved)).toEqual(signals(plain));
    }),
  );
});

test.each([
  [{ subgroups: [[1, 2]] }, ['/subgroups required']],
  [{ subgroups: [[1, 2], [1]] }, ['/subgroups/1 required']],
  [
    {
      subgroups: [
        [1, 2],
        [1, 2, 3],
      ],
    },
    ['/subgroups/1 not-allowed'],
  ],
  [
    {
      subgroups: [
        [1, 2],
        [1, 'x'],
      ],
    },
    ['/subgroups/1/1 not-a-number'],
  ],
  [{ subgroups: [Array(26).fill(1), Array(26).fill(1)] }, ['/subgroups/0 too-many', '/subgroups/1 too-many']],
  [{ subgroups: Array(2001).fill([1, 2]) }, ['/subgroups too-many']],
  [{ individuals: [1, 2] }, ['/individuals not-allowed']],
  [{ chart: 'individuals' }, ['/individuals required', '/subgroups not-allowed']],
  [{ chart: 'p' }, ['/chart not-allowed']],
])('refuses %#', (change, refused) => {
  expect(faults({ ...body, ...change })).toEqual(refused);
});

test('anything in place of any field is answered or refused at its place', () => {
  expectSoundUnderFire(computation, body);
  expectSoundUnderFire(computation, { individuals: [1, 2, 3], chart: 'individuals' });
});

describeContract(computation, { body });
