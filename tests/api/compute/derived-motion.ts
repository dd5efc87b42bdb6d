import { type Derived, RAD } from './derived.ts';
import { deg, inch, lbf, perInch, WORDS } from './forms.ts';

/** Drop below true top by the plain formula; `e` toward the side the crankpin moves to. */
export function drop(stroke: number, rod: number, e: number, crankDegrees: number): number {
  const a = stroke / 2;
  const t = crankDegrees * RAD;
  const s = a * Math.cos(t) + Math.sqrt(rod ** 2 - (a * Math.sin(t) - e) ** 2);
  return Math.sqrt((rod + a) ** 2 - e ** 2) - s;
}

const [stroke, rod, e] = [3.48, 5.7, -0.045];
const tdc = Math.asin(e / (rod + stroke / 2)) / RAD;
const angles = [-30, -7.5, 12.5, 77, 200, 721];
const crank = { stroke: inch(stroke), rodLength: inch(rod), crankAngles: { values: angles, unit: 'deg' } };
const drops = (offset: number, zero: number) =>
  angles.map((angle) => inch(drop(stroke, rod, offset, angle + zero)));
const bdc = 180 + Math.asin(e / (rod - stroke / 2)) / RAD;
const realStroke = Math.sqrt((rod + 1.74) ** 2 - e ** 2) - Math.sqrt((rod - 1.74) ** 2 - e ** 2);
const offset = { tdcAt: deg(tdc), bdcAt: deg(bdc), actualStroke: inch(realStroke) };

const rise = (u: number) => u ** 4 * (35 - 84 * u + 70 * u ** 2 - 20 * u ** 3);
/** Where the rise has a share of the lift, by Newton's method from mid-flank. */
function whereRise(share: number): number {
  let u = 0.5;
  for (let step = 0; step < 200; step += 1) {
    const next = u - (rise(u) - share) / (140 * u ** 3 * (1 - u) ** 3);
    u = Math.min(Math.max(next, u / 2), (1 + u) / 2);
  }
  return u;
}

/** One duration fixes the flank: from the nose the phase falls evenly through it to the seat. */
const halfSeat = 116.5 / (1 - whereRise(0.05 / 0.331));
const exhaustLift = (angle: number) => {
  const from = Math.abs(((((angle + 112) % 720) + 1080) % 720) - 360);
  return inch(from < halfSeat ? 0.331 * rise(1 - from / halfSeat) : 0);
};
const places = [-112, -150, -40, 0, 20, 608, 300];

/** Acceleration (negative half, mid-flank to the nose) and lift of each law: R. L. Norton, Design of Machinery, ch. 8. */
const CA = (8 * Math.PI) / (Math.PI + 2);
const S = 1 / (4 + Math.PI);
const quarter = (u: number) => (CA / (4 * Math.PI)) * (u - Math.sin(4 * Math.PI * u) / (4 * Math.PI));
const even = (w: number) => quarter(1 / 8) + (CA / (4 * Math.PI)) * (w - 1 / 8) + (CA * (w - 1 / 8) ** 2) / 2;
const V3 = CA / (4 * Math.PI) + CA / 4;
/** Three stretches to mid-flank: |a| rising by a sine, even, and falling by a cosine from 3/8 on. */
function trapezoid(u: number): number {
  const w = 1 - u;
  if (w <= 1 / 8) return 1 - quarter(w);
  if (w <= 3 / 8) return 1 - even(w);
  const past = w - 3 / 8;
  return 1 - (even(3 / 8) + V3 * past + (CA / (16 * Math.PI ** 2)) * (1 - Math.cos(4 * Math.PI * past)));
}
const slowed = (u: number) => CA * (u < 5 / 8 ? Math.sin(4 * Math.PI * (u - 0.5)) : 1);
const LAWS: Readonly<
  Record<string, readonly [s: (u: number) => number, slowing: (u: number) => number, last: number]>
