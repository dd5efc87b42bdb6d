import { describe, expect, test } from 'vitest';
import { scanned } from '../../../server/mechanics/assessment/scans/scanned.ts';
import { leastOf } from '../../../server/mechanics/gap-scan/least.ts';
import { DEG, IN } from '../../../server/mechanics/kit/si.ts';
import { pointsOf, scanEvidence } from '../assessment/scan-evidence.ts';
import { stationsAt as stations } from '../helpers/stations.ts';

/*
 * The least of a scan by another route: a parabola from its normal equations by Cramer’s rule, in degrees as they come
 * and without a common scale; its lowest point c − b²/4a; and how far that is off by the law of propagation with
 * differences taken by moving one reading at a time (JCGM 100:2008, 5.1.2 and the note to 5.1.3, from memory).
 */
type Point = readonly [degree: number, gap: number];

const sum = (points: readonly Point[], of: (point: Point) => number) =>
  points.reduce((total, point) => total + of(point), 0);

const determinant = ([[a, b, c], [d, e, f], [g, h, i]]: Matrix): number =>
  a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
type Row = readonly [number, number, number];
type Matrix = readonly [Row, Row, Row];

interface Vertex {
  readonly least: number;
  readonly at: number;
}

function vertexOf(points: readonly Point[]): Vertex {
  const s = (power: number) => sum(points, ([x]) => x ** power);
  const t = (power: number) => sum(points, ([x, y]) => y * x ** power);
  const [n, s1, s2, s3, s4] = [points.length, s(1), s(2), s(3), s(4)];
  const [t0, t1, t2] = [t(0), t(1), t(2)];
  const whole = determinant([
    [n, s1, s2],
    [s1, s2, s3],
    [s2, s3, s4],
  ]);
  const c =
    determinant([
      [t0, s1, s2],
      [t1, s2, s3],
      [t2, s3, s4],
    ]) / whole;
  const b =
    determinant([
      [n, t0, s2],
      [s1, t1, s3],
      [s2, t2, s4],
    ]) / whole;
  const a =
    determinant([
      [n, s1, t0],
      [s1, s2, t1],
      [s2, s3, t2],
    ]) / whole;
  return { least: c - b ** 2 / (4 * a), at: -b / (2 * a) };
}

/** What an error of one in each reading does to the lowest point, in quadrature. */
function spreadOf(points: readonly Point[]): number {
  const by = 1e-6;
  const moved = (which: number, off: number) =>
    vertexOf(points.map(([x, y], index): Point => [x, index === which ? y + off : y])).least;
  return Math.hypot(...points.map((_, index) => (moved(index, by) - moved(index, -by)) / (2 * by)));
}

/** Park and Miller’s generator, and Box and Muller’s normal numbers from it: the same in every run. */
function drawsFrom(seed: number) {
  let state = seed;
  const uniform = () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
  const normal = () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
  return { uniform, normal };
}

/** An invented gap: .100 at its least, rising by .0003 times the square of the degrees from it. */
const gapAt = (degree: number, where = 0, least = 0.1) => least + 0.0003 * (degree - where) ** 2;

const EVEN = [-6, -4, -2, 0, 2, 4, 6];
const UNEVEN = [-5.5, -4, -2.5, -1, 0.5, 2.2, 4.1, 5.7];

describe('through readings within 6° of the least, against normal equations by Cramer’s rule', () => {
  test.each([
    ['even steps', [-5.4, -3.6, -1.8, 0, 1.8, 3.6, 5.4], 0.0002, 3],
    ['uneven steps', UNEVEN, 0.0002, 5],
    ['uneven steps and more scatter', UNEVEN, 0.0006, 11],
    ['four readings', [-4.5, -1.5, 1.2, 4.8], 0.0001, 7],
  ] as const)('%s', (_, degrees, scatter, seed) => {
    const { normal } = drawsFrom(seed);
    const points = degrees.map((degree): Point => [degree, gapAt(degree, 0.3) + scatter * normal()]);
    const found = leastOf(stations(points), 0.002);
    const wanted = vertexOf(points);
    expect(found.edge).toBe('none');
    if (found.edge !== 'none') return;
    expect(found.fitted).toHaveLength(points.length);
    expect(found.least).toBeCloseTo(wanted.least, 10);
    expect(found.crankAngle / DEG).toBeCloseTo(wanted.at, 7);
    expect(found.spread).toBeCloseTo(spreadOf(points), 6);
  });
});

