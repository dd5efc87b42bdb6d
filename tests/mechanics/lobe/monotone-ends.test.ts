import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { monotoneCubic } from '../../../server/mechanics/lobe/monotone-cubic.ts';

interface Knot {
  readonly x: number;
  readonly y: number;
}

const anyKnots = fc
  .array(
    fc.record({
      step: fc.double({ min: 0.1, max: 5, noNaN: true }),
      y: fc.double({ min: -5, max: 5, noNaN: true }),
    }),
    { minLength: 2, maxLength: 12 },
  )
  .map((steps): Knot[] => {
    let x = 0;
    return steps.map(({ step, y }) => {
      x += step;
      return { x, y };
    });
  });

test('it goes through each point to the last digit, the last one but for rounding', () => {
  fc.assert(
    fc.property(anyKnots, (knots) => {
      const curve = monotoneCubic(knots);
      for (const { x, y } of knots.slice(0, -1)) expect(curve.at(x)).toBe(y);
      const last = knots.at(-1);
      expect(Math.abs(curve.at(last?.x ?? 0) - (last?.y ?? 0))).toBeLessThan(1e-13);
    }),
  );
});

test('points seen in a mirror give the curve seen in a mirror: both ends have one rule', () => {
  fc.assert(
    fc.property(anyKnots, fc.double({ min: 0, max: 1, noNaN: true }), (knots, share) => {
      const mirrored = knots.map(({ x, y }) => ({ x: -x, y })).toReversed();
      const [curve, other] = [monotoneCubic(knots), monotoneCubic(mirrored)];
      const [from, to] = [knots[0]?.x ?? 0, knots.at(-1)?.x ?? 0];
      const x = from + share * (to - from);
      expect(Math.abs(curve.at(x) - other.at(-x))).toBeLessThan(1e-11);
    }),
  );
});

describe('the end rule of C. Moler, Numerical Computing with MATLAB (2004), section 3.6', () => {
  // By hand from the rule: d = ((2h₁ + h₂)δ₁ − h₁δ₂)/(h₁ + h₂), zero or 3δ₁ where the end piece would turn.
  test('where nothing turns', () => {
    const curve = monotoneCubic([
      { x: 0, y: 0 },
      { x: 1, y: 2 },
      { x: 4, y: 5 },
    ]);
    // h₁ = 1, h₂ = 3, δ₁ = 2, δ₂ = 1: (5·2 − 1·1)/4.
    expect(curve.slopeAt(0)).toBeCloseTo(9 / 4, 14);
  });

  test('a level end piece stays level, whichever way the next one goes', () => {
    for (const way of [1, -1]) {
      const knots = [0, 0, way, 3 * way].map((y, x) => ({ x, y }));
      const curve = monotoneCubic(knots);
      for (const x of [0, 0.25, 0.5, 0.99]) {
        expect(curve.at(x) + 0).toBe(0);
        expect(curve.slopeAt(x) + 0).toBe(0);
      }
    }
  });

  test('a steep piece beyond a turn: three times the secant, no more', () => {
    // h₁ = h₂ = 1, δ₁ = 1, δ₂ = −9: (3·1 + 9)/2 = 6, held to 3.
    const curve = monotoneCubic([0, 1, -8].map((y, x) => ({ x, y })));
    expect(curve.slopeAt(0)).toBeCloseTo(3, 14);
  });
});

test('two points are a straight line, one a level', () => {
  const line = monotoneCubic([
    { x: 1, y: 2 },
    { x: 3, y: 8 },
  ]);
  expect([line.at(1.5), line.slopeAt(1.5), line.slopeAt(3)]).toEqual([3.5, 3, 3]);
  const level = monotoneCubic([{ x: 1, y: 2 }]);
  expect([level.at(-4), level.at(7), level.slopeAt(7)]).toEqual([2, 2, 0]);
});
