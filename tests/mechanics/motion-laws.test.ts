import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { MOTION_LAWS, type MotionLaw, motionLaw } from '../../server/mechanics/motion-laws/motion-law.ts';

const { PI } = Math;

/**
 * The exact coefficients follow by calculus; R. L. Norton, Design of Machinery, table 8-3 (from memory) prints
 * them to three places except for 5.777 (exactly 5.7735) and 7.526 (exactly 7.5132).
 */
const COEFFICIENTS = {
  parabolic: { velocity: 2, acceleration: 4, jerk: 0 },
  shm: { velocity: PI / 2, acceleration: PI ** 2 / 2, jerk: PI ** 3 / 2 },
  cycloidal: { velocity: 2, acceleration: 2 * PI, jerk: 4 * PI ** 2 },
  'modified-trapezoid': { velocity: 2, acceleration: (8 * PI) / (PI + 2), jerk: 61.425975 },
  'modified-sine': {
    velocity: (4 * PI) / (PI + 4),
    acceleration: (4 * PI ** 2) / (PI + 4),
    jerk: 69.466357,
  },
  '3-4-5': { velocity: 15 / 8, acceleration: 10 / Math.sqrt(3), jerk: 60 },
  '4-5-6-7': { velocity: 35 / 16, acceleration: (84 * Math.sqrt(5)) / 25, jerk: 52.5 },
} as const;

/** Found by integrating each acceleration twice, apart from this code; seven places. */
const DISPLACEMENTS = {
  parabolic: [0.02, 0.08, 0.18, 0.32],
  shm: [0.0244717, 0.0954915, 0.2061074, 0.3454915],
  cycloidal: [0.0064511, 0.0486347, 0.1486347, 0.3064511],
  'modified-trapezoid': [0.0094591, 0.0605903, 0.1605903, 0.3094591],
  'modified-sine': [0.0106972, 0.0683939, 0.1778878, 0.3278652],
  '3-4-5': [0.00856, 0.05792, 0.16308, 0.31744],
  '4-5-6-7': [0.002728, 0.033344, 0.126036, 0.289792],
} as const;

/** Where the pieces of a law join: its acceleration or jerk may step there. */
const JOINTS = [0, 1 / 8, 3 / 8, 1 / 2, 5 / 8, 7 / 8, 1];

const SAMPLES = Array.from({ length: 4801 }, (_, index) => index / 4800);
const largest = (law: MotionLaw, of: 'v' | 'a' | 'j') =>
  Math.max(...SAMPLES.map((u) => Math.abs(law.at(u)[of])));

/** Gauss–Legendre quadrature with three points in each of many strips, between two joints. */
function integral(f: (u: number) => number, from: number, to: number): number {
  const strips = 200;
  const half = (to - from) / (2 * strips);
  const reach = half * Math.sqrt(3 / 5);
  let sum = 0;
  for (let strip = 0; strip < strips; strip += 1) {
    const middle = from + half * (2 * strip + 1);
    sum += (half * (5 * f(middle - reach) + 8 * f(middle) + 5 * f(middle + reach))) / 9;
  }
  return sum;
}

const share = fc.double({ min: 0, max: 1, noNaN: true });

describe.each(MOTION_LAWS)('the %s law', (name) => {
  const law = motionLaw(name);
  const exact = COEFFICIENTS[name];

  test('has the exact peak velocity, acceleration and jerk', () => {
    expect(largest(law, 'v')).toBeCloseTo(exact.velocity, 12);
    // The peak need not fall on a sample, only within half a step of it: 1e-6 at these curvatures.
    expect(largest(law, 'a') / exact.acceleration).toBeCloseTo(1, 5);
    expect(largest(law, 'a')).toBeLessThanOrEqual(exact.acceleration * (1 + 1e-14));
    expect(largest(law, 'j')).toBeCloseTo(exact.jerk, 5);
  });

  test('has the displacements that integration of its acceleration gave', () => {
    DISPLACEMENTS[name].forEach((s, index) => {
      expect(law.at((index + 1) / 10).s).toBeCloseTo(s, 7);
    });
    expect(law.at(0.5).s).toBeCloseTo(0.5, 15);
  });

  test('starts from rest on the seat and comes to rest at full lift', () => {
    expect(law.at(0)).toMatchObject({ s: 0, v: 0 });
    expect(law.at(1).s).toBe(1);
    expect(law.at(1).v).toBeCloseTo(0, 15);
  });

  test('stands still in the dwell on either side', () => {
    expect(law.at(-0.001)).toEqual({ s: 0, v: 0, a: 0, j: 0 });
    expect(law.at(1.001)).toEqual({ s: 1, v: 0, a: 0, j: 0 });
  });

  test.each([
    ['s', 'v'],
    ['v', 'a'],
    ['a', 'j'],
  ] as const)('fine integration of its %s follows from its %s', (whole, part) => {
    for (const [index, from] of JOINTS.slice(0, -1).entries()) {
      const to = JOINTS[index + 1] ?? 1;
      // Just inside the piece: at a joint itself the next piece speaks.
      const [low, high] = [from + 1e-12, to - 1e-12];
      const risen = integral((u) => law.at(u)[part], low, high);
      expect(law.at(high)[whole] - law.at(low)[whole]).toBeCloseTo(risen, 9);
    }
  });

  test('slows down as it sped up', () => {
    fc.assert(
      fc.property(share, (u) => {
        const [here, there] = [law.at(u), law.at(1 - u)];
        expect(here.s + there.s).toBeCloseTo(1, 14);
        expect(here.v).toBeCloseTo(there.v, 12);
        if (u !== 0.5) expect(here.a).toBeCloseTo(-there.a, 11);
      }),
    );
  });

  test('never moves back, and always slows down past mid-flank', () => {
    fc.assert(
      fc.property(share, (u) => {
        expect(law.at(u).v).toBeGreaterThanOrEqual(-1e-15);
        const speedingUp = u < 0.5 ? law.at(u).a : -law.at(u).a;
        expect(speedingUp).toBeGreaterThanOrEqual(-1e-15);
        expect(law.at(u).s).toBeGreaterThanOrEqual(0);
        expect(law.at(u).s).toBeLessThanOrEqual(1);
      }),
    );
  });
});

test('the peak acceleration of the polynomials lies where calculus puts it', () => {
  const at345 = 0.5 - Math.sqrt(3) / 6;
  const at4567 = (5 - Math.sqrt(5)) / 10;
  expect(motionLaw('3-4-5').at(at345).a).toBeCloseTo(10 / Math.sqrt(3), 13);
  expect(motionLaw('4-5-6-7').at(at4567).a).toBeCloseTo((84 * Math.sqrt(5)) / 25, 13);
  expect(motionLaw('3-4-5').at(at345).j).toBeCloseTo(0, 12);
  expect(motionLaw('4-5-6-7').at(at4567).j).toBeCloseTo(0, 12);
});

test('a tiny way up the flank keeps its figures', () => {
  // Leading terms of the power series of each law, relative to 1e-6.
  const u = 1e-4;
  expect(motionLaw('cycloidal').at(u).s / ((2 * PI ** 2 * u ** 3) / 3)).toBeCloseTo(1, 6);
  expect(
    motionLaw('modified-sine').at(u).s / ((COEFFICIENTS['modified-sine'].acceleration * 4 * PI * u ** 3) / 6),
  ).toBeCloseTo(1, 6);
  expect(motionLaw('shm').at(u).s / ((PI * u) ** 2 / 4)).toBeCloseTo(1, 6);
});
