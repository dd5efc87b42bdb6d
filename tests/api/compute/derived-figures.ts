import type { Derived } from './derived.ts';
import { deg, inch, lbf, perInch, WORDS } from './forms.ts';
import { mean, solved, spread, studentFactor } from './plain-statistics.ts';

const event = (value: number, side: string) => ({ ...deg(value), side });

const valves = [0.5302, 0.5309, 0.5298, 0.5305];
const lobes = [0.3201, 0.3204, 0.3199];

/** JCGM 100:2008, 4.2, 4.3.7, 5.2.2 and G.4, term by term. */
function fullLift(same: boolean): Derived {
  const [V, L] = [mean(valves), mean(lobes)];
  const y = V / L;
  const root3 = Math.sqrt(3);
  const ofV = [spread(valves) / 2, 0.0005 / root3, 0.0025 / root3].map((u) => u / L);
  const ofL = [spread(lobes) / root3, 0.00005 / root3, 0.002 / root3].map((u) => (u * y) / L);
  const shared = same ? -2 * 0.5 * (ofV[2] ?? 0) * (ofL[2] ?? 0) : 0;
  const parts = [...ofV, ...ofL];
  const variance = parts.reduce((sum, part) => sum + part ** 2, shared);
  const u = Math.sqrt(variance);
  const freedom = variance ** 2 / ((parts[0] ?? 0) ** 4 / 3 + (parts[3] ?? 0) ** 4 / 2);
  const k = studentFactor(0.95, Math.floor(freedom));
  const line = (contribution: number, share: number) => ({ source: WORDS, contribution, share });
  const [low, high] = [y - k * u, y + k * u];
  const needs = (ratio: number, verdict: string) => ({ ratio, verdict, needsValveLift: inch(ratio * L) });
  return {
    name: 'ratio-at-full-lift',
    body: {
      valveLift: { readings: valves.map(inch), graduation: inch(0.001), errorLimit: inch(0.0025) },
      lobeLift: {
        readings: { values: lobes, unit: 'in' },
        graduation: inch(0.0001),
        errorLimit: inch(0.002),
      },
      sameIndicator: same,
      spring: 'running',
      nominals: [1.5, 1.65, 1.655, 1.7],
    },
    result: {
      ratio: y,
      standardUncertainty: u,
      degreesOfFreedom: freedom,
      coverageFactor: k,
      interval95: [low, high],
      budget: [
        ...parts.map((part) => line(part, part ** 2 / variance)),
        ...(same ? [line(Math.sqrt(-shared), shared / variance)] : []),
      ],
      nominals: [
        needs(1.5, 'differs'),
        needs(1.65, 'cannot-tell'),
        needs(1.655, 'cannot-tell'),
        needs(1.7, 'differs'),
      ],
    },
  };
}

/** A card alone with no passes: no scatter, so no limit to the freedom, and nothing shared with an indicator. */
function onCard(): Derived {
  const y = 0.501 / 0.334;
  const root3 = Math.sqrt(3);
  const parts = [0.0005 / root3 / 0.334, 0.001 / root3 / 0.334, (0.0025 / root3 / 0.334) * y];
  const variance = parts.reduce((sum, part) => sum + part ** 2, 0);
  const half = 1.959963984540054 * Math.sqrt(variance);
  return {
    name: 'ratio-at-full-lift',
    body: {
      valveLift: { readings: [inch(0.501)], graduation: inch(0.001), errorLimit: inch(0.001) },
      lobeLift: { value: inch(0.334), errorLimit: inch(0.0025), source: 'card' },
      sameIndicator: true,
      spring: 'light',
    },
    result: {
      ratio: y,
      standardUncertainty: Math.sqrt(variance),
      coverageFactor: 1.959963984540054,
      interval95: [y - half, y + half],
      budget: parts.map((part) => ({ source: WORDS, contribution: part, share: part ** 2 / variance })),
    },
  };
}

const stations = [0.08, 0.15, 0.23, 0.31];
const light = [0.1235, 0.2391, 0.3702, 0.5021];
const running = [0.1165, 0.2292, 0.3583, 0.4871];
const u = 0.0012;
const pairs = (lifts: readonly number[]) =>
  lifts.map((valve, index) => ({ lobeLift: inch(stations[index] ?? 0), valveLift: inch(valve) }));
