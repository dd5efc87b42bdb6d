import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { monotoneCubic } from '../../server/mechanics/lobe/monotone-cubic.ts';
import { inverse4567, rise4567, slope4567 } from '../../server/mechanics/lobe/polynomial-4567.ts';

const knotsOf = (xs: readonly number[], ys: readonly number[]) =>
  xs.map((x, index) => ({ x, y: ys[index] ?? Number.NaN }));

/** The data set RPN 14 of F. N. Fritsch and R. E. Carlson, SIAM J. Numer. Anal. 17 (1980) 238–246. */
const RPN14 = knotsOf(
  [7.99, 8.09, 8.19, 8.7, 9.2, 10, 12, 15, 20],
  [0, 2.76429e-5, 4.37498e-2, 0.169183, 0.469428, 0.94374, 0.998636, 0.999919, 0.999994],
);

describe('SciPy 1.17.1, PchipInterpolator and its derivative', () => {
  test.each([
    [8.0, 2.767433863187248e-7, 5.534518408242687e-5],
    [8.05, 9.956474181099992e-6, 0.00033175671817583645],
    [8.14, 0.017697167375919493, 0.5717250206774507],
    [8.5, 0.1166325769392755, 0.20580225251505585],
    [9.0, 0.33753432684619816, 0.6812468776692762],
    [9.6, 0.7602476393403818, 0.7250149788875597],
    [11, 0.9860433625350502, 0.025866439773565023],
    [13, 0.9993618220922759, 0.0005597473276787557],
    [14.5, 0.999875579071617, 0.00014438366137593266],
    [17, 0.9999680257722139, 1.7829037964360213e-5],
    [19.9, 0.99999397279238, 5.447222751398533e-7],
  ])('RPN 14 at %f', (x, y, slope) => {
    const curve = monotoneCubic(RPN14);
    expect(curve.at(x)).toBeCloseTo(y, 13);
    expect(curve.slopeAt(x)).toBeCloseTo(slope, 12);
  });

  test.each([
    [0.25, 1.609375, -1.4375],
    [0.8, 1.0506666666666666, -0.4933333333333333],
    [2, 2.0, 1.5],
    [3.5, 3.0, 0.0],
    [4.2, 2.328, -6.08],
    [4.4, 0.824, -8.32],
  ])('points that turn and rest, at %f', (x, y, slope) => {
    const curve = monotoneCubic(knotsOf([0, 1, 3, 4, 4.5], [2, 1, 3, 3, 0]));
    expect(curve.at(x)).toBeCloseTo(y, 12);
    expect(curve.slopeAt(x)).toBeCloseTo(slope, 11);
  });
});

test('through every point, monotone between, slope continuous', () => {
  const points = fc.array(
    fc.record({
      step: fc.double({ min: 0.01, max: 10, noNaN: true }),
      y: fc.double({ min: -5, max: 5, noNaN: true }),
    }),
    { minLength: 2, maxLength: 30 },
  );
  fc.assert(
    fc.property(points, (steps) => {
      let x = 0;
      const knots = steps.map(({ step, y }) => {
        x += step;
        return { x, y };
      });
      const curve = monotoneCubic(knots);
      knots.slice(1).forEach((right, index) => {
        const left = knots[index] ?? right;
        expect(curve.at(left.x) - left.y).toBeCloseTo(0, 14);
        const rising = Math.sign(right.y - left.y);
        let before = left.y;
        for (let part = 1; part <= 20; part += 1) {
          const here = curve.at(left.x + ((right.x - left.x) * part) / 20);
          expect((here - before) * rising).toBeGreaterThanOrEqual(-1e-10);
          before = here;
        }
        const nudge = (right.x - left.x) * 1e-9;
        expect(Math.abs(curve.slopeAt(right.x - nudge) - curve.slopeAt(right.x))).toBeLessThan(1e-3);
      });
    }),
  );
});

describe('the 4-5-6-7 polynomial', () => {
  test('exact displacements .1 to .4 (double integration), Cv 35/16', () => {
    [0.002728, 0.033344, 0.126036, 0.289792].forEach((wanted, index) => {
      expect(rise4567((index + 1) / 10)).toBeCloseTo(wanted, 12);
    });
    expect(slope4567(0.5)).toBeCloseTo(35 / 16, 12);
    expect(rise4567(0.5)).toBe(0.5);
  });

  test('its inverse gives the share back, to a part in 10¹⁴ of either end', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (share) => {
        expect(Math.abs(rise4567(inverse4567(share)) - share)).toBeLessThan(1e-15);
      }),
    );
    expect(inverse4567(0)).toBe(0);
    expect(inverse4567(1)).toBe(1);
    expect(rise4567(inverse4567(1e-12)) / 1e-12).toBeCloseTo(1, 12);
  });
});
