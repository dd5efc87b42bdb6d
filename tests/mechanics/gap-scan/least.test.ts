import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation } from '../../../server/mechanics/computations/gap-scan.ts';
import { expectNear } from '../helpers/near.ts';
import { deg, inches, mm } from '../helpers/quantities.ts';
import { partOf, runner } from '../helpers/runner.ts';
import { type Pair, parabola, scan } from '../helpers/scan.ts';

const { run, number } = runner(computation);

describe('the least between the readings', () => {
  test('three readings at steps of 2° and 4°, by Newton’s divided differences (by hand)', () => {
    // Through (0, .3), (2, .1), (6, .2): slopes −.1 and .025, second difference .0208333; P′ = 0 at 3.4, P = .059167.
    const given = scan([
      [0, 0.3],
      [2, 0.1],
      [6, 0.2],
    ]);
    expectNear(number(given, 'atCrankAngle'), 3.4);
    expectNear(number(given, 'least'), 0.3 - 0.1 * 3.4 + (0.125 / 6) * 3.4 * 1.4);
    expect(partOf(run(given).result, 'leastReading.index')).toBe(1);
    expectNear(number(given, 'leastReading.gap'), 0.1);
  });

  const where = fc.double({ min: -15, max: 15, noNaN: true });
  const bend = fc.double({ min: 1e-5, max: 1e-2, noNaN: true });
  const least = fc.double({ min: 0.001, max: 0.3, noNaN: true });
  const steps = fc.array(fc.double({ min: 0.5, max: 6, noNaN: true }), { minLength: 12, maxLength: 30 });

  /** Crank angles at uneven steps from 30° before the least to beyond it. */
  function angles(parts: readonly number[], middle: number): number[] {
    const found = [middle - 30];
    for (let turn = 0; (found.at(-1) ?? 0) < middle + 20; turn += 1) {
      found.push((found.at(-1) ?? 0) + (parts[turn % parts.length] ?? 1));
    }
    return found;
  }

  test('readings of any parabola, at any uneven steps, in any order, give it back', () => {
    fc.assert(
      fc.property(where, bend, least, steps, fc.integer(), (x, c, y, parts, seed) => {
        const gap = parabola(y, x, c);
        const pairs = angles(parts, x).map((at): Pair => [at, gap(at)]);
        const shuffled = pairs.toSorted(
          ([a], [b]) => Math.sin(a * 1e4 + seed) - Math.sin(b * 1e4 + seed) || a - b,
        );
        const given = scan(shuffled);
        const inMm = {
          readings: shuffled.map(([at, value]) => ({ crankAngle: deg(at), gap: mm(value * 25.4) })),
        };
        expect(number(given, 'least')).toBeCloseTo(y, 9);
        expect(number(given, 'atCrankAngle')).toBeCloseTo(x, 5);
        expect(number(inMm, 'least', 'metric')).toBeCloseTo(number(given, 'least') * 25.4, 9);
        expect(partOf(run(given).result, 'atEdge')).toBe('none');
      }),
    );
  });

  test('any readings: never above the least one, and between its neighbours', () => {
    const reading = fc.tuple(
      fc.integer({ min: -40, max: 40 }),
      fc.integer({ min: 0, max: 500 }).map((thousandths) => thousandths / 1000),
    );
    fc.assert(
      fc.property(fc.array(reading, { minLength: 3, maxLength: 20 }), (pairs) => {
        fc.pre(new Set(pairs.map(([at]) => at)).size >= 3);
        const { result } = run(scan(pairs, { readingUncertainty: inches(0.001) }));
        const lowest = Math.min(...pairs.map(([, gap]) => gap));
        expect(number(scan(pairs), 'least')).toBeLessThanOrEqual(lowest * (1 + 1e-15));
        const index = Number(partOf(result, 'leastReading.index'));
        expectNear(Number(partOf(result, 'leastReading.gap')), pairs[index]?.[1] ?? Number.NaN);
        const inOrder = [...new Set(pairs.map(([at]) => at))].sort((a, b) => a - b);
        const place = inOrder.indexOf(pairs[index]?.[0] ?? Number.NaN);
        const where = Number(partOf(result, 'atCrankAngle'));
        expect(where).toBeGreaterThanOrEqual((inOrder[place - 1] ?? inOrder[0] ?? 0) - 1e-9);
        expect(where).toBeLessThanOrEqual((inOrder[place + 1] ?? inOrder.at(-1) ?? 0) + 1e-9);
        const edge = partOf(result, 'atEdge');
        expect(partOf(result, 'verdict') === undefined).toBe(edge !== 'none');
        expect(partOf(result, 'interval95') === undefined).toBe(edge !== 'none');
      }),
    );
  });
});

/** Normal numbers that are the same at every run (Box and Muller). */
function normals(seed: number): () => number {
  let state = seed;
  const uniform = () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state + 1) / 2 ** 32;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

test('a Monte Carlo of 4 000 scans every 2°: 95 of 100 intervals hold the true least', () => {
  const next = normals(5);
  let held = 0;
  const all = 4000;
  for (let draw = 0; draw < all; draw += 1) {
    const gap = parabola(0.1, ((draw % 20) - 10) / 10, 0.0002);
    const pairs = Array.from({ length: 13 }, (_, index): Pair => {
      const at = 2 * index - 12;
      return [at, gap(at) + 0.0003 * next()];
    });
    const given = scan(pairs, { readingUncertainty: inches(0.0003 * 1.959963984540054) });
    const { result } = run(given);
    if (Number(partOf(result, 'interval95.0')) <= 0.1 && Number(partOf(result, 'interval95.1')) >= 0.1)
      held += 1;
  }
  expect(held / all).toBeGreaterThan(0.935);
  expect(held / all).toBeLessThan(0.97);
});
