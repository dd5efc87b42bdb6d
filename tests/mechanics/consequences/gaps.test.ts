import { describe, expect, test } from 'vitest';
import { figureRows } from '../../../server/mechanics/consequences/figure-rows.ts';
import { gapBeforeOf, gapRow, verdictOfGap } from '../../../server/mechanics/consequences/gap-row.ts';
import { cupMove } from '../../../server/mechanics/consequences/pushrod-gap.ts';
import type { ConsequenceInput } from '../../../server/mechanics/consequences/types.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { GAP_KINDS } from '../../../shared/schemas/sheet.ts';
import { CASE, LIMITS } from './case.ts';

const inches = (metres: number | undefined): number => (metres ?? Number.NaN) / IN;
describe('calculated gaps', () => {
  test('coil bind 1.900 − .560 − 1.150 = .190 and seal .650 − .560 = .090: check values 5, by hand', () => {
    const input: ConsequenceInput = { ...CASE, lobeLift: 0.35 * IN };
    expect(inches(gapRow(input, 'coil-bind').after?.value)).toBeCloseTo(0.19, 12);
    expect(inches(gapRow(input, 'retainer-to-seal').after?.value)).toBeCloseTo(0.09, 12);
  });

  test('both lose lobe × Δratio: .350 × .1 = .035, common practice', () => {
    const input: ConsequenceInput = { ...CASE, lobeLift: 0.35 * IN };
    const { after } = gapRow(input, 'coil-bind');
    expect(inches(gapBeforeOf(input, 'coil-bind')?.value) - inches(after?.value)).toBeCloseTo(0.035, 12);
  });

  test('piston to valve .377089 in through the sweep at 1.6: check values 10, by an independent scan there', () => {
    const { after } = gapRow(CASE, 'piston-to-valve');
    expect(inches(after?.value)).toBeCloseTo(0.377089, 6);
  });

  test('its uncertainty is at least lobe at that angle × U of the ratio, and holds the timing', () => {
    const { after } = gapRow(CASE, 'piston-to-valve');
    const half = inches(after?.value) - inches(after?.low);
    // Lift at the valve there is about .06 in, so the lobe's is about .04: times .006 it is .0002; the closed gap
    // alone brings .005, and 2 degrees of a cam near 10 degrees after top about .007.
    expect(half).toBeGreaterThan(0.005);
    expect(half).toBeLessThan(0.02);
    const wide = gapRow(
      { ...CASE, after: { value: 1.6, halfWidth: 0.3, spring: 'light' } },
      'piston-to-valve',
    );
    expect(inches(wide.after?.value) - inches(wide.after?.low)).toBeGreaterThan(half);
  });

  test('the cup moves .062 on a 1.48 arm from 1.5 to 1.6: trade practice 2.12, calculated there', () => {
    const move = cupMove(1.48 * IN, { value: 1.5, halfWidth: 0 }, { value: 1.6, halfWidth: 0 });
    expect(inches(move.value)).toBeCloseTo(0.0617, 4);
    const { after } = gapRow(CASE, 'pushrod-to-head');
    expect(inches(after?.value)).toBeCloseTo(0.09 - 0.0617, 4);
  });

  test('the half-width of a calculated gap is the errors in quadrature, by hand', () => {
    const { after } = gapRow(CASE, 'coil-bind');
    // .3125·.006 from the ratio, .005 from each of two heights.
    expect(inches(after?.high) - inches(after?.value)).toBeCloseTo(
      Math.sqrt(0.001875 ** 2 + 2 * 0.005 ** 2),
      12,
    );
  });
});

describe('words', () => {
  test('between two gauges: .024 to .028 against .030 is short, against .026 close, against .024 clear', () => {
    const gap = { low: 0.024, high: 0.028 };
    expect(verdictOfGap(gap, 0.03)).toBe('short');
    expect(verdictOfGap(gap, 0.028)).toBe('short');
    expect(verdictOfGap(gap, 0.026)).toBe('close');
    expect(verdictOfGap(gap, 0.024)).toBe('clear');
    expect(verdictOfGap({ low: 0.04 }, 0.03)).toBe('clear');
    expect(verdictOfGap({ high: 0.04 }, 0.03)).toBe('close');
  });
});

