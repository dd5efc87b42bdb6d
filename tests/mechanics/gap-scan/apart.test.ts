import { describe, expect, test } from 'vitest';
import { standsApart } from '../../../server/mechanics/gap-scan/apart.ts';
import { halfWidthOf, leastOf } from '../../../server/mechanics/gap-scan/least.ts';
import { scanAsk } from '../../../server/mechanics/gap-scan/words.ts';
import { DEG, IN } from '../../../server/mechanics/kit/si.ts';
import { gapAt as exactGap, exactLeast, inventedEngine, numbers } from '../helpers/exact-gap.ts';
import { stationsAt as stations } from '../helpers/stations.ts';

/** An invented gap: .100 at its least, rising by .0003 times the square of the degrees from it. */
const gapAt = (degree: number, where = 0) => 0.1 + 0.0003 * (degree - where) ** 2;

const EVEN = [-6, -4, -2, 0, 2, 4, 6];
type Point = readonly [degree: number, gap: number];
const withOff = (wrong: number, off: number) =>
  EVEN.map((degree): Point => [degree, gapAt(degree) + (degree === wrong ? off : 0)]);

const told = (points: readonly Point[], u: number) => {
  const found = leastOf(stations(points), u);
  if (found.edge !== 'none') throw new RangeError('the least of these lies between readings');
  return { ...found, half: halfWidthOf(found, u) };
};

describe('one reading .020 too high among seven', () => {
  test.each([-4, -2, 0, 2, 4])('at %d° it is the one that is named', (wrong) => {
    const { apart } = told(withOff(wrong, 0.02), 0.001);
    expect((apart?.station.crankAngle ?? 9) / DEG).toBeCloseTo(wrong, 9);
    // The others lie on the parabola itself, so that it stands off by what was put on it.
    expect(apart?.off).toBeCloseTo(0.02, 10);
  });

  test.each([-4, -2, 0, 2, 4])('at %d° the least that was put in is within what is told', (wrong) => {
    const { least, half } = told(withOff(wrong, 0.02), 0.001);
    expect(Math.abs(least - 0.1)).toBeLessThanOrEqual(half);
  });

  // By hand, through .1012, .1000 and .1212 in steps of 2°: c − b²/4a = .1 − .005²/(4 · .0028) = .09777.
  test('beside the least: what the three make of it, .0022 under, and as far as the .1 without it', () => {
    const { least, half } = told(withOff(2, 0.02), 0.001);
    expect(least).toBeCloseTo(0.1 - 0.005 ** 2 / (4 * 0.0028), 6);
    expect(least + half).toBeGreaterThan(0.1);
    expect(half).toBeLessThan(0.0035);
  });

  test('it is asked for by its crank angle', () => {
    const points = withOff(2, 0.02).map(([degree, gap]): Point => [degree, gap * IN]);
    const list = stations(points);
    expect(scanAsk(leastOf(list, 0.001 * IN), list)).toBe(
      'The gap at 2° after TDC reads .020 in over the curve through its neighbours. Read that angle again, and put right or leave out what was wrong.',
    );
  });
});

describe('how far off is apart', () => {
  /*
   * Savitzky and Golay’s weights for a parabola through seven even points (Analytical Chemistry 36 (1964), table I, from
   * memory): the middle one has 7/21 of its own reading, so that its residual is 14/21 of its distance from the curve of
   * the others, and the two together scatter by √(1/(1 − 7/21)) = √1.5.
   */
  test('the middle one of seven: over 1.5 · √1.5 half-widths', () => {
    const bound = 1.5 * Math.sqrt(1.5) * 0.001;
    const at = (off: number) =>
      standsApart(stations(withOff(0, off).map(([x, y]): Point => [x, y * IN])), 0, 0.001 * IN);
    expect(at(bound * 0.999)).toBeUndefined();
    expect(at(bound * 1.001)?.off).toBeCloseTo(bound * 1.001 * IN, 12);
    expect(at(-bound * 1.001)?.off).toBeCloseTo(-bound * 1.001 * IN, 12);
  });

  test('with fewer than five near nothing says which of them it is', () => {
    const four = withOff(2, 0.02).filter(([degree]) => Math.abs(degree) < 5 && degree !== -4);
    expect(four).toHaveLength(4);
    expect(standsApart(stations(four), 0, 0.001)).toBeUndefined();
  });

  test('a real gap is no exact parabola, and none of its own readings stands apart', () => {
    const { uniform } = numbers(5);
    for (const step of [1, 2, 3, 4, 5])
      for (let draw = 0; draw < 100; draw += 1) {
        const engine = inventedEngine(uniform, draw % 2 === 0 ? 'intake' : 'exhaust');
        const first = exactLeast(engine).angle - 14 - uniform(0, step);
        const points = Array.from({ length: Math.ceil(30 / step) }, (_, at): Point => {
          const degree = first + at * step;
          return [degree, exactGap(engine, degree) * IN];
        });
        const found = leastOf(stations(points), 0.0002 * IN);
        expect(found.edge === 'none' ? found.apart : 'edge').toBeUndefined();
      }
  });
});

