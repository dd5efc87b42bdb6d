import { describe, expect, test } from 'vitest';
import { chooseShims, type ShimWanted } from '../../../server/mechanics/lash/choose-shims.ts';
import { lashGrowths } from '../../../server/mechanics/lash/growth.ts';
import { lashQuestions } from '../../../server/mechanics/lash/lash-questions.ts';
import type { LashLine } from '../../../server/mechanics/lash/types.ts';
import { mostLash } from '../../../server/mechanics/lash/usual-lash.ts';

const IN = 0.0254;
const LIMIT = 0.004 * IN;

const line = (gap: { low?: number; high?: number }, moment: LashLine['moment'] = 'found'): LashLine => ({
  cylinder: 2,
  valve: 'intake',
  gap: {
    ...(gap.low === undefined ? {} : { low: gap.low * IN }),
    ...(gap.high === undefined ? {} : { high: gap.high * IN }),
  },
  moment,
  engine: 'hot',
  nut: 'held',
});
const found = (gap: number) => line({ low: gap, high: gap });
const set = (gap: number) => line({ low: gap, high: gap }, 'set');
const grown = (...lines: readonly LashLine[]) => lashGrowths(lines, LIMIT)[0];

describe('growth of a gap that a gauge bounds on one side', () => {
  test('at the least, where the thickest blade passed; no most is made up', () => {
    const growth = grown(set(0.018), line({ low: 0.025 }));
    expect((growth?.low ?? 0) / IN).toBeCloseTo(0.007, 12);
    expect(growth?.high).toBeUndefined();
  });

  test('at the most, where it did not', () => {
    const growth = grown(set(0.018), line({ high: 0.019 }));
    expect(growth?.low).toBeUndefined();
    expect((growth?.high ?? 0) / IN).toBeCloseTo(0.001, 12);
  });

  test('nothing where the setting was bounded on the other side', () => {
    const growth = grown(line({ high: 0.018 }, 'set'), line({ high: 0.019 }));
    expect([growth?.low, growth?.high]).toEqual([undefined, undefined]);
  });
});

describe('a gap that had grown before it was set again', () => {
  test('the most it grew by counts', () => {
    const growth = grown(set(0.018), found(0.028), found(0.034), set(0.018), found(0.03));
    expect(growth?.again).toBe(true);
    expect((growth?.before ?? 0) / IN).toBeCloseTo(0.016, 12);
  });

  test('growth since the last setting is not growth before it, nor is a setting after the last look', () => {
    for (const lines of [
      [set(0.018), found(0.028), found(0.03), found(0.031)],
      [set(0.018), found(0.028), set(0.018)],
      [set(0.018), found(0.02), set(0.018), found(0.03)],
      [found(0.018)].concat([found(0.03), found(0.031)]),
    ]) {
      const growth = grown(...lines);
      expect(growth?.again).toBe(false);
      expect(growth).not.toHaveProperty('before');
    }
  });
});

test('what it grew by is told to a thousandth, both ends where they differ', () => {
  const asked = (lines: readonly LashLine[]) =>
    lashQuestions(lashGrowths(lines, LIMIT), LIMIT, 'not-known')[0]?.size;
  expect(asked([set(0.018), found(0.0283)])).toBe('It grew by .010 in, where .004 in is ordinary.');
  expect(asked([set(0.018), line({ low: 0.0283, high: 0.0303 })])).toBe(
    'It grew by .010 to .012 in, where .004 in is ordinary.',
  );
  expect(asked([set(0.018), line({ low: 0.0283 })])).toBe('It grew by .010 in, where .004 in is ordinary.');
});

test('the most lash that is usual: .028 of a solid roller, .030 of a flat one or one not named, common practice', () => {
  expect(mostLash('solid-roller') / IN).toBeCloseTo(0.028, 12);
  for (const lifter of ['solid-flat', undefined] as const)
    expect(mostLash(lifter) / IN).toBeCloseTo(0.03, 12);
});

describe('shims', () => {
  const MM = 0.001;
  const WITHIN = 0.02 * MM;
  const valve = (fitted: number, gap: number, wanted = 0.2): ShimWanted => ({
    fitted: fitted * MM,
    found: gap * MM,
    wanted: wanted * MM,
  });
  const choose = (valves: readonly ShimWanted[], stock: readonly number[] = [], within = WITHIN) =>
    chooseShims(
      valves,
      stock.map((each) => each * MM),
      within,
    ).map((each) => each && `${(each.shim / MM).toFixed(2)} ${each.from}`);

  test('one that would hold the valve open is never chosen, however much it is short of', () => {
    // 2.70 with no gap wants .20: 2.90 would stand .20 too high.
    expect(choose([valve(2.7, 0)], [2.9])).toEqual([undefined]);
    expect(choose([valve(2.7, 0)])).toEqual([undefined]);
    expect(choose([valve(2.7, 0)], [2.9, 2.6])).toEqual(['2.60 stock']);
  });

  test('of two that are near enough the nearer one', () => {
    // 2.70 + .30 − .20 = 2.80.
    expect(choose([valve(2.7, 0.3)], [2.79, 2.8])).toEqual(['2.80 stock']);
    expect(choose([valve(2.7, 0.3)], [2.8, 2.81])).toEqual(['2.80 stock']);
  });

  test('shims alike stay where they are; one that is there goes before one that is fetched', () => {
    expect(choose([valve(2.7, 0.2), valve(2.7, 0.2), valve(2.7, 0.2)])).toEqual([
      '2.70 own',
      '2.70 own',
      '2.70 own',
    ]);
    expect(choose([valve(2.7, 0.1), valve(2.6, 0.3)], [2.6, 2.7])).toEqual(['2.60 1', '2.70 0']);
  });

  test('of two in stock that are as near, one from either side, the thinner, however the list goes', () => {
    // In quarters of a metre, which a double has exactly: 1 is wanted, .75 and 1.25 lie as far off.
    const wanted = [{ fitted: 4, found: -2.5, wanted: 0.5 }];
    const shims = (stock: readonly number[]) => chooseShims(wanted, stock, 0).map((each) => each?.shim);
    expect(shims([0.75, 1.25])).toEqual([0.75]);
    expect(shims([1.25, 0.75])).toEqual([0.75]);
  });
});
