import { describe, expect, test } from 'vitest';
import { leastOf } from '../../../server/mechanics/gap-scan/least.ts';
import { dipOf } from '../../../server/mechanics/gap-scan/parabola.ts';
import { smoothedLeast } from '../../../server/mechanics/gap-scan/smooth.ts';
import type { Station } from '../../../server/mechanics/gap-scan/stations.ts';
import { DEG } from '../../../server/mechanics/kit/si.ts';
import { expectNear } from '../helpers/near.ts';

/** Crank angles in degrees from one to another. */
const every = (step: number, from: number, to: number): number[] =>
  Array.from({ length: Math.round((to - from) / step) + 1 }, (_, at) => from + at * step);

/** Gaps in any unit at crank angles in degrees. */
const stations = (degrees: readonly number[], gap: (degree: number) => number): Station[] =>
  degrees.map((degree, index) => ({
    crankAngle: degree * DEG,
    gap: gap(degree),
    highest: gap(degree),
    index,
  }));

/** Rises by .0002 times the square of the degrees from its least, .1. */
const dip = (where: number) => (degree: number) => 0.1 + 0.0002 * (degree - where) ** 2;

/**
 * Weights in the middle of a parabola by least squares through evenly spaced points, thirty-fifths for five of them:
 * A. Savitzky, M. Golay, Analytical Chemistry 36 (1964), 1627–1639, table I (from memory). The weight of the middle
 * one is the variance there.
 */
const FIVE = [-3, 12, 17, 12, -3].map((weight) => weight / 35);
const VARIANCE = { five: 17 / 35, seven: 7 / 21, thirteen: 25 / 143 } as const;

describe('a parabola by least squares about the least', () => {
  test.each([
    ['every degree', 1, VARIANCE.thirteen],
    ['every 2°: the two at 6° itself count', 2, VARIANCE.seven],
    ['every 3°', 3, VARIANCE.five],
  ])('%s: the parabola that was read, and the variance of the tables', (_name, step, variance) => {
    const found = smoothedLeast(stations(every(step, -12, 12), dip(0)), 0, 1e-9);
    expectNear(found?.least ?? 0, 0.1, 1e-12);
    expect(Math.abs(found?.crankAngle ?? 1)).toBeLessThan(1e-9);
    expectNear(found?.spread ?? 0, Math.sqrt(variance));
    expectNear((found?.bend ?? 0) * DEG ** 2, 0.0002);
  });

  test('four points 3° apart: Σx⁴/(4Σx⁴ − (Σx²)²) = 830.25/1296, by hand', () => {
    const found = smoothedLeast(stations([-4.5, -1.5, 1.5, 4.5], dip(0)), -1.5 * DEG, 1e-9);
    expect(found?.fitted).toHaveLength(4);
    expectNear(found?.spread ?? 0, Math.sqrt(830.25 / 1296));
  });

  test('readings that scatter evenly to both sides: the least is their weighted mean', () => {
    const gaps = [0.105, 0.1002, 0.1006, 0.1002, 0.105];
    const found = smoothedLeast(
      stations(every(3, -6, 6), (degree) => gaps[degree / 3 + 2] ?? 0),
      0,
      0.01,
    );
    const wanted = gaps.reduce((sum, gap, at) => sum + gap * (FIVE[at] ?? 0), 0);
    expectNear(found?.least ?? 0, wanted, 1e-12);
  });

  test('begun 3° beside it, and where nothing was read: it comes to the readings about the least', () => {
    const found = smoothedLeast(stations(every(1, -20, 20), dip(2)), 5 * DEG, 1e-9);
    expectNear(found?.crankAngle ?? 0, 2 * DEG);
    expectNear(found?.least ?? 0, 0.1, 1e-12);
    expectNear(found?.spread ?? 0, Math.sqrt(VARIANCE.thirteen));
    expect(found?.fitted.map(({ index }) => index)).toEqual(every(1, 16, 28));
  });

  test('a curve that is no parabola: looked for about the place found, the place is found again', () => {
    const skew = (degree: number) => 0.1 + 0.0002 * degree ** 2 + 0.00001 * degree ** 3;
    const list = stations(every(0.5, -15, 15), skew);
    const found = smoothedLeast(list, 3 * DEG, 0.01);
    const again = smoothedLeast(list, found?.crankAngle ?? 0, 0.01);
    expect(Math.abs((found?.crankAngle ?? 1) - (again?.crankAngle ?? 2))).toBeLessThan(1e-6 * DEG);
    expect(found?.fitted).toEqual(again?.fitted);
  });
});

describe('no such parabola', () => {
  const none = (degrees: readonly number[], gap: (degree: number) => number, start = 0) =>
    expect(smoothedLeast(stations(degrees, gap), start * DEG, 1)).toBeUndefined();

  test('fewer than four readings within 6°', () => {
    none([-12, -6, 0, 6.1, 12], dip(0));
    none([-6.1, -3, 0, 3, 6.1], dip(0));
  });

  test('readings that bend down, lie on a line, or are all alike', () => {
    none(every(2, -6, 6), (degree) => 0.1 - 0.0002 * degree ** 2);
    none(every(2, -6, 6), () => 0.125);
  });

  test('a least outside of what was read', () => {
    none(every(1, -5, 5), dip(9));
    none(every(1, -5, 5), dip(-9));
  });

  test('readings that the wheel hardly tells apart', () => {
    none([5, 5.000002, 5.000004, 5.000006], () => 0.1);
  });
});

test('one reading too far under the curve is no scatter: 1.5 half-widths', () => {
  // The middle one of thirteen, lowered by d, lies d·(1 − 25/143) under the curve: 1.5 u at d = 1.8178 u.
  const lowered = (by: number) =>
    smoothedLeast(
      stations(every(1, -12, 12), (degree) => dip(0)(degree) - (degree === 0 ? by : 0)),
      0,
      0.001,
    );
  expect(lowered(0.00181)).toBeDefined();
  expect(lowered(0.00183)).toBeUndefined();
  expect(lowered(-0.002)).toBeDefined();
});

describe('three readings', () => {
  test('Newton’s second difference at steps of 2 and 4: 1/48 for rises of .2 and .1', () => {
    // Slopes −.1 and .025 over 6: .0208333; its least lies at 3.4, 1.4 on from the middle reading.
    const { bend, shift } = dipOf([0.2, 0.1], [2, 4]);
    expectNear(bend, 0.125 / 6);
    expectNear(shift, 1.4);
  });

  test('all alike: the middle one stands by itself', () => {
    expect(dipOf([0, 0], [1, 2])).toEqual({ below: 0, shift: 0, weights: [0, 1, 0], bend: 0 });
  });

  test('readings taken as exact: the parabola through three, though more lie near', () => {
    const scan = leastOf(stations(every(1, -10, 10), dip(0.25)));
    expect(scan.edge === 'none' ? scan.fitted.map(({ index }) => index) : []).toEqual([9, 10, 11]);
    expect(leastOf(stations(every(1, -10, 10), dip(0.25)), 0)).toEqual(scan);
    const smoothed = leastOf(stations(every(1, -10, 10), dip(0.25)), 0.001);
    expect(smoothed.edge === 'none' ? smoothed.fitted.length : 0).toBe(12);
  });

  test('of two dips alike the first stands', () => {
    const gaps = [0.12, 0.1, 0.12, 0.1, 0.12];
    expect(leastOf(stations(every(2, 0, 8), (degree) => gaps[degree / 2] ?? 0)).reading.index).toBe(1);
  });

  test('no readings are no scan', () => {
    expect(() => leastOf([])).toThrow(RangeError);
  });
});
