import { type Derived, RAD } from './derived.ts';
import { deg, inch, WORDS } from './forms.ts';

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
