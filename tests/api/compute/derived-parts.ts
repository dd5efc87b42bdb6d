import { type Derived, RAD } from './derived.ts';
import { deg, inch, lbf, perInch, WORDS } from './forms.ts';

/** Standard gravity in in/s² (NIST SP 811, B.8), for masses weighed in pounds. */
const G = 9.80665 / 0.0254;
/** J. E. Shigley's rate by steps, and the frequency from rate and mass, not from the closed form. */
function wireSpring() {
  const [d, D, active, total] = [0.192, 1.258, 4.75, 6.5];
  const rate = (11.2e6 * d ** 4) / (8 * D ** 3 * active);
  const mass = ((0.284 / G) * Math.PI ** 2 * d ** 2 * D * active) / 4;
  return {
    body: {
      wire: inch(d),
      meanDiameter: inch(D),
      activeCoils: active,
      totalCoils: total,
      shearModulus: { value: 11.2e6, unit: 'psi' },
      density: { value: 0.284, unit: 'lb/in3' },
    },
    rate: perInch(rate),
    naturalFrequency: { value: Math.sqrt(rate / mass) / 2, unit: 'Hz' },
    wire: d,
    total,
  };
}
const wire = wireSpring();
const wireCase = (ends: string, coils: number): Derived => ({
  name: 'spring-from-wire',
  body: { ...wire.body, ends },
  result: { rate: wire.rate, naturalFrequency: wire.naturalFrequency, solidHeight: inch(wire.wire * coils) },
});

const spring = (rate: number, freeLength: number, solidHeight: number) => ({
  rate: perInch(rate),
  freeLength: inch(freeLength),
  solidHeight: inch(solidHeight),
});

