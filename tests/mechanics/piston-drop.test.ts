import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/piston-drop.ts';
import { pistonDrop, pistonDropRate } from '../../server/mechanics/slider-crank/piston-travel.ts';
import { sliderCrank } from '../../server/mechanics/slider-crank/slider-crank.ts';
import { expectNear, expectSame } from './helpers/near.ts';
import { deg, inches, mm } from './helpers/quantities.ts';
import { runner } from './helpers/runner.ts';
import { expectSoundUnderFire } from './helpers/under-fire.ts';

const { registered, run, number, numbers, refused } = runner(computation);
const DEG = Math.PI / 180;

const body = (stroke: number, rod: number, angles: readonly number[], more: object = {}) => ({
  stroke: inches(stroke),
  rodLength: inches(rod),
  crankAngles: { values: angles, unit: 'deg' },
  from: 'true-tdc',
  ...more,
});

/** Heywood's equations 2.4 and 2.5 at nine figures, worked out with 30 digits two ways. */
const TABLE: readonly (readonly [number, number, number, number])[] = [
  [5, 0.00863895293, 0.00936078075, 0.0100874277],
  [10, 0.0344483284, 0.0373260649, 0.0402224356],
  [15, 0.0771073284, 0.0835464618, 0.0900251025],
  [20, 0.136086802, 0.147445607, 0.158868586],
  [25, 0.210657523, 0.228229113, 0.245888707],
  [30, 0.299901795, 0.324897132, 0.349997433],
  [45, 0.644007551, 0.697492335, 0.751010479],
  [60, 1.07279162, 1.16140432, 1.24957521],
  [75, 1.54307697, 1.66958516, 1.79446107],
  [90, 2.01207222, 2.17549344, 2.33515302],
  [120, 2.81279162, 3.03640432, 3.24957521],
  [180, 3.48, 3.75, 4.0],
];

describe('Heywood (1988), equations 2.4 and 2.5, independent evaluation to nine figures', () => {
  test.each([
    [3.48, 5.7, 1],
    [3.75, 6.0, 2],
    [4.0, 6.135, 3],
  ] as const)('stroke %f, rod %f', (stroke, rod, column) => {
    const drops = numbers(
      body(
        stroke,
        rod,
        TABLE.map((row) => row[0]),
      ),
      'drops',
    );
    drops.forEach((drop, index) => {
      expectNear(drop, TABLE[index]?.[column] ?? Number.NaN, 6e-9);
    });
  });

  test('zero at the top, even about it, the same a turn on', () => {
    const drops = numbers(body(3.48, 5.7, [0, 37, -37, 397, -323, 1117]), 'drops');
    expect(drops[0]).toBe(0);
    for (const drop of drops.slice(2)) expectNear(drop, drops[1] ?? 0, 1e-12);
  });

  test('half stroke at 81.220539°, 81.010701° and 80.618977°', () => {
    expectNear(number(body(3.48, 5.7, [81.220539]), 'drops.0'), 1.74, 3e-8);
    expectNear(number(body(3.75, 6.0, [81.010701]), 'drops.0'), 1.875, 3e-8);
    expectNear(number(body(4.0, 6.135, [80.618977]), 'drops.0'), 2.0, 3e-8);
  });

  test('the piston is fastest at 73.175297° for stroke 4, rod 6 (two routes; not the 73.17615° often remembered)', () => {
    const crank = sliderCrank(4, 6, 0);
    let [low, high] = [60, 90];
    for (let step = 0; step < 80; step += 1) {
      const [left, right] = [low + (high - low) / 3, high - (high - low) / 3];
      if (pistonDropRate(crank, left * DEG) < pistonDropRate(crank, right * DEG)) low = left;
      else high = right;
    }
    expect(low).toBeCloseTo(73.175297, 5);
    expect(Math.abs(low - 73.17615)).toBeGreaterThan(5e-4);
  });
});

describe('pin offset .060 in, stroke 3.48, rod 5.70 (derived by hand, figures worked out apart)', () => {
  const offset = { pinOffset: inches(0.06) };

  test('dead centres and stroke', () => {
    const given = body(3.48, 5.7, [0], offset);
    expect(number(given, 'tdcAt')).toBeCloseTo(0.4620677, 7);
    expect(number(given, 'bdcAt')).toBeCloseTo(180.8681511, 7);
    expect(number(given, 'actualStroke')).toBeCloseTo(3.48021263, 8);
  });

  test('drops from crank-zero', () => {
    const drops = numbers(body(3.48, 5.7, [0, 10, 20, 30, 90], { ...offset, from: 'crank-zero' }), 'drops');
    [0.0000738588, 0.0313383642, 0.129866746, 0.290720014, 1.99296084].forEach((wanted, index) => {
      expectNear(drops[index] ?? Number.NaN, wanted, 1e-6);
    });
  });

  test('drops from true TDC', () => {
    const drops = numbers(body(3.48, 5.7, [0, 10, 20, 30, 90], offset), 'drops');
    [0, 0.0344347138, 0.135976212, 0.299538992, 2.00697564].forEach((wanted, index) => {
      expectNear(drops[index] ?? Number.NaN, wanted, 4e-9);
    });
  });

  test('the other sign mirrors the engine', () => {
    const left = numbers(body(3.48, 5.7, [10, -10], offset), 'drops');
    const right = numbers(body(3.48, 5.7, [-10, 10], { pinOffset: inches(-0.06) }), 'drops');
    right.forEach((drop, index) => {
      expectNear(drop, left[index] ?? Number.NaN, 1e-12);
    });
  });
});

