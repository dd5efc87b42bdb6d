import { describe, expect, test } from 'vitest';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { ratioOfFigures, together } from '../../../server/mechanics/valve-sheet/figures.ts';
import { expectNear, expectSame } from '../helpers/near.ts';

describe('passes of one thing together', () => {
  test('figures: their mean and their spread, or the last one where they sink', () => {
    const passes = [0.56, 0.562, 0.567].map((value) => ({ value }));
    expectSame(together(passes, true), { value: 0.563, passes: 3, spread: 0.007 });
    expectSame(together(passes, false), { value: 0.567, passes: 3, spread: 0.007 });
    expectSame(together([{ value: 0.56 }], true), { value: 0.56, passes: 1 });
    expect(together([], true)).toBeUndefined();
  });

  test('bounds are narrowed by each other; a figure beside them moves nothing', () => {
    const bounds = [
      { low: 0.2, high: 0.3 },
      { low: 0.25, high: 0.4 },
    ];
    expect(together(bounds, true)).toEqual({ low: 0.25, high: 0.3, passes: 2 });
    expect(together([{ value: 0.1 }, ...bounds, { value: 0.9 }], true)).toEqual({
      low: 0.25,
      high: 0.3,
      passes: 2,
    });
    expect(together([{ value: 0.27 }, { low: 0.2, high: 0.3 }], false)).toEqual({
      low: 0.2,
      high: 0.3,
      passes: 1,
    });
  });

  test('bounds that contradict or only touch each other leave all that either allows', () => {
    for (const high of [0.25, 0.3]) {
      const two = [
        { low: 0.2, high },
        { low: 0.3, high: 0.4 },
      ];
      expect(together(two, true)).toEqual({ low: 0.2, high: 0.4, passes: 2 });
      expect(together(two.toReversed(), true)).toEqual({ low: 0.2, high: 0.4, passes: 2 });
    }
  });

  test('one-sided gauges bound one side: passes below, or stops above', () => {
    expect(together([{ low: 0.2 }, { low: 0.25 }], true)).toEqual({ low: 0.25, passes: 2 });
    expect(together([{ high: 0.2 }, { high: 0.25 }], true)).toEqual({ high: 0.2, passes: 2 });
    expect(together([{ high: 0.25 }, { low: 0.2 }], true)).toEqual({ low: 0.2, high: 0.25, passes: 2 });
  });
});

describe('the ratio of two figures', () => {
  const figure = (value: number) => ({ value: value * IN, passes: 1 });
  const bounds = (low?: number, high?: number) => ({
    ...(low === undefined ? {} : { low: low * IN }),
    ...(high === undefined ? {} : { high: high * IN }),
    passes: 1,
  });

  test('.560 over .350, each within .002: 1.600 ± 1.6·√((.002/.56)² + (.002/.35)²) = .01078, by hand', () => {
    const { value = 0, low = 0, high = 0 } = ratioOfFigures(figure(0.56), figure(0.35));
    expectNear(value, 1.6);
    expect(value - low).toBeCloseTo(0.010782, 6);
    expect(high - value).toBeCloseTo(0.010782, 6);
  });

  test('with tools of their own: ± .014 on the valve alone is ± .04', () => {
    const { low = 0, high = 0 } = ratioOfFigures(figure(0.56), figure(0.35), { valve: 0.014 * IN, lobe: 0 });
    expectNear(low, 1.56);
    expectNear(high, 1.64);
  });

  test('interval arithmetic where one of them is bounds: the least over the most, the most over the least', () => {
    expectSame(ratioOfFigures(figure(0.56), bounds(0.34, 0.36)), { low: 0.558 / 0.36, high: 0.562 / 0.34 });
    expectSame(ratioOfFigures(bounds(0.55, 0.57), figure(0.35)), { low: 0.55 / 0.352, high: 0.57 / 0.348 });
    expectSame(ratioOfFigures(bounds(0.55, 0.57), bounds(0.34, 0.36)), {
      low: 0.55 / 0.36,
      high: 0.57 / 0.34,
    });
  });

  test('bounded on one side alone the ratio is too; a lobe that may be nothing bounds nothing above', () => {
    expectSame(ratioOfFigures(bounds(0.55), bounds(0.34, 0.36)), { low: 0.55 / 0.36 });
    expectSame(ratioOfFigures(bounds(undefined, 0.57), bounds(0.34, 0.36)), { high: 0.57 / 0.34 });
    expectSame(ratioOfFigures(bounds(0.55, 0.57), bounds(0.34)), { high: 0.57 / 0.34 });
    expectSame(ratioOfFigures(bounds(0.55, 0.57), bounds(undefined, 0.36)), { low: 0.55 / 0.36 });
    expectSame(ratioOfFigures(bounds(0.55, 0.57), bounds(0, 0.36)), { low: 0.55 / 0.36 });
    expectSame(ratioOfFigures(bounds(0.55, 0.57), bounds(-0.01, 0.36)), { low: 0.55 / 0.36 });
    expect(ratioOfFigures(bounds(0.55), bounds(0.34))).toEqual({});
  });
});