> = {
  parabolic: [(u) => 1 - 2 * (1 - u) ** 2, () => 4, 1],
  shm: [(u) => (1 - Math.cos(Math.PI * u)) / 2, (u) => -(Math.PI ** 2 / 2) * Math.cos(Math.PI * u), 1],
  cycloidal: [
    (u) => u - Math.sin(2 * Math.PI * u) / (2 * Math.PI),
    (u) => -2 * Math.PI * Math.sin(2 * Math.PI * u),
    1,
  ],
  'modified-trapezoid': [trapezoid, slowed, 0.875],
  'modified-sine': [
    (u) => S * (2 + Math.PI * u - (9 / 4) * Math.sin((4 * Math.PI * u + Math.PI) / 3)),
    (u) => -4 * Math.PI ** 2 * S * Math.sin((4 * Math.PI * u + Math.PI) / 3),
    0.875,
  ],
  '3-4-5': [(u) => u ** 3 * (10 - 15 * u + 6 * u ** 2), (u) => -60 * u * (1 - 3 * u + 2 * u ** 2), 1],
  '4-5-6-7': [rise, (u) => -420 * u ** 2 * (1 - u) ** 2 * (1 - 2 * u), 1],
};

const [mass, seat, rate, full, flank] = [0.38, 121, 333, 0.52, 68];
const G = 9.80665 / 0.0254;

/** Least cam speed over the slowing half, by halving the thirds about the lowest of many points. */
export function separation(law: string): { rpm: number; lift: number } {
  const [s, slowing, last] = LAWS[law] ?? [() => 0, () => 0, 1];
  const omega = (u: number): number => {
    const acceleration = (full * slowing(u)) / (flank * RAD) ** 2;
    return acceleration > 0 ? Math.sqrt((seat + rate * full * s(u)) / ((mass / G) * acceleration)) : Infinity;
  };
  const at = (index: number) => 0.5 + ((last - 0.5) * index) / 2000;
  const points = Array.from({ length: 2001 }, (_, index) => omega(at(index)));
  const best = points.indexOf(Math.min(...points));
  let [low, high] = [at(Math.max(0, best - 1)), at(Math.min(2000, best + 1))];
  for (let step = 0; step < 120; step += 1) {
    const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
    if (omega(a) <= omega(b)) high = b;
    else low = a;
  }
  const ends = [at(0), at(2000), (low + high) / 2].toSorted((a, b) => omega(a) - omega(b));
  const [u = low] = ends;
  return { rpm: (omega(u) * 30) / Math.PI, lift: full * s(u) };
}

export const LAW_NAMES = Object.keys(LAWS);
export const separationBody = (law: string) => ({
  effectiveMass: { value: mass, unit: 'lb' },
  seatLoad: lbf(seat),
  rate: perInch(rate),
  law,
  lift: inch(full),
  flank: deg(flank),
});

/** The roller's centre on its circle about the pivot, from its height alone. */
function sweepCase(setAt: string, below: number): Derived {
  const [b, h] = [1.57, 0.612];
  const x = (lift: number) => b - Math.sqrt(b ** 2 - (lift - below) ** 2);
  const path = Array.from({ length: 21 }, (_, step) => (h * step) / 20);
  return {
    name: 'roller-sweep',
    body: { pivotToTip: inch(b), netLift: inch(h), setAt },
    result: {
      sweep: inch(Math.max(x(0), x(h))),
      leastSweep: inch(b - Math.sqrt(b ** 2 - h ** 2 / 4)),
      rotation: deg((Math.asin((h - below) / b) + Math.asin(below / b)) / RAD),
      pivotOffset: inch(below),
      path: path.map((lift) => ({ lift: inch(lift), across: inch(x(lift)) })),
    },
  };
}

export const MOTION: readonly Derived[] = [
  {
    name: 'piston-drop',
    body: { ...crank, pinOffset: inch(e), from: 'crank-zero' },
    result: { drops: drops(e, 0), ...offset },
  },
  {
    name: 'piston-drop',
    body: { ...crank, pinOffset: inch(e), from: 'true-tdc' },
    result: { drops: drops(e, tdc), ...offset },
  },
  {
    name: 'piston-drop',
    body: { ...crank, from: 'crank-zero' },
    result: { drops: drops(0, 0), tdcAt: deg(0), bdcAt: deg(180), actualStroke: inch(stroke) },
  },
  {
    name: 'lobe-profile',
    body: {
      lobeLift: inch(0.331),
      centreline: deg(112),
      side: 'exhaust',
      durations: [{ atLift: inch(0.05), duration: deg(233) }],
      crankAngles: places.map(deg),
    },
    result: { lifts: places.map(exhaustLift), law: WORDS, fitError: inch(0) },
  },
  sweepCase('mid-lift', 0.306),
  sweepCase('closed', 0),
  sweepCase('open', 0.612),
];
