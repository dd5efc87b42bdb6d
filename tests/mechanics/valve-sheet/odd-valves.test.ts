import { describe, expect, test } from 'vitest';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { judgeSide } from '../../../server/mechanics/valve-sheet/odd-valves.ts';
import { cylinderOrder } from '../../../server/mechanics/valve-sheet/orders.ts';
import type { SheetValve } from '../../../server/mechanics/valve-sheet/types.ts';

/** Lifts in inches; a made-up engine with a 1.6 on .350 lobes, each read within .001. */
const engine = (change: Readonly<Record<number, { lobe?: number; lift?: number }>> = {}): SheetValve[] =>
  [0.56, 0.561, 0.56, 0.559, 0.561, 0.56, 0.559, 0.56].map((lift, index) => {
    const mine = change[index + 1];
    return {
      cylinder: index + 1,
      valve: 'intake',
      lobeLift: (mine?.lobe ?? 0.35) * IN,
      valveLift: (mine?.lift ?? lift) * IN,
    };
  });

describe('odd valves', () => {
  test('none on an engine that reads alike', () => {
    expect(judgeSide('intake', engine()).odd).toEqual([]);
  });

  test('odd beyond .008 of the siblings’ median, common practice: .551 is, .552 is not', () => {
    expect(judgeSide('intake', engine({ 5: { lift: 0.551 } })).odd.map((odd) => odd.cylinder)).toEqual([5]);
    expect(judgeSide('intake', engine({ 5: { lift: 0.552 } })).odd).toEqual([]);
  });

  test('same lobe, valve differs: rocker or position', () => {
    const [odd] = judgeSide('intake', engine({ 5: { lift: 0.54 } })).odd;
    expect(odd?.cause).toBe('rocker-or-position');
    expect(odd?.outlier).toBe(true);
    expect((odd?.valveOff ?? 0) / IN).toBeCloseTo(-0.02, 12);
  });

  test('lobe differs by what the valve shows: cam or lifter', () => {
    // .008 down at the lobe is .0128 at the valve on a 1.6.
    const [odd] = judgeSide('intake', engine({ 5: { lobe: 0.342, lift: 0.5472 } })).odd;
    expect(odd?.cause).toBe('lobe');
    expect(odd?.words).toMatch(/cam or lifter, not the rocker/);
  });

  test('lobe explains a part of it only: both', () => {
    expect(judgeSide('intake', engine({ 5: { lobe: 0.345, lift: 0.53 } })).odd[0]?.cause).toBe('both');
  });

  test('without its lobe that is asked for first', () => {
    const valves = engine({ 5: { lift: 0.54 } }).map((valve) => {
      const { lobeLift, ...rest } = valve;
      return valve.cylinder === 5 || lobeLift === undefined ? rest : valve;
    });
    expect(judgeSide('intake', valves).odd[0]?.cause).toBe('measure-lobe');
  });

  test('a lobe .010 or more down is worn: a workshop manual’s limit, opening read', () => {
    expect(judgeSide('intake', engine({ 2: { lobe: 0.34 } })).lobesDown.map((each) => each.cylinder)).toEqual(
      [2],
    );
    expect(judgeSide('intake', engine({ 2: { lobe: 0.3405 } })).lobesDown).toEqual([]);
  });

  test('two valves are no siblings enough', () => {
    expect(judgeSide('intake', engine({ 1: { lift: 0.4 } }).slice(0, 2)).odd).toEqual([]);
  });

  test('the other side is left alone', () => {
    expect(judgeSide('exhaust', engine({ 5: { lift: 0.5 } })).odd).toEqual([]);
  });
});

describe('orders', () => {
  test('a firing order however it is written; one that does not fit is no order', () => {
    const order = [1, 8, 4, 3, 6, 5, 7, 2];
    expect(cylinderOrder('1-8-4-3-6-5-7-2', 8)).toEqual(order);
    expect(cylinderOrder('18436572', 8)).toEqual(order);
    expect(cylinderOrder('1 3 5 7 / 2 4 6 8', 8)).toEqual([1, 3, 5, 7, 2, 4, 6, 8]);
    expect(cylinderOrder('1-3-4-2', 8)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    expect(cylinderOrder(undefined, 4)).toEqual([1, 2, 3, 4]);
  });
});
