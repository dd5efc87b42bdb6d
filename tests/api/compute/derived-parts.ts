import { type Derived, RAD } from './derived.ts';
import { deg, inch, lbf, perInch, WORDS } from './forms.ts';

/** Standard gravity in in/s² (NIST SP 811, B.8), for masses weighed in pounds. */
const G = 9.80665 / 0.0254;
const P7_20 = 1 / 20;
/** Turns as they are answered: 360° and six flats to one, worked out beside each. */
const turned = (turns: number, degrees: number, flats: number) => ({
  turns,
  degrees: deg(degrees),
  flats,
  direction: turns > 0 ? 'tighten' : 'loosen',
});
const screw = (more: object) => ({ thread: '7/16-20', ratio: 1.7, lifter: 'hydraulic', ...more });

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
  // The lever about the valve tip: the pivot's way and its seat's are as b to a + b.
  {
    name: 'adjuster',
    body: screw({ turns: 0.625, mount: 'stud-nut' }),
    result: { seatMovement: inch((0.625 * P7_20 * 2.7) / 1.7), ...turned(0.625, 225, 3.75) },
  },
  {
    name: 'adjuster',
    body: screw({ preload: inch(0.03), mount: 'cup-screw' }),
    result: { seatMovement: inch(0.03), ...turned(0.6, 216, 3.6) },
  },
  {
    name: 'adjuster',
    body: screw({ turns: -0.25, mount: 'valve-end-screw', lifter: 'solid' }),
    result: { lashChange: inch(0.25 * P7_20), ...turned(-0.25, -90, -1.5) },
  },
  {
    name: 'adjuster',
    body: screw({ turns: 0.5, mount: 'stud-nut', lifter: 'solid' }),
    result: { lashChange: inch(-0.5 * P7_20 * 2.7), ...turned(0.5, 180, 3) },
  },
  // Gap .0300 in to .0165 in: a turn of the stud nut closes .05 × 2.7 = .135, so a tenth of a turn, 36°, .6 flats.
  {
    name: 'adjuster',
    body: screw({ lashFound: inch(0.03), lashWanted: inch(0.0165), mount: 'stud-nut', lifter: 'solid' }),
    result: { lashChange: inch(-0.0135), ...turned(0.1, 36, 0.6) },
  },
  {
    name: 'adjuster',
    body: screw({
      lashFound: inch(0.01),
      lashWanted: inch(0.0225),
      mount: 'valve-end-screw',
      lifter: 'solid',
    }),
    result: { lashChange: inch(0.0125), ...turned(-0.25, -90, -1.5) },
  },
  {
    name: 'adjuster',
    body: screw({ lashFound: inch(0.01), lashWanted: inch(0.01), mount: 'cup-screw', lifter: 'solid' }),
    result: { lashChange: inch(0), turns: 0, degrees: deg(0), flats: 0 },
  },
  {
    name: 'adjuster',
    body: screw({ preloadWanted: inch(0.03), mount: 'cup-screw' }),
    result: { seatMovement: inch(0.03), ...turned(0.6, 216, 3.6) },
  },
  // .102 + .012 − .008 = .106; .105 is .001 off and .108 is .002 off, and leaves .114 − .105 = .009.
  {
    name: 'lash-shim',
    body: {
      shimFitted: inch(0.102),
      lashFound: inch(0.012),
      lashWanted: inch(0.008),
      stock: { values: [0.108, 0.105], unit: 'in' },
    },
    result: { shim: inch(0.106), nearest: { shim: inch(0.105), lash: inch(0.009) } },
  },
  // The lever about the valve tip again; 1.25 turns of 3/8-24 at 1.7 are .0827 in of a .080 in travel.
  {
    name: 'lifter-preload',
    body: {
      turns: 1.25,
      thread: '3/8-24',
      mount: 'stud-nut',
      ratio: 1.7,
      liftersTravel: inch(0.08),
      wanted: { from: inch(0.02), to: inch(0.04) },
    },
    result: {
      preload: inch((1.25 / 24) * (2.7 / 1.7)),
      inBand: 'over',
      left: inch(0.08 - (1.25 / 24) * (2.7 / 1.7)),
    },
  },
  {
    name: 'lifter-preload',
    body: { turns: 0.25, thread: '7/16-20', mount: 'cup-screw', ratio: 1.7 },
    result: { preload: inch(0.0125), inBand: 'under' },
  },
  // A page of trade practice: a checker marked 7.800, screwed apart one turn of .050, is 7.850.
  {
    name: 'pushrod-length',
    body: { checkerAtZero: inch(7.8), pitch: inch(0.05), turns: 1 },
    result: { length: inch(7.85) },
  },
  {
    name: 'pushrod-length',
    body: {
      checkerAtZero: inch(7.2),
      thread: '1/4-20',
      turns: 2.5,
      less: inch(0.01),
      convention: 'effective',
      stock: { values: [7.4, 7.3, 7.25], unit: 'in' },
    },
    result: { length: inch(7.298), nearest: { length: inch(7.3), difference: inch(0.002) } },
  },
  // Roller axis 1.2 + .25 = 1.45 over the face, pivot at 1.40: .05 below it where half of .5 in is wanted.
  {
    name: 'stand-height',
    body: {
      pivotHeight: inch(1.4),
      tipHeight: inch(1.2),
      netLift: inch(0.5),
      pivotToTip: inch(1.45),
      rollerRadius: inch(0.25),
      shims: { values: [0.015, 0.03], unit: 'in' },
    },
    result: { shim: inch(-0.2), pivotOffset: { now: inch(0.05), wanted: inch(0.25) } },
  },
  {
    name: 'stand-height',
    body: {
      pivotHeight: inch(-0.1),
      tipHeight: inch(0.25),
      netLift: inch(0.5),
      pivotToTip: inch(1.45),
      shims: { values: [0.06, 0.12, 0.09], unit: 'in' },
    },
    result: {
      shim: inch(0.1),
      pivotOffset: { now: inch(0.35), wanted: inch(0.25) },
      nearest: { shim: inch(0.09), difference: inch(-0.01), pivotOffset: inch(0.26) },
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
