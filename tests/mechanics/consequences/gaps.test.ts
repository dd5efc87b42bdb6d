import { describe, expect, test } from 'vitest';
import { consequences } from '../../../server/mechanics/consequences/consequences.ts';
import { gapRow, verdictOfGap } from '../../../server/mechanics/consequences/gap-row.ts';
import { cupMove } from '../../../server/mechanics/consequences/pushrod-gap.ts';
import type { ConsequenceInput, MeasuredGap } from '../../../server/mechanics/consequences/types.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import type { GapKind } from '../../../shared/schemas/sheet.ts';
import { CASE, LIMITS } from './case.ts';

const inches = (metres: number | undefined): number => (metres ?? Number.NaN) / IN;
const read = (low: number, high: number, more: Partial<MeasuredGap> = {}): MeasuredGap => ({
  low: low * IN,
  high: high * IN,
  readAs: `more than ${low} in, less than ${high} in`,
  lifter: 'solid',
  ...more,
});
const withLimit = (input: ConsequenceInput, name: GapKind, limit: number): ConsequenceInput => ({
  ...input,
  limits: { ...LIMITS, [name]: { value: limit * IN, source: 'the part maker' } },
});

describe('calculated gaps', () => {
  test('coil bind 1.900 − .560 − 1.150 = .190 and seal .650 − .560 = .090: check values 5, by hand', () => {
    const input: ConsequenceInput = { ...CASE, lobeLift: 0.35 * IN };
    expect(inches(gapRow(input, 'coil-bind').after?.value)).toBeCloseTo(0.19, 12);
    expect(inches(gapRow(input, 'retainer-to-seal').after?.value)).toBeCloseTo(0.09, 12);
  });

  test('both lose lobe × Δratio: .350 × .1 = .035, common practice', () => {
    const input: ConsequenceInput = { ...CASE, lobeLift: 0.35 * IN };
    const { before, after } = gapRow(input, 'coil-bind');
    expect(inches(before?.value) - inches(after?.value)).toBeCloseTo(0.035, 12);
  });

  test('piston to valve .377089 in through the sweep at 1.6: check values 10, by an independent scan there', () => {
    const { after, verdict } = gapRow(CASE, 'piston-to-valve');
    expect(inches(after?.value)).toBeCloseTo(0.377089, 6);
    expect(verdict).toBe('clear');
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

describe('verdicts', () => {
  test('never clear on a calculated gap inside its uncertainty', () => {
    // .250 left, half-width .0073: a limit of .245 is inside, .240 is not, .258 is past it.
    expect(gapRow(withLimit(CASE, 'coil-bind', 0.245), 'coil-bind').verdict).toBe('close');
    expect(gapRow(withLimit(CASE, 'coil-bind', 0.24), 'coil-bind').verdict).toBe('clear');
    expect(gapRow(withLimit(CASE, 'coil-bind', 0.258), 'coil-bind').verdict).toBe('short');
  });

  test('for any ratio, width and limit, a clear gap has its whole interval at or above the limit', () => {
    for (const halfWidth of [0, 0.006, 0.05, 0.2]) {
      for (let limit = 0; limit < 0.4; limit += 0.003) {
        const row = gapRow(
          withLimit({ ...CASE, after: { value: 1.6, halfWidth, spring: 'light' } }, 'coil-bind', limit),
          'coil-bind',
        );
        if (row.verdict === 'clear') expect(inches(row.after?.low)).toBeGreaterThanOrEqual(limit - 1e-9);
        if (row.verdict === 'short') expect(inches(row.after?.high)).toBeLessThan(limit);
      }
    }
  });

  test('a running-spring ratio gives no clear: it takes credit for what bends', () => {
    const row = gapRow({ ...CASE, after: { value: 1.6, halfWidth: 0.006, spring: 'running' } }, 'coil-bind');
    expect(row.verdict).toBe('close');
    expect(row.because.join()).toMatch(/light-spring/);
  });

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

describe('measured gaps', () => {
  test('a gap read with these arms goes before the calculated one', () => {
    const row = gapRow(
      { ...CASE, measured: { these: { 'coil-bind': read(0.05, 0.055) }, before: {} } },
      'coil-bind',
    );
    expect(row.after?.basis).toBe('measured');
    expect(row.after?.value).toBeUndefined();
    expect(row.verdict).toBe('short');
  });

  test('one read on a hydraulic lifter is never clear: it sinks, and reads too large', () => {
    const row = gapRow(
      { ...CASE, measured: { these: { cover: read(0.1, 0.12, { lifter: 'hydraulic' }) }, before: {} } },
      'cover',
    );
    expect(row.verdict).toBe('close');
    expect(row.because.join()).toMatch(/hydraulic/);
  });

  test('read with the arms before, it is moved by what the ratio changes, and then it is calculated', () => {
    const { retainerToSeal: _, ...spring } = CASE.spring;
    const row = gapRow(
      {
        ...CASE,
        lobeLift: 0.35 * IN,
        spring,
        measured: { these: {}, before: { 'retainer-to-seal': read(0.1, 0.104) } },
      },
      'retainer-to-seal',
    );
    expect(row.before?.basis).toBe('measured');
    expect(row.after?.basis).toBe('calculated');
    const half = 0.35 * Math.hypot(0.03, 0.006);
    expect(inches(row.after?.low)).toBeCloseTo(0.1 - 0.035 - half, 9);
    expect(inches(row.after?.high)).toBeCloseTo(0.104 - 0.035 + half, 9);
    expect(row.missing).toEqual([]);
  });

  test('slot, retainer and cover follow from nothing: they are to be measured', () => {
    for (const name of ['slot-to-stud', 'rocker-to-retainer', 'cover'] as const) {
      const row = gapRow(CASE, name);
      expect(row.measure).toBe(true);
      expect(row.verdict).toBeUndefined();
      expect(row.missing).toEqual(['a measured gap']);
    }
  });
});

describe('the whole', () => {
  test('any short gap stops it, and sends to a qualified shop', () => {
    const result = consequences(withLimit(CASE, 'coil-bind', 0.3));
    expect(result.stop).toBe(true);
    expect(result.cautions[0]).toMatch(/stop.*qualified shop/);
    expect(consequences(CASE).stop).toBe(false);
  });

  test('with nothing known every row says what it lacks and none has a verdict', () => {
    const result = consequences({
      side: 'exhaust',
      spring: {},
      crank: {},
      lobe: {},
      measured: { these: {}, before: {} },
      limits: LIMITS,
    });
    for (const row of [...result.gaps, ...result.figures])
      expect(row.missing.length, row.name).toBeGreaterThan(0);
    expect(result.gaps.every((row) => row.verdict === undefined)).toBe(true);
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
