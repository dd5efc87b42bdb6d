import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/spring-nest.ts';
import { expectNear } from './helpers/near.ts';
import { inches, lbfPerInch } from './helpers/quantities.ts';
import { runner } from './helpers/runner.ts';
import { bhandari } from './helpers/textbook-nest.ts';

const { run, number, faults } = runner(computation);

describe('loads within a tolerance', () => {
  const ends = (given: object, path: string) =>
    ['0', '1'].map((end) => number(given, `interval95.${path}.${end}`, 'metric'));

  test('left out, nothing is said of it', () => {
    expect(run(bhandari).result).not.toHaveProperty('interval95');
  });

  test('two springs of 706.0 and 294.0 N within 5 % each: in quadrature, ± 43.3 N (by hand)', () => {
    const [low = 0, high = 0] = ends({ ...bhandari, loadTolerance: 0.05 }, 'seatLoad');
    // 1.96 · .05/√3 · √(706.02² + 293.98²)
    expect(high - 1000).toBeCloseTo(43.27, 1);
    expectNear(high + low, 2 * number(bhandari, 'seatLoad', 'metric'));
  });

  test('one spring alone: no further than its tolerance, and never below nothing', () => {
    const [outer] = bhandari.springs;
    for (const loadTolerance of [0.05, 0.999]) {
      const [low = 0, high = 0] = ends({ ...bhandari, springs: [outer], loadTolerance }, 'openLoad');
      const load = number({ ...bhandari, springs: [outer] }, 'openLoad', 'metric');
      expectNear(high, load * (1 + loadTolerance));
      expectNear(low, load * (1 - loadTolerance), 1e-9);
    }
    expect(ends({ ...bhandari, loadTolerance: 0 }, 'seatLoad')[0]).toBe(
      number(bhandari, 'seatLoad', 'metric'),
    );
  });

  test('a Monte Carlo of 100 000 nests: 95 of 100 or more lie inside, of three springs 95 or 96', () => {
    let state = 3;
    const within = () => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      return (2 * state) / 2 ** 32 - 1;
    };
    const loads = [120, 100, 80];
    const springs = loads.map((load) => ({
      rate: lbfPerInch(load),
      freeLength: inches(2.9),
      solidHeight: inches(1),
    }));
    const given = { springs, installedHeight: inches(1.9), netLift: inches(0.5), loadTolerance: 0.1 };
    const [low, high] = [number(given, 'interval95.seatLoad.0'), number(given, 'interval95.seatLoad.1')];
    let held = 0;
    for (let draw = 0; draw < 100_000; draw += 1) {
      const sum = loads.reduce((whole, load) => whole + load * (1 + 0.1 * within()), 0);
      if (sum >= low && sum <= high) held += 1;
    }
    expect(held / 100_000).toBeGreaterThan(0.95);
    expect(held / 100_000).toBeLessThan(0.965);
  });

  test('a part of one, not of a hundred', () => {
    const told = (loadTolerance: unknown) => faults({ ...bhandari, loadTolerance });
    expect(told(5)).toEqual(['/loadTolerance out-of-range']);
    expect(told(1)).toEqual(['/loadTolerance out-of-range']);
    expect(told(-0.05)).toEqual(['/loadTolerance out-of-range']);
    expect(told('5 %')).toEqual(['/loadTolerance not-a-number']);
  });
});