export const PARTS: readonly Derived[] = [
  // dial: 7 turns of .050 and .0125 on, from 2 turns and .030; the hand backwards stands at 360° − 90°.
  {
    name: 'dial-reading',
    body: {
      graduation: inch(0.0005),
      perTurn: inch(0.05),
      turns: 7,
      needle: inch(0.0125),
      runs: 'anticlockwise',
      start: { turns: 2, needle: inch(0.03) },
      travel: inch(0.5),
    },
    result: { reading: inch(0.2325), remainingTravel: inch(0.1375), needleAngle: deg(270) },
  },
  {
    name: 'dial-reading',
    body: { graduation: inch(0.001), perTurn: inch(0.1), turns: 0, needle: inch(0) },
    result: { reading: inch(0), needleAngle: deg(0) },
  },
  {
    name: 'cosine-error',
    body: { reading: inch(0.4321), tilt: deg(23), contact: 'flat-face' },
    result: {
      trueMotion: inch(0.4321 * Math.cos(23 * RAD)),
      error: inch(0.4321 * (1 - Math.cos(23 * RAD))),
    },
  },
  {
    name: 'cosine-error',
    body: { reading: inch(0.4321), tilt: deg(23), contact: 'carried-point' },
    result: {
      trueMotion: inch(0.4321 / Math.cos(23 * RAD)),
      error: inch(0.4321 * (1 - 1 / Math.cos(23 * RAD))),
    },
  },
  // ASME B1.1 formulas (worked in the reference list of check values) and the tables of ISO 965-2.
  {
    name: 'thread',
    body: { designation: '7/16 - 14 UNC' },
    result: {
      nominal: inch(7 / 16),
      pitch: inch(1 / 14),
      advancePerTurn: inch(1 / 14),
      majorMin: inch(0.4258),
      majorMax: inch(0.4361),
      class: '2A',
    },
  },
  {
    name: 'thread',
    body: { designation: 'm10x1.5' },
    result: {
      nominal: inch(10 / 25.4),
      pitch: inch(1.5 / 25.4),
      advancePerTurn: inch(1.5 / 25.4),
      majorMin: inch(9.732 / 25.4),
      majorMax: inch(9.968 / 25.4),
      class: '6g',
    },
  },
  // One limit's spread is left of two that go together by half; .0312 ± .0034 reaches past .020 with all of it.
  {
    name: 'deflection',
    body: {
      lightLift: inch(0.5712),
      runningLift: inch(0.54),
      lobeLift: inch(0.36),
      mount: 'shaft',
      errorLimit: inch(0.003),
    },
    result: {
      deflection: inch(0.0312),
      ratioLost: 0.0312 / 0.36,
      interval95: [
        inch(0.0312 - (1.959963984540054 * 0.003) / Math.sqrt(3)),
        inch(0.0312 + (1.959963984540054 * 0.003) / Math.sqrt(3)),
      ],
      usual: { from: inch(0.005), to: inch(0.02) },
      against: 'more',
    },
  },
  {
    name: 'deflection',
    body: { lightLift: inch(0.55), runningLift: inch(0.5625) },
    result: { deflection: inch(-0.0125), against: 'none' },
  },
  // The arms' quotient, its errors in quadrature by JCGM 100, 5.1.2, and the two-sided 95 % factor of the normal.
  {
    name: 'arm-lengths',
    body: {
      pivotToTip: { value: inch(1.52), errorLimit: inch(0.008) },
      pivotToCup: { value: inch(0.95), errorLimit: inch(0.006) },
      nominals: [1.55, 1.6, 1.61],
    },
    result: (() => {
      const [tip, cup] = [0.008 / Math.sqrt(3), 0.006 / Math.sqrt(3)];
      const u = Math.hypot(tip / 0.95, (1.6 * cup) / 0.95);
      const nominal = (ratio: number, verdict: string) => ({
        ratio,
        verdict,
        needsPivotToCup: inch(1.52 / ratio),
      });
      return {
        ratio: 1.6,
        standardUncertainty: u,
        interval95: [1.6 - 1.959963984540054 * u, 1.6 + 1.959963984540054 * u],
        nominals: [nominal(1.55, 'differs'), nominal(1.6, 'cannot-tell'), nominal(1.61, 'cannot-tell')],
      };
    })(),
  },
  // The lever at each end, its errors in quadrature as above; lift over lift lies between the outer bounds.
  {
    name: 'follower-ratio',
    body: {
      shut: {
        toValve: { value: inch(1.5), errorLimit: inch(0.006) },
        toCam: { value: inch(1), errorLimit: inch(0.006) },
      },
      open: {
        toValve: { value: inch(1.44), errorLimit: inch(0.006) },
        toCam: { value: inch(0.9), errorLimit: inch(0.006) },
      },
    },
    result: (() => {
      const at = (ratio: number, cam: number) => {
        const u = (0.006 / Math.sqrt(3) / cam) * Math.hypot(1, ratio);
        const half = 1.959963984540054 * u;
        return { ratio, standardUncertainty: u, interval95: [ratio - half, ratio + half] };
      };
      const [shut, open] = [at(1.5, 1), at(1.6, 0.9)];
      return { shut, open, overall: [shut.interval95[0], open.interval95[1]] };
    })(),
  },
  {
    name: 'lift',
    body: { lobeLift: inch(0.3333), ratio: 1.73, lash: inch(0.0185) },
    result: { grossLift: inch(0.3333 * 1.73), netLift: inch(0.3333 * 1.73 - 0.0185) },
  },
  {
    name: 'spring-load',
    body: {
      installedHeight: inch(1.82),
      seatLoad: lbf(118),
      rate: perInch(367),
      netLift: inch(0.613),
      solidHeight: inch(1.185),
      limit: inch(0.025),
      uncertainty: inch(0.005),
    },
    // .022 left: .005 either side of it reaches the limit of .025.
    result: {
      openHeight: inch(1.207),
      openLoad: lbf(118 + 367 * 0.613),
      margin: inch(0.022),
      limit: inch(0.025),
      verdict: 'close',
    },
  },
  wireCase('plain', wire.total + 1),
  wireCase('plain-ground', wire.total),
  wireCase('squared', wire.total + 1),
  wireCase('squared-ground', wire.total),
  // The third spring is loose at 1.800 and is pressed by .400 when open; the second goes solid first.
  {
    name: 'spring-nest',
    body: {
      springs: [spring(280, 2.2, 1.05), spring(120, 2, 1.12), spring(60, 1.7, 0.9)],
      installedHeight: inch(1.8),
      netLift: inch(0.5),
    },
    result: {
      seatLoad: lbf(280 * 0.4 + 120 * 0.2),
      openLoad: lbf(280 * 0.9 + 120 * 0.7 + 60 * 0.4),
      loads: [
        { seatLoad: lbf(280 * 0.4), openLoad: lbf(280 * 0.9) },
        { seatLoad: lbf(120 * 0.2), openLoad: lbf(120 * 0.7) },
        { seatLoad: lbf(0), openLoad: lbf(60 * 0.4) },
      ],
      margin: inch(0.18),
      limit: inch(0.06),
      verdict: 'clear',
      limiting: 1,
    },
  },
  // The inner one on a step of .080: pressed by .280 and .780, and the first to go solid. Both loads within 8 %.
  {
    name: 'spring-nest',
    body: {
      springs: [
        { ...spring(310, 2.25, 1.02), installedHeight: inch(1.85) },
        { ...spring(140, 2.05, 1.15), installedHeight: inch(1.77) },
      ],
      netLift: inch(0.5),
      loadTolerance: 0.08,
      limit: inch(0.1),
    },
    result: (() => {
      const [seat, open] = [
        [310 * 0.4, 140 * 0.28],
        [310 * 0.9, 140 * 0.78],
      ] as const;
      const ends = ([one, other]: readonly [number, number]) => {
        const half = ((1.959963984540054 * 0.08) / Math.sqrt(3)) * Math.hypot(one, other);
        return [lbf(one + other - half), lbf(one + other + half)];
      };
      return {
        seatLoad: lbf(seat[0] + seat[1]),
        openLoad: lbf(open[0] + open[1]),
        loads: [
          { seatLoad: lbf(seat[0]), openLoad: lbf(open[0]) },
          { seatLoad: lbf(seat[1]), openLoad: lbf(open[1]) },
        ],
        interval95: { seatLoad: ends(seat), openLoad: ends(open) },
        margin: inch(0.12),
        limit: inch(0.1),
        verdict: 'clear',
        limiting: 1,
      };
    })(),
  },
  {
    name: 'retainer-to-seal',
    body: { closedDistance: inch(0.55), netLift: inch(0.5613) },
    result: { margin: inch(-0.0113), limit: inch(0.05), verdict: 'short' },
  },
  {
    name: 'pivot-load',
    body: { springLoad: lbf(337), ratio: 1.73 },
    result: { pushrodLoad: lbf(337 * 1.73), pivotLoad: lbf(337 * 2.73) },
  },
  // 126 °F of rise are 70 K; W. D. Callister, table B.6: iron 11.4, 6061 23.6, 4140 12.3, here a valve of 14.7.
  {
    name: 'lash-hot-cold',
    body: {
      hotLash: inch(0.016),
      temperatureRise: { value: 126, unit: 'degF' },
      ratio: 1.6,
      heights: { block: inch(4.6), head: inch(5), seat: inch(0), valve: inch(4.9), pushrod: inch(9.5) },
      materials: {
        block: 'grey-iron',
        head: 'aluminium-6061',
        pushrod: 'steel-4140',
        valve: { expansion: { value: 14.7e-6, unit: '1/K' } },
      },
    },
    result: (() => {
      const pivot = 70e-6 * (11.4 * 4.6 + 23.6 * 5);
      const cup = 70e-6 * 12.3 * 9.5;
      const tip = 70e-6 * (11.4 * 4.6 + 14.7 * 4.9);
      const change = 2.6 * pivot - 1.6 * cup - tip;
      return { lashChange: inch(change), coldLash: inch(0.016 - change) };
    })(),
  },
  ...(
    [
      ['perimeter', 2.5, 'clear'],
      ['through-centre', 1.25, 'clear'],
      ['through-centre', 1.25 + 5e-10, 'clear'],
      ['through-centre', 1.2501, 'close'],
      ['through-centre', 1.55, 'short'],
      ['through-centre', 1.55 - 5e-10, 'short'],
    ] as const
  ).map(
    ([coverBolting, width, verdict]): Derived => ({
      name: 'cover-room',
      body: { coverBolting, assemblyWidth: inch(width) },
      result: { verdict, reason: WORDS, settledBy: WORDS },
    }),
  ),
];
