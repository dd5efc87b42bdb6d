import { describe, expect, test } from 'vitest';
import { adjustersWord } from '../../../server/mechanics/consequences/adjusters.ts';
import { studCautions } from '../../../server/mechanics/consequences/cautions.ts';
import { figureRows } from '../../../server/mechanics/consequences/figure-rows.ts';
import type { ConsequenceInput, FigureRow } from '../../../server/mechanics/consequences/types.ts';
import { IN, LBF } from '../../../server/mechanics/kit/si.ts';
import { CASE } from './case.ts';

const row = (input: ConsequenceInput, name: FigureRow['name']): FigureRow => {
  const found = figureRows(input).find((each) => each.name === name);
  if (found === undefined) throw new Error(`no ${name}`);
  return found;
};

describe('figures before and after', () => {
  test('net lift is lobe times ratio: definition, common practice', () => {
    const lift = row(CASE, 'net-lift');
    expect((lift.before ?? 0) / IN).toBeCloseTo(0.46875, 12);
    expect((lift.after ?? 0) / IN).toBeCloseTo(0.5, 12);
    // Lobe lift times the half-width of the ratio: .3125 · .006, by hand.
    expect((lift.halfWidth ?? 0) / IN).toBeCloseTo(0.001875, 12);
  });

  test('lash at the valve tip comes off: .350 × 1.6 − .016 = .544, check value derived by hand', () => {
    const lift = row({ ...CASE, lobeLift: 0.35 * IN, lash: 0.016 * IN }, 'net-lift');
    expect((lift.after ?? 0) / IN).toBeCloseTo(0.544, 12);
  });

  test('a hydraulic lifter has no lash, whatever the card says', () => {
    const lift = row({ ...CASE, lifter: 'hydraulic', lobeLift: 0.35 * IN, lash: 0.016 * IN }, 'net-lift');
    expect((lift.after ?? 0) / IN).toBeCloseTo(0.56, 12);
  });

  test('a ratio from a lift that carries the lash has none taken off again: .544 read is .544 net', () => {
    const after = { value: 0.544 / 0.35, halfWidth: 0.01, spring: 'light', lashIn: true } as const;
    const lift = row({ ...CASE, after, lobeLift: 0.35 * IN, lash: 0.016 * IN }, 'net-lift');
    expect((lift.after ?? 0) / IN).toBeCloseTo(0.544, 12);
    expect((lift.before ?? 0) / IN).toBeCloseTo(0.35 * 1.5 - 0.016, 12);
  });

  test('a load is no finer than the spring: ±10 % of it, common practice, no published source', () => {
    // 10 % of 305 is 30.5; the ratio brings 350·.3125·.006 = .65625, by hand.
    expect((row(CASE, 'open-load').halfWidth ?? 0) / LBF).toBeCloseTo(Math.hypot(30.5, 0.65625), 9);
    expect((row(CASE, 'pushrod-load').halfWidth ?? 0) / LBF).toBeGreaterThan(0.1 * 305 * 1.6);
  });

  test('open load 130 + 350 × .500 = 305 lbf: linear spring, Shigley, Mechanical Engineering Design, 10-1', () => {
    const load = row(CASE, 'open-load');
    expect((load.after ?? 0) / LBF).toBeCloseTo(305, 9);
    expect((load.before ?? 0) / LBF).toBeCloseTo(130 + 350 * 0.46875, 9);
  });

  test('pushrod and stud carry F·r and F·(1 + r): statics; 500 × 1.5 = 750 as a trade page has it, and 1250', () => {
    const input: ConsequenceInput = {
      ...CASE,
      after: { value: 1.5, halfWidth: 0.006, spring: 'light' },
      lobeLift: 0.4 * IN,
      spring: { ...CASE.spring, seatLoad: 290 * LBF },
    };
    // 290 + 350 × .6 = 500 lbf at the valve.
    expect((row(input, 'pushrod-load').after ?? 0) / LBF).toBeCloseTo(750, 9);
    expect((row(input, 'pivot-load').after ?? 0) / LBF).toBeCloseTo(1250, 9);
  });

  test('least sweep of a .600 lift on a 1.60 arm is .028377: check table, confirmed there by a scan', () => {
    const input: ConsequenceInput = { ...CASE, lobeLift: 0.375 * IN, pivotToTip: 1.6 * IN };
    expect((row(input, 'least-sweep').after ?? 0) / IN).toBeCloseTo(0.028377, 6);
    // Half the net lift, as set-up pages have it.
    expect((row(input, 'pivot-offset').after ?? 0) / IN).toBeCloseTo(0.3, 12);
  });

  test('a figure that lacks something names it and stays out; the others are there', () => {
    const { rate: _, ...spring } = CASE.spring;
    const load = row({ ...CASE, spring }, 'open-load');
    expect(load.after).toBeUndefined();
    expect(load.missing).toEqual(['spring rate']);
    expect(row({ ...CASE, spring }, 'net-lift').missing).toEqual([]);
  });

  test('lift that takes up the whole installed height is told, not thrown', () => {
    const load = row({ ...CASE, spring: { ...CASE.spring, installedHeight: 0.4 * IN } }, 'open-load');
    expect(load.after).toBeUndefined();
    expect(load.missing.join()).toMatch(/figures that fit together/);
  });

  test('every adjuster is named, with what a turn does now: (1 + r) pitches at the valve, check values 8', () => {
    expect(adjustersWord([CASE], true)).toBe(
      'Set every adjuster again once they are fitted: the lash it had belongs to the other arms. One turn of the nut moves the gap at the valve by 2.60 pitches of its thread instead of 2.50.',
    );
    expect(adjustersWord([{ ...CASE, mounting: 'shaft' }], false)).toBe(
      'One turn of a screw over the pushrod moves the gap at the valve by 1.60 pitches of its thread instead of 1.50.',
    );
  });

  test('what is the same to the last digit is told once, not instead of itself', () => {
    const after = { value: 1.502, halfWidth: 0.006, spring: 'light' } as const;
    expect(adjustersWord([{ ...CASE, after }], false)).toBe(
      'One turn of the nut moves the gap at the valve by 2.50 pitches of its thread.',
    );
  });

  test('valves that differ by a digit are told in one sentence, from the least to the most', () => {
    const after = { value: 1.612, halfWidth: 0.006, spring: 'light' } as const;
    expect(adjustersWord([{ ...CASE, after }, CASE], false)).toBe(
      'One turn of the nut moves the gap at the valve by 2.60 to 2.61 pitches of its thread instead of 2.50.',
    );
  });

  test('with no lash known there is a gross lift and no net one: .3125 × 1.6 = .500', () => {
    const { lash: _, ...input } = CASE;
    expect((row(input, 'gross-lift').after ?? 0) / IN).toBeCloseTo(0.5, 12);
    expect(row(input, 'net-lift').after).toBeUndefined();
    expect(row(input, 'net-lift').missing).toEqual(['lash']);
    // Loads are at the most lift then: 130 + 350 × .500 = 305 lbf.
    expect((row(input, 'open-load').after ?? 0) / LBF).toBeCloseTo(305, 9);
  });

  test('a lift that carries the lash is net, and no gross one follows from it', () => {
    const after = { value: 0.544 / 0.35, halfWidth: 0.01, spring: 'light', lashIn: true } as const;
    const lift = row({ ...CASE, after, lobeLift: 0.35 * IN, lash: 0.016 * IN }, 'gross-lift');
    expect(lift.after).toBeUndefined();
    expect(lift.missing).toEqual(['the setting of the lash that was left in']);
  });

  test('the cup moves toward the stud: 1.48 × (1/1.5 − 1/1.6) = .0617, trade practice 2.12', () => {
    expect((row(CASE, 'cup-move').after ?? 0) / IN).toBeCloseTo(0.061_667, 6);
    expect(row(CASE, 'cup-move').before).toBeUndefined();
  });

  test('a word on the stud by its size: 3/8 commonly below 300 to 350 open, common practice, no published source', () => {
    const of = (size: '5/16' | '3/8' | '7/16' | undefined, pounds: number) =>
      studCautions({ mounting: 'stud', openLoad: pounds * LBF, ...(size === undefined ? {} : { size }) });
    expect(of('3/8', 299)).toEqual([]);
    expect(of('3/8', 336)).toEqual([
      'The spring may open at up to 335 lb: 3/8 studs are commonly kept below about 300 to 350 lb open. The stud maker’s figure goes first.',
    ]);
    expect(of('7/16', 600)).toEqual([]);
    expect(of('5/16', 336)[0]).toMatch(/a 5\/16 stud is smaller/);
    expect(of(undefined, 336)[0]).toMatch(/Say which stud is in it/);
    expect(studCautions({ mounting: 'shaft', openLoad: 900 * LBF })).toEqual([]);
  });
});
