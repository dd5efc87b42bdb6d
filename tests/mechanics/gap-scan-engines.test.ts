import { expect, test } from 'vitest';
import { computation as gapScan } from '../../server/mechanics/computations/gap-scan.ts';
import { computation as pistonToValve } from '../../server/mechanics/computations/piston-to-valve.ts';
import { deg, inches } from './helpers/quantities.ts';
import { partOf, runner } from './helpers/runner.ts';

/**
 * The second route: scans read off the exact gap of piston and valve, whose least is found from its slope. They hold
 * the figures that the rule for steps rests on.
 */
const engine = runner(pistonToValve);
const scanner = runner(gapScan);

/** Numbers that are the same at every run. */
function uniform(seed: number): (from: number, to: number) => number {
  let state = seed;
  return (from, to) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return from + ((to - from) * state) / 2 ** 32;
  };
}

function invented(next: (from: number, to: number) => number, side: string) {
  const stroke = next(3, 4.5);
  const seat = next(250, 320);
  return {
    stroke: inches(stroke),
    rodLength: inches(stroke * next(1.5, 1.9)),
    valveAngle: deg(next(0, 23)),
    floor: 'pocket',
    closedGapAtTdc: inches(0.45),
    side,
    profile: {
      lobeLift: inches(next(0.28, 0.44)),
      centreline: deg(next(100, 116)),
      durations: [
        { atLift: inches(0.006), duration: deg(seat) },
        { atLift: inches(0.05), duration: deg(seat - next(45, 70)) },
      ],
    },
    ratio: next(1.45, 1.8),
  };
}

interface Point {
  readonly crankAngle: { readonly value: number };
  readonly gap: { readonly value: number };
}

const isPoint = (each: unknown): each is Point =>
  typeof partOf(each, 'crankAngle') === 'number' && typeof partOf(each, 'gap') === 'number';

function curveOf(result: unknown): readonly Point[] {
  const curve = partOf(result, 'curve');
  if (!Array.isArray(curve) || !curve.every(isPoint)) throw new Error('no curve');
  return curve;
}

const NEXT = uniform(7);
const ENGINES = Array.from({ length: 60 }, (_, index) => {
  const { result } = engine.run(invented(NEXT, index % 2 === 0 ? 'intake' : 'exhaust'));
  return {
    curve: curveOf(result),
    margin: Number(partOf(result, 'margin')),
    at: Number(partOf(result, 'atCrankAngle')),
  };
});

/** How far the scan’s least is off the true one, and how far off is its place, at worst over all phases of the step. */
function worst(step: number): { gap: number; place: number } {
  const off = { gap: 0, place: 0 };
  for (const { curve, margin, at } of ENGINES) {
    for (let phase = 0; phase < step; phase += 1) {
      const readings = curve.filter(({ crankAngle: { value } }) => {
        const whole = Math.round(value);
        return Math.abs(whole) <= 60 && (((whole - phase) % step) + step) % step === 0;
      });
      const { result } = scanner.run({ readings });
      expect(partOf(result, 'atEdge')).toBe('none');
      off.gap = Math.max(off.gap, Math.abs(Number(partOf(result, 'least')) - margin));
      off.place = Math.max(off.place, Math.abs(Number(partOf(result, 'atCrankAngle')) - at));
    }
  }
  return off;
}

test.each([
  [2, 0.00003, 0.1],
  [5, 0.0002, 0.4],
  [10, 0.001, 1.5],
  [20, 0.006, 4],
])(
  'scans of 60 invented engines every %d°: the least within %d in, its place within %d°',
  (step, gap, place) => {
    const off = worst(step);
    expect(off.gap).toBeLessThan(gap);
    expect(off.place).toBeLessThan(place);
  },
);

test('the bounds are no wider than they have to be', () => {
  expect(worst(5).gap).toBeGreaterThan(0.00005);
  expect(worst(20).gap).toBeGreaterThan(0.002);
});
