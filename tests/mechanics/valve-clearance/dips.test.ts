import { describe, expect, test } from 'vitest';
import { leastGap } from '../../../server/mechanics/valve-clearance/least-gap.ts';

const DEG = Math.PI / 180;

interface Dip {
  readonly at: number;
  readonly deep: number;
  readonly wide: number;
}

/** So flat that it moves no dip by what is looked at; it falls to the deepest from both sides. */
const BOWL = 1e-6;

/** A gap with dips that are parabolas, in a bowl about the last of them, which is the deepest: no looking needed. */
function gapWith(level: number, dips: readonly Dip[]) {
  const { at: bottom } = dips.at(-1) ?? { at: 0 };
  const each = (angle: number) => {
    const from = angle / DEG - bottom;
    const bowl = { gap: BOWL * from ** 2, slope: (2 * BOWL * from) / DEG };
    return [
      bowl,
      ...dips.map(({ at, deep, wide }) => {
        const off = (angle / DEG - at) / wide;
        return Math.abs(off) < 1
          ? { gap: -deep * (1 - off ** 2), slope: (2 * deep * off) / wide / DEG }
          : { gap: 0, slope: 0 };
      }),
    ];
  };
  return {
    gapAt: (angle: number) => level + each(angle).reduce((sum, { gap }) => sum + gap, 0),
    slopeAt: (angle: number) => each(angle).reduce((sum, { slope }) => sum + slope, 0),
    valveLiftAt: () => 0,
    radialShiftAt: () => 0,
  };
}
const least = (level: number, ...dips: readonly Dip[]) => leastGap(gapWith(level, dips), 0, 20 * DEG);

describe('a dip between two looks, a tenth of a degree apart', () => {
  /** Seen at .68 and .53 of its depth; another dip reads .98 of it, and is no deeper. */
  const lower = { at: 5, deep: 0.98, wide: 2 };

  test.each([
    ['the lower look first', 10.045],
    ['the lower look last', 10.055],
  ])('%s', (_what, at) => {
    for (const level of [2, 0.5, -3]) {
      const found = least(level, lower, { at, deep: 1, wide: 0.08 });
      expect(found.gap).toBeCloseTo(level - 1, 12);
      expect(found.crankAngle / DEG).toBeCloseTo(at, 9);
    }
  });

  test.each([10.045, 10.055])('narrower than a look, and seen at .44 and .16 of its depth: at %d', (at) => {
    const found = least(1, { at: 5, deep: 0.86, wide: 2 }, { at, deep: 1, wide: 0.06 });
    expect(found.gap).toBeCloseTo(0, 12);
    expect(found.crankAngle / DEG).toBeCloseTo(at, 9);
  });

  test('just before the end, where another reads nearly as low', () => {
    const found = least(1, { at: 5, deep: 0.0098, wide: 2 }, { at: 19.85, deep: 0.01, wide: 0.1 });
    expect(found.gap).toBeCloseTo(0.99, 12);
  });

  test('just before the end', () => {
    const found = least(1, { at: 19.85, deep: 0.01, wide: 0.1 });
    expect(found.gap).toBeCloseTo(0.99, 12);
    expect(found.crankAngle / DEG).toBeCloseTo(19.85, 9);
  });

  test('just after the start, and with both ends no whole tenth', () => {
    const curve = gapWith(1, [{ at: 0.15, deep: 0.01, wide: 0.1 }]);
    expect(leastGap(curve, 0, 20 * DEG).gap).toBeCloseTo(0.99, 12);
    expect(leastGap(curve, 0.037 * DEG, 3.061 * DEG).gap).toBeCloseTo(0.99, 12);
  });
});

test('overlap: a gap that is negative everywhere is least at its deepest dip', () => {
  const found = least(-0.5, { at: 4, deep: 0.2, wide: 1 }, { at: 12.03, deep: 0.25, wide: 1 });
  expect(found.gap).toBeCloseTo(-0.75, 12);
  expect(found.crankAngle / DEG).toBeCloseTo(12.03, 9);
});
