import { describe, expect, test } from 'vitest';
import type { ValveRatio } from '../../../server/mechanics/assessment/common/valve-ratio.ts';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { leastSweepOf } from '../../../server/mechanics/assessment/marks/least-sweep.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN } from './plain-build.ts';
import { ARM, RATIO } from './ratio-of-one.ts';

/**
 * The least that a roller sweeps: its pivot set at half the lift, the arm R passes square in the middle, and the
 * roller's centre moves R − √(R² − (h/2)²) across the stem (by Pythagoras).
 */
const sweep = (arm: number, lift: number) => arm - Math.sqrt(arm ** 2 - (lift / 2) ** 2);

const of = (more: Partial<Evidence>, ratios: readonly ValveRatio[] = [RATIO], cylinder = 1) =>
  leastSweepOf({ ...PLAIN, ...ARM, ...more }, { cylinder, valve: 'intake' }, ratios);
const inch = (si: number | undefined) => (si ?? Number.NaN) / IN;

describe('the least sweep of a valve', () => {
  test('by its own lift: .375 by 1.6 on an arm of 1.600', () => {
    const { value, arm, lift, lacks, restsOn } = of({});
    expect(inch(lift)).toBeCloseTo(0.6, 12);
    expect(inch(arm)).toBeCloseTo(1.6, 12);
    expect(inch(value)).toBeCloseTo(sweep(1.6, 0.6), 9);
    expect(lacks).toEqual([]);
    expect(restsOn).toEqual(['pass-1']);
  });

  test('of a valve that was not read by those of its side, never by the other side', () => {
    expect(inch(of({}, [RATIO], 5).lift)).toBeCloseTo(0.6, 12);
    // The exhaust's 1.5 says nothing of an intake: the card's .350 by the 1.6 they are sold as.
    const exhaust: ValveRatio = { ...RATIO, valve: 'exhaust', value: 1.5, low: 1.5, high: 1.5 };
    expect(inch(of({}, [exhaust], 5).lift)).toBeCloseTo(0.56, 12);
    const own: ValveRatio = { ...RATIO, cylinder: 2, value: 1.5, low: 1.5, high: 1.5, restsOn: ['pass-2'] };
    expect(inch(of({}, [RATIO, own], 2).lift)).toBeCloseTo(0.5625, 12);
    expect(of({}, [RATIO, own], 2).restsOn).toEqual(['pass-2']);
  });

  test('the lash is taken off a solid lifter’s lift once, and none of a hydraulic one', () => {
    const card = { ...PLAIN.card, intake: { lobeLift: 0.375 * IN, lash: 0.02 * IN } };
    expect(inch(of({ card }).lift)).toBeCloseTo(0.58, 12);
    expect(of({ card }).from[0]).toContain('less the lash');
    expect(inch(of({ card }, [{ ...RATIO, lashIn: 'left-in' }]).lift)).toBeCloseTo(0.6, 12);
    const hydraulic = of({ card, engine: { ...PLAIN.engine, lifter: 'hydraulic-flat' } });
    expect(inch(hydraulic.lift)).toBeCloseTo(0.6, 12);
    expect(of({}).from[0]).toContain('no lash known');
    const whole = { ...PLAIN.card, intake: { lobeLift: 0.375 * IN, lash: 0.61 * IN } };
    expect(of({ card: whole }).lacks).toHaveLength(1);
  });

  test('a ratio that is known to less makes it less sharp: longer arm and lower lift, the least', () => {
    const { low, high } = of({}, [{ ...RATIO, low: 1.58, high: 1.62 }]);
    // The arm is good to .010 (common practice, no published source).
    expect(inch(low)).toBeCloseTo(sweep(1.61, 0.375 * 1.58), 6);
    expect(inch(high)).toBeCloseTo(sweep(1.59, 0.375 * 1.62), 6);
  });
});

describe('where the arm comes from', () => {
  const { pivotToTip: _, ...bare } = PLAIN.rockers;
  const part = (id: string, size: number, more: object = {}) => ({
    ...{ id, line: 1, standing: true, kind: 'pivot-to-tip' as const, tool: 'caliper' as const },
    ...{ size: size * IN, readAs: '', typed: '' },
    ...more,
  });

  test('the build’s goes first, then the middle of what was read of the part', () => {
    const read = [part('c', 1.5), part('a', 1.46), part('b', 1.47)];
    const { arm, restsOn, from } = of({ rockers: bare, part: read });
    expect(inch(arm)).toBeCloseTo(1.47, 12);
    expect(restsOn).toEqual(['a', 'b', 'c', 'pass-1']);
    expect(from[1]).toContain('read of the part');
    expect(inch(of({ part: read }).arm)).toBeCloseTo(1.6, 12);
  });

  test('what was struck out, or is of something else, is no arm', () => {
    const other = [part('a', 1.46, { standing: false }), part('b', 2, { kind: 'body-width' })];
    const { lacks, value } = of({ rockers: bare, part: other });
    expect(value).toBeUndefined();
    expect(lacks).toEqual(['pivot to tip of the arm']);
  });

  test('neither arm nor lift: both are asked for', () => {
    const card = { ...PLAIN.card, intake: {} };
    expect(of({ rockers: {}, card }, []).lacks).toHaveLength(2);
  });

  test('a lift that the arm can’t give is no sweep', () => {
    const { value, lacks } = of({ rockers: { soldAs: 1.6, pivotToTip: 0.28 * IN } });
    expect(value).toBeUndefined();
    expect(lacks).toEqual(['a lift and an arm that go together']);
  });
});
