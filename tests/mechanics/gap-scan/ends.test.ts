import { describe, expect, test } from 'vitest';
import { computation } from '../../../server/mechanics/computations/gap-scan.ts';
import { expectNear } from '../helpers/near.ts';
import { deg, inches, mm } from '../helpers/quantities.ts';
import { partOf, runner } from '../helpers/runner.ts';
import { type Pair, scan } from '../helpers/scan.ts';

const { run, number, faults } = runner(computation);

describe('ends, plateaus and readings that stand twice', () => {
  const at = (pairs: readonly Pair[]) => run(scan(pairs)).result;

  test('the least at an end: the reading stands, nothing is judged, and the way to go on is said', () => {
    const given = scan(
      [
        [-10, 0.09],
        [-8, 0.1],
        [-6, 0.12],
      ],
      { readingUncertainty: inches(0.002), side: 'exhaust' },
    );
    const { result, cautions } = run(given);
    expect(result).toEqual({
      least: inches(0.09),
      atCrankAngle: deg(-10),
      leastReading: { index: 0, gap: inches(0.09) },
      atEdge: 'first',
      limit: inches(0.1),
      ask: 'Read on at earlier crank angles than 10° before TDC, in steps of 2°, until the gap has risen twice.',
    });
    expect(cautions.join()).toContain('not judged');
    expect(cautions.join()).toContain('under the limit already');
  });

  test('first and last are in order of crank angle, however they were sent', () => {
    const down: Pair[] = [
      [20, 0.08],
      [10, 0.1],
      [0, 0.15],
    ];
    expect(partOf(at(down), 'atEdge')).toBe('last');
    expect(partOf(at(down), 'ask')).toContain('later crank angles than 20° after TDC');
    expect(partOf(at(down.toReversed()), 'atEdge')).toBe('last');
    expect(partOf(at(down.toReversed()), 'leastReading.index')).toBe(2);
  });

  test('an end that reads as little as the least is an edge, at both ends both ways are said', () => {
    const flat = (gaps: readonly number[]) => gaps.map((gap, index): Pair => [2 * index, gap]);
    expect(partOf(at(flat([0.1, 0.1, 0.12])), 'atEdge')).toBe('first');
    expect(partOf(at(flat([0.12, 0.1, 0.1])), 'atEdge')).toBe('last');
    const all = at(flat([0.1, 0.1, 0.1]));
    expect(partOf(all, 'atEdge')).toBe('first');
    expect(partOf(all, 'ask')).toContain('earlier crank angles than TDC,');
    expect(partOf(all, 'ask')).toContain('later crank angles than 4° after TDC');
  });

  test('a plateau: the parabola that reaches lowest, the same from either side', () => {
    const two = scan([
      [0, 0.12],
      [2, 0.1],
      [4, 0.1],
      [6, 0.13],
    ]);
    // (0, .12), (2, .1), (4, .1): −.02/8 below; (2, .1), (4, .1), (6, .13): −.03/8 below at 3.
    expectNear(number(two, 'least'), 0.1 - 0.03 / 8);
    expectNear(number(two, 'atCrankAngle'), 3);
    const mirrored = {
      readings: two.readings.map(({ crankAngle, gap }) => ({ crankAngle: deg(-crankAngle.value), gap })),
    };
    expectNear(number(mirrored, 'least'), number(two, 'least'), 1e-12);
    expectNear(number(mirrored, 'atCrankAngle'), -3);
    // In other units the two are a last figure apart and still a plateau.
    const mixed = {
      readings: two.readings.map((each, index) => (index === 2 ? { ...each, gap: mm(2.54) } : each)),
    };
    expectNear(number(mixed, 'least'), 0.1 - 0.03 / 8);
  });

  test('a crank angle read twice counts with its least gap, which is told where they differ', () => {
    const once: Pair[] = [
      [8, 0.1005],
      [10, 0.1],
      [12, 0.1005],
    ];
    const again = scan([...once, [10, 0.104], [8, 0.1005]]);
    expectNear(number(again, 'least'), number(scan(once), 'least'), 1e-12);
    expect(run(again).cautions.join()).toContain('more than once');
    expect(run(scan([...once, [10, 0.1]])).cautions.join()).not.toContain('more than once');
    const lower = scan([...once, [10, 0.099]]);
    expect(partOf(run(lower).result, 'leastReading.index')).toBe(3);
  });

  test('fewer than three crank angles are no scan', () => {
    expect(
      faults(
        scan([
          [1, 0.1],
          [2, 0.1],
          [1, 0.1],
          [2, 0.2],
        ]),
      ),
    ).toEqual(['/readings/2/crankAngle impossible-input', '/readings/3/crankAngle impossible-input']);
    expect(
      faults(
        scan([
          [1, 0.1],
          [2, 0.1],
        ]),
      ),
    ).toEqual(['/readings required']);
  });

  test('angles do not wrap: 350° is not 10° before', () => {
    const given = scan([
      [350, 0.1],
      [0, 0.08],
      [10, 0.12],
    ]);
    expect(partOf(run(given).result, 'atEdge')).toBe('first');
    expect(run(given).cautions.join()).toContain('350° is not 10° before');
  });
});