const TOLD = 1.959963984540054;

describe('a simulation of 2 000 scans, one reading near the least off', () => {
  const SCATTER = 0.0005;
  const ALL = 2000;

  function shares(step: number, off: number) {
    const { uniform, normal } = numbers(29);
    let [held, named, either] = [0, 0, 0];
    for (let draw = 0; draw < ALL; draw += 1) {
      const where = uniform(-1, 1);
      const degrees = Array.from({ length: Math.ceil(26 / step) }, (_, at) => step * at - 13 + uniform());
      const near = degrees.filter((degree) => Math.abs(degree - where) <= 4);
      const wrong = near[Math.floor(uniform() * near.length)];
      const points = degrees.map(
        (degree): Point => [
          degree,
          (gapAt(degree, where) + SCATTER * normal() + (degree === wrong ? off : 0)) * IN,
        ],
      );
      const found = leastOf(stations(points), TOLD * SCATTER * IN);
      if (found.edge !== 'none') continue;
      const holds = Math.abs(found.least - 0.1 * IN) <= halfWidthOf(found, TOLD * SCATTER * IN);
      if (holds) held += 1;
      if (found.apart !== undefined) named += 1;
      if (holds || found.apart !== undefined) either += 1;
    }
    return { held: held / ALL, named: named / ALL, either: either / ALL };
  }

  // Of 2 000 a share of .95 is known to .01, two standard deviations.
  test.each([2, 4])(
    'every %d°, .020 too high: it is asked about, and the interval holds the least',
    (step) => {
      const { held, named } = shares(step, 0.02);
      expect(named).toBeGreaterThan(0.995);
      expect(held).toBeGreaterThan(0.94);
    },
  );

  test.each([2, 4])('every %d°, .005 and .020 off either way: asked about, or the least is held', (step) => {
    for (const off of [0.005, -0.005, -0.02]) expect(shares(step, off).either).toBeGreaterThan(0.99);
  });

  test.each([2, 4])('every %d°, none off: 95 of 100 held, and three in a hundred asked at most', (step) => {
    const { held, named } = shares(step, 0);
    expect(held).toBeGreaterThan(0.94);
    expect(held).toBeLessThan(0.97);
    expect(named).toBeLessThan(0.03);
  });
});

// By what was said alone 67 of 100 would: the normal distribution within .98 (1.96/2) of its middle, from memory.
test('readings that all scatter by twice what was said: 85 of 100 intervals hold the least all the same', () => {
  const { uniform, normal } = numbers(31);
  let [held, all] = [0, 0];
  for (let draw = 0; draw < 1000; draw += 1) {
    const where = uniform(-1, 1);
    const points = EVEN.flatMap((at) => [at, at + 1]).map(
      (degree): Point => [degree, (gapAt(degree, where) + 0.001 * normal()) * IN],
    );
    const found = leastOf(stations(points), TOLD * 0.0005 * IN);
    if (found.edge !== 'none' || found.fitted.length < 10) continue;
    all += 1;
    if (Math.abs(found.least - 0.1 * IN) <= halfWidthOf(found, TOLD * 0.0005 * IN)) held += 1;
  }
  expect(all).toBeGreaterThan(400);
  expect(held / all).toBeGreaterThan(0.85);
});
