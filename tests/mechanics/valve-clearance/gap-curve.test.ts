import { describe, expect, test } from 'vitest';
import { curveOfCard } from '../../../server/mechanics/lobe/lift-curve.ts';
import { sliderCrank } from '../../../server/mechanics/slider-crank/slider-crank.ts';
import { gapCurve } from '../../../server/mechanics/valve-clearance/gap-curve.ts';
import { leastGap } from '../../../server/mechanics/valve-clearance/least-gap.ts';

const DEG = Math.PI / 180;
const CARD = { lobeLift: 0.009, centreline: 106 * DEG, durations: [{ atLift: 0, duration: 280 * DEG }] };

describe('the slope of the gap', () => {
  const curve = gapCurve({
    crank: sliderCrank(0.09, 0.15, 0),
    valveAngle: 20 * DEG,
    floor: 'pocket',
    closedGapAtTdc: 0.01,
    lobe: curveOfCard(CARD, 'intake', 0, ''),
    ratio: 1.6,
    lash: 0.0005,
  });

  test('is the rise over a small run: shut, in the lash, opening and open', () => {
    // The lobe lifts from −34° on; the lash is taken up about 22° later.
    for (const degree of [-60, -33, -25, -16, -5, 0, 20, 60, 106, 180, 230, 300]) {
      const [angle, run] = [degree * DEG, 1e-5];
      const rise = curve.gapAt(angle + run) - curve.gapAt(angle - run);
      expect(Math.abs(curve.slopeAt(angle) - rise / (2 * run)), `${degree}°`).toBeLessThan(1e-8);
    }
    expect(curve.valveLiftAt(-25 * DEG)).toBe(0);
  });
});

/** A gap along a line, per degree. */
const line = (slope: number) => ({
  gapAt: (angle: number) => 1 + (slope * angle) / DEG,
  slopeAt: () => slope / DEG,
  valveLiftAt: () => 0,
  radialShiftAt: () => 0,
});

describe('a gap that falls to an end', () => {
  test('is least at that very end, whatever the last bits of its degrees', () => {
    for (let degree = -120; degree <= 120; degree += 0.5) {
      const [from, to] = [(degree - 3) * DEG, degree * DEG];
      expect(leastGap(line(-0.001), from, to).crankAngle, `to ${degree}°`).toBe(to);
      expect(leastGap(line(0.001), from, to).crankAngle, `from ${degree - 3}°`).toBe(from);
    }
  });

  test('of no length has the gap there', () => {
    expect(leastGap(line(0.001), 4 * DEG, 4 * DEG)).toEqual({
      crankAngle: 4 * DEG,
      gap: line(0.001).gapAt(4 * DEG),
    });
  });
});

test('a bottom that is level over less than a look: of equal gaps the first', () => {
  const [first, last] = [10.02 * DEG, 10.06 * DEG];
  const past = (angle: number) => Math.min(0, angle - first) + Math.max(0, angle - last);
  const found = leastGap(
    {
      gapAt: (angle) => 1 + past(angle) ** 2,
      slopeAt: (angle) => 2 * past(angle),
      valveLiftAt: () => 0,
      radialShiftAt: () => 0,
    },
    0,
    20 * DEG,
  );
  expect(found.gap).toBe(1);
  expect(found.crankAngle / DEG).toBeCloseTo(10.02, 9);
});

test('a deeper dip between two looks counts, though another reads lower at a look', () => {
  // One dip reads .9001 at a look; another, narrow one between looks reads .9002 there and reaches .8997.
  const dips = [
    { at: 5, deep: 0.0999, wide: 2 },
    { at: 10.045, deep: 0.1003, wide: 0.045 / Math.sqrt(1 - 0.0998 / 0.1003) },
  ];
  const each = (angle: number) =>
    dips.map(({ at, deep, wide }) => {
      const off = (angle / DEG - at) / wide;
      return Math.abs(off) < 1
        ? { gap: -deep * (1 - off ** 2), slope: (2 * deep * off) / wide / DEG }
        : { gap: 0, slope: 0 };
    });
  const found = leastGap(
    {
      gapAt: (angle) => 1 + each(angle).reduce((sum, { gap }) => sum + gap, 0),
      slopeAt: (angle) => each(angle).reduce((sum, { slope }) => sum + slope, 0),
      valveLiftAt: () => 0,
      radialShiftAt: () => 0,
    },
    0,
    20 * DEG,
  );
  expect(found.gap).toBeCloseTo(0.8997, 12);
  expect(found.crankAngle / DEG).toBeCloseTo(10.045, 9);
});
