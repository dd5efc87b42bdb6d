import type { Derived } from './derived.ts';
import { inch, lbf, perInch, WORDS } from './forms.ts';
import { mean, solved, spread, studentFactor } from './plain-statistics.ts';

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

export const RATIOS: readonly Derived[] = [
  fullLift(true),
  fullLift(false),
  onCard(),
  throughLift(false),
  throughLift(true),
];
