import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/roller-sweep.ts';
import { expectNear, expectSame } from './helpers/near.ts';
import { deg, inches, mm } from './helpers/quantities.ts';
import { runner } from './helpers/runner.ts';
import { expectSoundUnderFire } from './helpers/under-fire.ts';

const { registered, run, number, numbers, refused } = runner(computation);
const body = (arm: number, lift: number, setAt = 'mid-lift') => ({
  pivotToTip: inches(arm),
  netLift: inches(lift),
  setAt,
});

/** Sweep set at mid-lift, arm down and lift across; confirmed apart by a scan of every set-up. */
const LIFTS = [0.4, 0.45, 0.5, 0.55, 0.6, 0.65, 0.7, 0.75, 0.8];
const LEAST: Readonly<Record<number, readonly number[]>> = {
  1.5: [0.013393, 0.016971, 0.02098, 0.025424, 0.030306, 0.035632, 0.041405, 0.047631, 0.054317],
  1.55: [0.012957, 0.016418, 0.020294, 0.02459, 0.029309, 0.034456, 0.040033, 0.046047, 0.052502],
  1.6: [0.012549, 0.015899, 0.019652, 0.02381, 0.028377, 0.033355, 0.038751, 0.044566, 0.050807],
  1.65: [0.012166, 0.015413, 0.019049, 0.023078, 0.027502, 0.032324, 0.037548, 0.043179, 0.049219],
  1.7: [0.011806, 0.014955, 0.018483, 0.02239, 0.02668, 0.031355, 0.03642, 0.041876, 0.047729],
};

describe('the least sweep, figures worked out apart', () => {
  test.each(Object.entries(LEAST))('arm %s', (arm, row) => {
    row.forEach((wanted, index) => {
      const given = body(Number(arm), LIFTS[index] ?? 0);
      expect(Math.abs(number(given, 'sweep') - wanted)).toBeLessThan(6e-7);
      expect(number(given, 'leastSweep')).toBe(number(given, 'sweep'));
    });
  });
});

describe('set square at one end', () => {
  test('1.6 arm, .600 lift: .116760, 4.11 times the least', () => {
    for (const end of ['closed', 'open']) {
      const given = body(1.6, 0.6, end);
      expect(number(given, 'sweep')).toBeCloseTo(0.11676, 6);
      expect(number(given, 'sweep') / number(given, 'leastSweep')).toBeCloseTo(4.11, 2);
    }
  });

  test('printed example: 30° turns .709 of lift at mid-lift, .685 set at one end, sweep .184', () => {
    // A rocker-geometry article; its sweep is met within the rounding of its two lifts.
    const arm = 0.709 / (2 * Math.sin((15 * Math.PI) / 180));
    expect(number(body(arm, 0.709), 'rotation')).toBeCloseTo(30, 9);
    const closed = body(arm, 0.685, 'closed');
    expect(number(closed, 'rotation')).toBeCloseTo(30, 1);
    expect(Math.abs(number(closed, 'sweep') - 0.184)).toBeLessThan(0.0015);
  });

  test('a printed rule: arm 1.45, sweep lift²/(8 × arm) at mid-lift; .108, .154, .209 square at one end', () => {
    [
      [0.55, 0.026, 0.108],
      [0.65, 0.037, 0.154],
      [0.75, 0.049, 0.209],
    ].forEach(([lift = 0, mid = 0, end = 0]) => {
      expect(number(body(1.45, lift), 'sweep')).toBeCloseTo(mid, 3);
      expect(number(body(1.45, lift, 'open'), 'sweep')).toBeCloseTo(end, 3);
    });
  });
});

test('half-lift set-up: closed, the pivot stands half the net lift below the roller (rocker-geometry page)', () => {
  expectNear(number(body(1.5, 0.6), 'pivotOffset'), 0.3);
  expect(number(body(1.5, 0.6, 'closed'), 'pivotOffset')).toBe(0);
  expectNear(number(body(1.5, 0.6, 'open'), 'pivotOffset'), 0.6);
});

describe('any arm', () => {
  const arms = fc
    .record({
      arm: fc.double({ min: 0.1, max: 10, noNaN: true }),
      share: fc.double({ min: 0.001, max: 0.999, noNaN: true }),
      setAt: fc.constantFrom('mid-lift', 'closed', 'open'),
    })
    .map(({ arm, share, setAt }) => ({ arm, lift: arm * share * (setAt === 'mid-lift' ? 2 : 1), setAt }));

  test('sweep, path and turn agree with the tip’s coordinates on its circle', () => {
    fc.assert(
      fc.property(arms, ({ arm, lift, setAt }) => {
        const given = body(arm, lift, setAt);
        const above = number(given, 'pivotOffset');
        const closed = Math.asin(Math.max(-1, -above / arm));
        const turn = (number(given, 'rotation') * Math.PI) / 180;
        expect(arm * (Math.sin(closed + turn) - Math.sin(closed))).toBeCloseTo(lift, 7);
        const across = numbers(given, 'path', 'across');
        const lifts = numbers(given, 'path', 'lift');
        lifts.forEach((at, index) => {
          const outward = Math.sqrt(Math.max(0, arm ** 2 - (at - above) ** 2));
          expect(Math.abs((across[index] ?? Number.NaN) - (arm - outward))).toBeLessThan(2e-7 * arm);
        });
        expect(Math.min(...across)).toBeLessThan(1e-12 * arm);
        expectNear(number(given, 'sweep'), Math.max(...across), 1e-9);
        expectNear(lifts.at(-1) ?? 0, lift, 1e-12);
        expect(number(given, 'sweep')).toBeGreaterThanOrEqual(number(given, 'leastSweep') * (1 - 1e-12));
      }),
    );
  });

  test('metric in, inch out', () => {
    fc.assert(
      fc.property(arms, ({ arm, lift, setAt }) => {
        const metric = { pivotToTip: mm(arm * 25.4), netLift: mm(lift * 25.4), setAt };
        expectNear(number(metric, 'sweep'), number(body(arm, lift, setAt), 'sweep'), 1e-9);
      }),
    );
  });
});

describe('input that can’t be', () => {
  const both = ['/netLift impossible-input', '/pivotToTip impossible-input'];
  test('lift over twice the arm, over the arm when set square at an end', () => {
    expect(refused(body(1.5, 3.01))).toEqual(both);
    expect(refused(body(1.5, 1.6, 'closed'))).toEqual(both);
    expect(refused(body(1.5, 1.6, 'open'))).toEqual(both);
    expect(refused(body(1.5, 1.6))).toEqual([]);
  });
  test('faults at their places', () => {
    expect(refused({})).toEqual(['/pivotToTip required', '/netLift required', '/setAt required']);
    expect(refused({ pivotToTip: deg(3), netLift: inches(-0.1), setAt: 'half' })).toEqual([
      '/pivotToTip wrong-dimension',
      '/netLift impossible-input',
      '/setAt not-allowed',
    ]);
  });
  test('under fire', () => {
    expectSoundUnderFire(computation, body(1.6, 0.6));
  }, 30_000);
});

test('the worked example', () => {
  expectSame(run(registered.example.inputs).result, registered.example.result);
});
