import { describe, expect, test } from 'vitest';
import type { GapCurve } from '../../server/mechanics/valve-clearance/gap-curve.ts';
import { leastGap } from '../../server/mechanics/valve-clearance/least-gap.ts';
import { knownStretch, wholeDegrees } from '../../server/mechanics/valve-clearance/stretch.ts';

const DEG = Math.PI / 180;

/** A curve of known dips: the sum of parabolas cut off at their rim, each {at [°], deep, wide [°]}. */
function curveOf(dips: readonly { at: number; deep: number; wide: number }[], tilt = 0): GapCurve {
  const each = (angle: number) =>
    dips.map(({ at, deep, wide }) => {
      const off = (angle / DEG - at) / wide;
      return Math.abs(off) < 1
        ? { gap: -deep * (1 - off ** 2), slope: (2 * deep * off) / wide / DEG }
        : { gap: 0, slope: 0 };
    });
  return {
    gapAt: (angle) => 1 + (tilt * angle) / DEG + each(angle).reduce((sum, { gap }) => sum + gap, 0),
    slopeAt: (angle) => tilt / DEG + each(angle).reduce((sum, { slope }) => sum + slope, 0),
    valveLiftAt: () => 0,
    radialShiftAt: () => 0,
  };
}
const least = (curve: GapCurve, from: number, to: number) => {
  const { crankAngle, gap } = leastGap(curve, from * DEG, to * DEG);
  return { at: crankAngle / DEG, gap };
};

describe('the least of a curve whose dips are known', () => {
  test.each([
    ['between two looks', [{ at: 12.3456, deep: 0.5, wide: 20 }], 12.3456, 0.5],
    ['before top dead centre', [{ at: -9.8765, deep: 0.4, wide: 20 }], -9.8765, 0.6],
    [
      'the deeper of two, first',
      [
        { at: -12.34, deep: 0.5, wide: 8 },
        { at: 12.34, deep: 0.4, wide: 8 },
      ],
      -12.34,
      0.5,
    ],
    [
      'the deeper of two, last',
      [
        { at: -12.34, deep: 0.4, wide: 8 },
        { at: 12.34, deep: 0.5, wide: 8 },
      ],
      12.34,
      0.5,
    ],
    // Seen at tenths of a degree the first dip looks the deeper one, by a hair; between them the second one is.
    [
      'one that shows between the looks alone',
      [
        { at: -12.3, deep: 0.50002, wide: 8 },
        { at: 12.35, deep: 0.50004, wide: 8 },
      ],
      12.35,
      0.49996,
    ],
    [
      'of equal ones the first',
      [
        { at: -12.3, deep: 0.5, wide: 8 },
        { at: 12.3, deep: 0.5, wide: 8 },
      ],
      -12.3,
      0.5,
    ],
  ] as const)('%s', (_what, dips, at, gap) => {
    const found = least(curveOf(dips), -30, 30);
    expect(found.at).toBeCloseTo(at, 9);
    expect(found.gap).toBeCloseTo(gap, 12);
  });

  test.each([
    ['rising all the way: at the start', 0.001, -7.77, 8.88, -7.77],
    ['falling all the way: at the end', -0.001, -7.77, 8.88, 8.88],
    ['a stretch of no length', 0.001, 3.3, 3.3, 3.3],
    ['shorter than a look', -0.001, 3.31, 3.34, 3.34],
  ] as const)('without a dip, %s', (_what, tilt, from, to, at) => {
    expect(least(curveOf([], tilt), from, to).at).toBeCloseTo(at, 12);
  });

  test('a dip cut off by the end of what is known is least there', () => {
    expect(least(curveOf([{ at: 12, deep: 0.5, wide: 20 }]), -30, 10).at).toBeCloseTo(10, 12);
    expect(least(curveOf([{ at: 12, deep: 0.5, wide: 20 }]), 14, 30).at).toBeCloseTo(14, 12);
  });
});

describe('where the curve is told', () => {
  const lifted = (from: number, to: number): GapCurve => ({
    ...curveOf([]),
    valveLiftAt: (angle) => Math.max(0, (angle / DEG - from) * (to - angle / DEG)),
  });
  const told = (from: number, to: number, open: GapCurve) =>
    wholeDegrees({ from: from * DEG, to: to * DEG }, open).map((angle) => Number((angle / DEG).toFixed(9)));
  const range = (from: number, to: number) =>
    Array.from({ length: to - from + 1 }, (_, index) => from + index);
  test.each([
    ['open about top dead centre, a degree more at each end', -10, 10, lifted(-3.5, 4.5), range(-4, 5)],
    ['open to whole degrees, where the lift is none', -10, 10, lifted(-3, 4), range(-3, 4)],
    ['open after it: on to top dead centre', -10, 20, lifted(5.5, 8.5), range(0, 9)],
    ['open before it', -20, 10, lifted(-8.5, -5.5), range(-9, 0)],
    ['no further than it is known', 6, 8, lifted(5.5, 8.5), range(6, 8)],
    ['known between whole degrees', 5.6, 8.4, lifted(5.5, 8.5), range(6, 8)],
    ['never open: top dead centre alone', -10, 10, lifted(0, 0), [0]],
    ['never open, and top dead centre not known: its ends', 3.25, 9.5, lifted(0, 0), [3.25, 9.5]],
    ['less than a degree known: its ends', 3.25, 3.5, lifted(0, 9), [3.25, 3.5]],
  ] as const)('%s', (_what, from, to, open, wanted) => {
    expect(told(from, to, open)).toEqual(wanted);
  });

  test.each([
    [true, true, -20, 0],
    [false, true, -20, 0],
    [true, false, -20, -5],
  ])(
    'known on to top dead centre where the valve is shut: %s before, %s after',
    (closedBefore, closedAfter, from, to) => {
      const lobe = {
        from: -20,
        to: -5,
        closedBefore,
        closedAfter,
        liftAt: () => 0,
        slopeAt: () => 0,
        highest: 0,
        law: 'none',
      };
      expect(knownStretch(lobe)).toEqual({ from, to });
      const after = { ...lobe, from: 5, to: 20 };
      expect(knownStretch(after)).toEqual({ from: closedBefore ? 0 : 5, to: 20 });
    },
  );
});
