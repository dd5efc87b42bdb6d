import type { Derived } from './derived.ts';
import { deg, inch } from './forms.ts';

const event = (value: number, side: string) => ({ ...deg(value), side });

const timing = {
  intakeDuration: deg(231),
  exhaustDuration: deg(238),
  intakeCentreline: deg(107.5),
  exhaustCentreline: deg(116),
  lobeSeparation: deg(111.75),
  overlap: deg(11),
  advance: deg(4.25),
  intakeOpens: event(8, 'BTDC'),
  intakeCloses: event(43, 'ABDC'),
  exhaustOpens: event(55, 'BBDC'),
  exhaustCloses: event(3, 'ATDC'),
};

/** A scan's parabola by its three coefficients (Cramer's rule), its lowest point, Lagrange's polynomials there. */
function scanned(): Derived {
  const points = [
    [-4, 0.0931],
    [1, 0.0902],
    [3, 0.0958],
  ] as const;
  const [[p, f], [q, g], [r, h]] = points;
  const D = (p - q) * (p - r) * (q - r);
  const A = (r * (g - f) + q * (f - h) + p * (h - g)) / D;
  const B = (r * r * (f - g) + q * q * (h - f) + p * p * (g - h)) / D;
  const C = (q * r * (q - r) * f + r * p * (r - p) * g + p * q * (p - q) * h) / D;
  const at = -B / (2 * A);
  const least = C - B ** 2 / (4 * A);
  const weights = points.map(([own]) =>
    points.reduce((whole, [x]) => (x === own ? whole : (whole * (at - x)) / (own - x)), 1),
  );
  const half = 0.0015 * Math.hypot(...weights);
  const order = [3, -9, 1, 9, -4];
  const gaps = new Map<number, number>([...points, [-9, 0.12], [9, 0.14]]);
  return {
    name: 'gap-scan',
    body: {
      readings: order.map((angle) => ({ crankAngle: deg(angle), gap: inch(gaps.get(angle) ?? 0) })),
      readingUncertainty: inch(0.0015),
      limit: inch(0.09),
      side: 'exhaust',
    },
    result: {
      least: inch(least),
      atCrankAngle: deg(at),
      leastReading: { index: 2, gap: inch(0.0902) },
      interval95: [inch(least - half), inch(least + half)],
      atEdge: 'none',
      limit: inch(0.09),
      verdict: 'close',
    },
  };
}

/** Cam timing, the stop, and a scan by the degrees of the crank. */
export const TIMING: readonly Derived[] = [
  scanned(),
  {
    name: 'cam-timing',
    body: {
      intake: { opens: event(-8, 'ATDC'), closes: event(43, 'ABDC') },
      exhaust: { duration: deg(238), centreline: deg(116) },
    },
    result: timing,
  },
  {
    name: 'cam-timing',
    body: {
      intake: { duration: deg(231), centreline: deg(107.5) },
      exhaust: { opens: event(-55, 'ABDC'), closes: event(-3, 'BTDC') },
    },
    result: timing,
  },
  {
    name: 'centreline',
    body: { before: deg(-161), after: deg(-63.5), side: 'exhaust', card: deg(110) },
    result: { centreline: deg(112.25), advanceAgainstCard: deg(2.25), costs: 'intake' },
  },
  {
    name: 'centreline',
    body: { opens: event(10, 'ATDC'), closes: event(39, 'ABDC') },
    result: { centreline: deg(114.5), duration: deg(209) },
  },
  {
    // The pointer .75 out: 9.25 ATDC and 38.25 ABDC are left, 209 about 114.5 less .75.
    name: 'centreline',
    body: {
      opens: event(10, 'ATDC'),
      closes: event(39, 'ABDC'),
      pointerOff: deg(0.75),
      card: deg(110),
      cardDuration: deg(208),
    },
    result: {
      centreline: deg(113.75),
      advanceAgainstCard: deg(-3.75),
      costs: 'exhaust',
      duration: deg(209),
      durationOverCard: deg(1),
    },
  },
  {
    name: 'top-dead-centre',
    body: { stopReadings: { values: [27.5, 34], unit: 'deg' } },
    result: { trueReading: deg(30.75), correction: deg(-3.25) },
  },
];