describe('what is no plain parabola', () => {
  test('of two dips nearly alike the lower one, by its own readings alone', () => {
    // .1000 at 12 before, .1004 at 10 after; the ridge between stands over both.
    const two = (degree: number) => Math.min(gapAt(degree, -12), gapAt(degree, 10, 0.1004));
    const points = Array.from({ length: 21 }, (_, at): Point => [2 * at - 20, two(2 * at - 20)]);
    const found = leastOf(stations(points), 0.0005);
    const near = points.filter(([degree]) => Math.abs(degree + 12) <= 6);
    expect(found.least).toBeCloseTo(vertexOf(near).least, 10);
    expect(found.crankAngle / DEG).toBeCloseTo(-12, 7);
  });

  test.each([
    ['first', [2, 4, 6, 8, 10, 12]],
    ['last', [-12, -10, -8, -6, -4, -2]],
  ] as const)('the least at the %s reading is an edge: nothing is fitted past it', (edge, degrees) => {
    const points = degrees.map((degree): Point => [degree, gapAt(degree)]);
    const found = leastOf(stations(points), 0.001);
    expect([found.edge, found.least]).toEqual([edge, Math.min(...points.map(([, gap]) => gap))]);
  });

  const withHigh = (wrong: number) =>
    EVEN.map((degree): Point => [degree, gapAt(degree) + (degree === wrong ? 0.02 : 0)]);

  test.each([-4, 4])('one reading .020 too high at %d° leaves the least where it is', (wrong) => {
    const points = withHigh(wrong);
    // A parabola through all of them would be off by more than they err.
    expect(Math.abs(vertexOf(points).least - 0.1)).toBeGreaterThan(0.001);
    expect(Math.abs(leastOf(stations(points), 0.001).least - 0.1)).toBeLessThan(0.001);
  });

  test('one reading .006 too low is believed until it is put right: no more than it', () => {
    const points = EVEN.map((degree): Point => [degree, gapAt(degree) - (degree === 2 ? 0.006 : 0)]);
    const found = leastOf(stations(points), 0.001);
    expect(found.least).toBeLessThanOrEqual(gapAt(2) - 0.006);
    expect(found.edge === 'none' ? found.apart?.off : 0).toBeCloseTo(-0.006, 10);
  });
});

const TOLD = 1.959963984540054;

/** Steps of 1° to 3° from about 12° before to 12° after where the least is. */
function degreesFrom(uniform: () => number): number[] {
  const degrees: number[] = [];
  for (let degree = -12 + uniform(); degree <= 12; degree += 1 + 2 * uniform()) degrees.push(degree);
  return degrees;
}

describe('a simulation of 3 000 scans in uneven steps', () => {
  const SCATTER = 0.0005;
  const ALL = 3000;

  /** How often the interval of a scan holds the true least. */
  function share(holds: (points: readonly Point[]) => boolean): number {
    const { uniform, normal } = drawsFrom(29);
    let held = 0;
    for (let draw = 0; draw < ALL; draw += 1) {
      const where = 2 * uniform() - 1;
      const points = degreesFrom(uniform).map(
        (degree): Point => [degree, gapAt(degree, where) + SCATTER * normal()],
      );
      if (holds(points)) held += 1;
    }
    return held / ALL;
  }

  // Of 3 000 a share of .95 is known to .008, two standard deviations.
  test('95 of 100 intervals hold the true least', () => {
    const told = share((points) => {
      const found = leastOf(stations(points), TOLD * SCATTER);
      return found.edge === 'none' && Math.abs(found.least - 0.1) <= found.spread * TOLD * SCATTER;
    });
    expect(told).toBeGreaterThan(0.94);
    expect(told).toBeLessThan(0.965);
  });

  test('what is told of a scan holds no fewer: a tool errs alike in all its readings', () => {
    // An indicator is good to .002 on an engine (common practice, no source): 4 times the scatter here.
    const told = share((points) => {
      const { least } = scanned(scanEvidence(pointsOf(points)));
      return least.low !== undefined && least.low <= 0.1 * IN && (least.high ?? 0) >= 0.1 * IN;
    });
    expect(told).toBeGreaterThan(0.95);
  });
});