describe('wrong formulas give other numbers', () => {
  const right = number(body(3.48, 5.7, [90]), 'drops.0');
  test('plus under the root', () => {
    expect(Math.abs(1.74 + 5.7 - Math.sqrt(5.7 ** 2 + 1.74 ** 2) - right)).toBeGreaterThan(0.1);
  });
  test('the series cut short gives 2.005579 at 90°', () => {
    const short = 1.74 + 1.74 ** 2 / (2 * 5.7);
    expect(short).toBeCloseTo(2.005579, 6);
    expect(Math.abs(short - right)).toBeGreaterThan(0.006);
  });
});

describe('any engine', () => {
  const engine = fc
    .record({
      stroke: fc.double({ min: 0.5, max: 20, noNaN: true }),
      rodOver: fc.double({ min: 1.05, max: 4, noNaN: true }),
      offsetShare: fc.double({ min: -0.9, max: 0.9, noNaN: true }),
      angle: fc.double({ min: -1440, max: 1440, noNaN: true }),
    })
    .map(({ stroke, rodOver, offsetShare, angle }) => {
      const rod = (stroke / 2) * rodOver;
      return { stroke, rod, offset: (rod - stroke / 2) * offsetShare, angle };
    });

  test('the drop is the pin’s distance along the bore, from the crankpin by coordinates', () => {
    fc.assert(
      fc.property(engine, ({ stroke, rod, offset, angle }) => {
        const given = body(stroke, rod, [angle], { pinOffset: inches(offset), from: 'crank-zero' });
        const [pinX, pinY] = [(stroke / 2) * Math.sin(angle * DEG), (stroke / 2) * Math.cos(angle * DEG)];
        const height = pinY + Math.sqrt(rod ** 2 - (pinX - offset) ** 2);
        const top = Math.sqrt((rod + stroke / 2) ** 2 - offset ** 2);
        expect(Math.abs(number(given, 'drops.0') - (top - height))).toBeLessThan(1e-11 * rod);
      }),
    );
  });

  test('nothing is above the top or below the bottom, and the rate is the slope', () => {
    fc.assert(
      fc.property(engine, ({ stroke, rod, offset, angle }) => {
        const crank = sliderCrank(stroke, rod, offset);
        const drop = pistonDrop(crank, angle * DEG);
        expect(drop).toBeGreaterThanOrEqual(-1e-14 * rod);
        expect(drop).toBeLessThanOrEqual(crank.actualStroke * (1 + 1e-12));
        const step = 1e-5;
        const slope =
          (pistonDrop(crank, angle * DEG + step) - pistonDrop(crank, angle * DEG - step)) / (2 * step);
        expect(Math.abs(pistonDropRate(crank, angle * DEG) - slope)).toBeLessThan(1e-4 * rod);
      }),
    );
  });

  test('metric in, inch out and back', () => {
    fc.assert(
      fc.property(engine, ({ stroke, rod, angle }) => {
        const metric = {
          ...body(stroke, rod, [angle]),
          stroke: mm(stroke * 25.4),
          rodLength: mm(rod * 25.4),
        };
        const inInches = number(metric, 'drops.0');
        expectNear(number(body(stroke, rod, [angle]), 'drops.0', 'metric'), inInches * 25.4, 1e-9);
      }),
    );
  });
});

describe('input that can’t be', () => {
  test('a rod no longer than half the stroke', () => {
    expect(refused(body(4, 2, [0]))).toEqual(['/rodLength impossible-input', '/stroke impossible-input']);
  });
  test('an offset that leaves no full turn', () => {
    expect(refused(body(4, 6, [0], { pinOffset: inches(-4) }))).toEqual(['/pinOffset impossible-input']);
  });
  test('faults at their places', () => {
    expect(refused({ ...body(-3, 6, [0]), crankAngles: [deg(1), 3, inches(2)], from: 'bdc' })).toEqual([
      '/stroke out-of-range',
      '/crankAngles/1 wrong-dimension',
      '/crankAngles/2 wrong-dimension',
      '/from not-allowed',
    ]);
    expect(refused({})).toEqual([
      '/stroke required',
      '/rodLength required',
      '/crankAngles required',
      '/from required',
    ]);
    expect(refused(body(4, 6, Array(2001).fill(0)))).toEqual(['/crankAngles too-many']);
  });
  test('under fire', () => {
    expectSoundUnderFire(computation, body(3.48, 5.7, [0, 10], { pinOffset: inches(0.06) }));
  }, 30_000);
});

test('the worked example', () => {
  expectSame(run(registered.example.inputs).result, registered.example.result);
});