describe('gaps that were read with the arms before', () => {
  test('are moved by what the ratio changes, and then they are calculated', () => {
    const { retainerToSeal: _, ...spring } = CASE.spring;
    const row = gapRow(
      {
        ...CASE,
        lobeLift: 0.35 * IN,
        spring,
        readBefore: { 'retainer-to-seal': { low: 0.1 * IN, high: 0.104 * IN } },
      },
      'retainer-to-seal',
    );
    expect(row.after?.basis).toBe('calculated');
    const half = 0.35 * Math.hypot(0.03, 0.006);
    expect(inches(row.after?.low)).toBeCloseTo(0.1 - 0.035 - half, 9);
    expect(inches(row.after?.high)).toBeCloseTo(0.104 - 0.035 + half, 9);
    expect(row.missing).toEqual([]);
  });

  const piston = { 'piston-to-valve': { value: 0.12 * IN, low: 0.118 * IN, high: 0.122 * IN } };
  const exact: ConsequenceInput = {
    ...CASE,
    before: { value: 1.5, halfWidth: 0 },
    after: { value: 1.6, halfWidth: 0, spring: 'light' },
    readBefore: piston,
  };

  test('piston to valve by the lobe’s lift there: .120 − .140 × .1 = .106, desk playbook 4, common practice', () => {
    const row = gapRow({ ...exact, crank: {}, lobe: {}, lobeLiftAtClosest: 0.14 * IN }, 'piston-to-valve');
    expect(inches(row.after?.value)).toBeCloseTo(0.106, 12);
    expect(inches(row.after?.low)).toBeCloseTo(0.104, 12);
  });

  test('by crank geometry it loses no more than the whole lobe times the change: .3125 × .1', () => {
    const row = gapRow(exact, 'piston-to-valve');
    const lost = 0.12 - inches(row.after?.value);
    expect(lost).toBeGreaterThan(0);
    expect(lost).toBeLessThan(0.03125);
  });

  test('with neither, between nothing and the whole lobe: .118 − .03125 to .122, by hand', () => {
    const row = gapRow({ ...exact, crank: {}, lobe: {} }, 'piston-to-valve');
    expect(inches(row.after?.low)).toBeCloseTo(0.118 - 0.03125, 12);
    expect(inches(row.after?.high)).toBeCloseTo(0.122, 12);
  });

  test('slot, retainer and cover follow from nothing: they are to be measured', () => {
    for (const name of ['slot-to-stud', 'rocker-to-retainer', 'cover'] as const) {
      const row = gapRow(CASE, name);
      expect(row.measure).toBe(true);
      expect(row.missing).toEqual(['a measured gap']);
    }
  });
});

describe('the whole', () => {
  test('with nothing known every row says what it lacks', () => {
    const nothing: ConsequenceInput = {
      side: 'exhaust',
      spring: {},
      crank: {},
      lobe: {},
      readBefore: {},
      limits: LIMITS,
    };
    for (const row of [...GAP_KINDS.map((name) => gapRow(nothing, name)), ...figureRows(nothing)])
      expect(row.missing.length, row.name).toBeGreaterThan(0);
  });

  test('an exhaust loses room when it opens late, not early', () => {
    const exhaust: ConsequenceInput = { ...CASE, side: 'exhaust' };
    const { after } = gapRow(exhaust, 'piston-to-valve');
    // A symmetric lobe at the same distance before top: the mirror of the intake.
    expect(inches(after?.value)).toBeCloseTo(0.377089, 6);
    expect(inches(after?.value) - inches(after?.low)).toBeCloseTo(
      inches(gapRow(CASE, 'piston-to-valve').after?.value) -
        inches(gapRow(CASE, 'piston-to-valve').after?.low),
      6,
    );
  });
});