const steps = (lifts: readonly number[]) =>
  lifts.slice(1).map((valve, index) => {
    const rise = (stations[index + 1] ?? 0) - (stations[index] ?? 0);
    return (valve - (lifts[index] ?? 0)) / rise;
  });

/** V = R·L − g − C·F by the normal equations (JCGM 100:2008, H.3 for the line). */
function throughLift(both: boolean): Derived {
  const force = (valve: number) => 115 + 320 * valve;
  const rows = [
    ...light.map((valve, index) => ({ x: [stations[index] ?? 0, -1, 0], valve })),
    ...(both ? running.map((valve, index) => ({ x: [stations[index] ?? 0, -1, -force(valve)], valve })) : []),
  ].map(({ x, valve }) => ({ x: both ? x : x.slice(0, 2), valve }));
  const { estimates, inverse } = solved(rows);
  const [ratio = 0, lash = 0, give = 0] = estimates;
  const s = u * Math.sqrt(1 + ratio ** 2);
  const sd = inverse.map((row, index) => s * Math.sqrt(row[index] ?? 0));
  const onLine = (x: readonly number[]) =>
    x.reduce((sum, part, index) => sum + part * (estimates[index] ?? 0), 0);
  const perLoad = (value: number) => ({ value, unit: 'in/lbf' });
  const second = { pairs: pairs(running), springSeatLoad: lbf(115), springRate: perInch(320) };
  return {
    name: 'ratio-through-lift',
    body: { pairs: pairs(light), readingUncertainty: inch(u), ...(both ? { secondPass: second } : {}) },
    result: {
      ratio: { value: ratio, standardUncertainty: sd[0] },
      lashLeftIn: { value: inch(lash), standardUncertainty: inch(sd[1] ?? 0) },
      ...(both ? { compliance: { value: perLoad(give), standardUncertainty: perLoad(sd[2] ?? 0) } } : {}),
      correlations: inverse.map((row, i) =>
        row.map((part, j) => part / Math.sqrt((inverse[i]?.[i] ?? 1) * (inverse[j]?.[j] ?? 1))),
      ),
      residuals: rows.map(({ x, valve }) => inch(valve - onLine(x))),
      segmentRatios: steps(light),
      ...(both ? { runningSegmentRatios: steps(running) } : {}),
      identifiable: ['ratio', 'lashLeftIn', ...(both ? ['compliance'] : [])],
    },
  };
}

/** A hole of .3180 in against the nominal holes of the fasteners table, nearest of one fit first. */
const hole = 0.318;
const M8 = 8 / 25.4;
const row = (designation: string, nominal: number, majors: readonly [number, number], fit: string) => ({
  designation,
  nominal: inch(nominal),
  threadMajorMin: inch(majors[0]),
  threadMajorMax: inch(majors[1]),
  offset: inch(hole - nominal),
  fit,
});
const FASTENERS = [
  row('M8×1.25', M8, [7.76 / 25.4, 7.972 / 25.4], 'agrees'),
  row('5/16-18 UNC', 0.3125, [0.3026, 0.3113], 'agrees'),
  row('5/16-24 UNF', 0.3125, [0.3042, 0.3114], 'agrees'),
  row('3/8-16 UNC', 0.375, [0.3643, 0.3737], 'differs'),
  row('3/8-24 UNF', 0.375, [0.3667, 0.3739], 'differs'),
  row('7/16-14 UNC', 0.4375, [0.4258, 0.4361], 'differs'),
  row('7/16-20 UNF', 0.4375, [0.4281, 0.4362], 'differs'),
];
const band = (below: number, above: number) => ({ below: inch(below), above: inch(above) });

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

export const FIGURES: readonly Derived[] = [
  scanned(),
  fullLift(true),
  fullLift(false),
  onCard(),
  throughLift(false),
  throughLift(true),
  {
    name: 'fastener-for-hole',
    body: { hole: inch(hole), readingBand: band(0.002, 0.006) },
    result: {
      fasteners: FASTENERS,
      band: band(0.002, 0.006),
      doubt: band(0.008, 0.012),
      summary: 'M8×1.25 or 5/16-18 UNC or 5/16-24 UNF',
      ask: WORDS,
    },
  },
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
