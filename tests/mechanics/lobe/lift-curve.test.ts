import { describe, expect, test } from 'vitest';
import type { LobeCard } from '../../../server/mechanics/lobe/card-fields.ts';
import { curveOfCard, curveOfReadings, type LiftCurve } from '../../../server/mechanics/lobe/lift-curve.ts';
import { expectNear } from '../helpers/near.ts';

const RAD = Math.PI / 180;

/** Seat to seat 280°, so that the half lift of a flank that is alike about its own middle is 70° from the nose. */
const CARD: LobeCard = {
  lobeLift: 0.01,
  centreline: 106 * RAD,
  durations: [{ atLift: 0, duration: 280 * RAD }],
};

/** A slope is held to the rise over a small run of the curve's own lifts. */
function expectSlopes(curve: LiftCurve, degrees: readonly number[]): void {
  for (const degree of degrees) {
    const [angle, run] = [degree * RAD, 1e-5];
    const rise = curve.liftAt(angle + run) - curve.liftAt(angle - run);
    expect(Math.abs(curve.slopeAt(angle) - rise / (2 * run)), `${degree}°`).toBeLessThan(1e-9);
  }
}

describe('the curve of a card', () => {
  test('an intake peaks after top dead centre, less the advance; seats are half the duration from the peak', () => {
    const curve = curveOfCard(CARD, 'intake', 4 * RAD, '');
    expectNear(curve.from, (102 - 140) * RAD);
    expectNear(curve.to, (102 + 140) * RAD);
    expect(curve).toMatchObject({ closedBefore: true, closedAfter: true, highest: 0.01 });
    expectNear(curve.liftAt(102 * RAD), 0.01);
    expect([curve.liftAt(-39 * RAD), curve.liftAt(243 * RAD)]).toEqual([0, 0]);
  });

  test('an exhaust peaks before it, and an advance takes it further before', () => {
    const curve = curveOfCard(CARD, 'exhaust', 4 * RAD, '');
    expectNear((curve.from + curve.to) / 2, -110 * RAD);
    expectNear(curve.liftAt(-110 * RAD), 0.01);
  });

  test('a polynomial that is alike about its middle has half the lift there, and its steepest slope, 35/16', () => {
    const curve = curveOfCard(CARD, 'intake', 0, '');
    for (const flank of [-1, 1]) {
      expectNear(curve.liftAt((106 + 70 * flank) * RAD), 0.005);
      // Lift over half the duration, times the greatest slope of the law: R. L. Norton, chapter 2.
      expectNear(curve.slopeAt((106 + 70 * flank) * RAD), (-flank * 0.01 * (35 / 16)) / (140 * RAD));
    }
  });

  test('it rises before the nose, falls after it, and is level on the nose and on the base circle', () => {
    const curve = curveOfCard(CARD, 'intake', 0, '');
    expectSlopes(curve, [-50, -20, 0, 40, 90, 120, 160, 200, 260]);
    expect(curve.slopeAt(106 * RAD) + 0).toBe(0);
    expect(curve.slopeAt(-40 * RAD) + 0).toBe(0);
  });
});

/** A tappet's readings every 40°, on the base circle at either end. */
const READINGS = [
  [10, 0],
  [50, 0.002],
  [90, 0.007],
  [130, 0.006],
  [170, 0.001],
  [210, 0],
].map(([angle = 0, lift = 0]) => ({ crankAngle: angle * RAD, lift }));

describe('the curve of a builder’s own readings', () => {
  test('advanced by 5° each reading is found 5° earlier', () => {
    const curve = curveOfReadings(READINGS, 5 * RAD);
    for (const { crankAngle, lift } of READINGS) {
      expect(Math.abs(curve.liftAt(crankAngle - 5 * RAD) - lift)).toBeLessThan(1e-15);
    }
    expectNear(curve.from, 5 * RAD);
    expectNear(curve.to, 205 * RAD);
    expect(curve).toMatchObject({ closedBefore: true, closedAfter: true, highest: 0.007 });
    expectSlopes(curve, [10, 30, 60, 88, 140, 200]);
  });

  test('taken a cycle of 720° later they are the same readings', () => {
    const later = READINGS.map(({ crankAngle, lift }) => ({ crankAngle: crankAngle + 720 * RAD, lift }));
    const [curve, same] = [curveOfReadings(later, 0), curveOfReadings(READINGS, 0)];
    expectNear(curve.from, 10 * RAD);
    expectNear(curve.to, 210 * RAD);
    for (const degree of [20, 50, 77, 130, 199]) {
      expect(Math.abs(curve.liftAt(degree * RAD) - same.liftAt(degree * RAD))).toBeLessThan(1e-12);
    }
  });

  test('cut off on the flanks: known there, to the very reading, and not taken as shut beyond', () => {
    const curve = curveOfReadings(READINGS.slice(1, -1), 3 * RAD);
    expect(curve).toMatchObject({ closedBefore: false, closedAfter: false });
    expectNear(curve.liftAt(curve.from), 0.002);
    expectNear(curve.liftAt(curve.to), 0.001);
    expect(curve.slopeAt(curve.from)).toBeGreaterThan(0);
    expect(curve.slopeAt(curve.to)).toBeLessThan(0);
    for (const outside of [curve.from - RAD, curve.to + RAD]) {
      expect([curve.liftAt(outside), curve.slopeAt(outside)]).toEqual([0, 0]);
    }
  });
});
