import type { Derived } from './derived.ts';
import { inch, lbf, perInch } from './forms.ts';

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

export const SPRINGS: readonly Derived[] = [
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
];
