import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/spring-nest.ts';
import { describeContract } from './helpers/bad-input.ts';
import { expectNear } from './helpers/near.ts';
import { inches, inUnit, lbfPerInch, mm } from './helpers/quantities.ts';
import { partOf, runner } from './helpers/runner.ts';

const { run, number, faults } = runner(computation);
const perMm = (value: number) => ({ value, unit: 'N/mm' as const });

/** Bhandari, Design of Machine Elements, example 10.19: 1000 N on two springs, the outer 15 mm longer. */
const bhandari = {
  springs: [
    { rate: perMm(28.253472), freeLength: mm(100), solidHeight: mm(60) },
    { rate: perMm(29.4307), freeLength: mm(85), solidHeight: mm(40) },
  ],
  installedHeight: mm(100 - 24.988839),
  netLift: mm(5),
};

describe('nested springs', () => {
  test('Bhandari example 10.19: 706.021 N and 293.979 N, together 1000 N', () => {
    expect(number(bhandari, 'loads.0.seatLoad', 'metric')).toBeCloseTo(706.021471, 3);
    expect(number(bhandari, 'loads.1.seatLoad', 'metric')).toBeCloseTo(293.978529, 3);
    expect(number(bhandari, 'seatLoad', 'metric')).toBeCloseTo(1000, 3);
  });

  test('the rates add up once both are pressed: 57.684173 N/mm (same example)', () => {
    const more = number(bhandari, 'openLoad', 'metric') - number(bhandari, 'seatLoad', 'metric');
    expect(more / 5).toBeCloseTo(57.684172, 6);
  });

  test('both springs counted from the longer one would carry 1441 N, not 1000', () => {
    expect(number(bhandari, 'seatLoad', 'metric')).toBeLessThan(1100);
  });

  test('the tallest when solid goes first, the first of equals', () => {
    expect(number(bhandari, 'limiting')).toBe(0);
    expectNear(number(bhandari, 'margin', 'metric'), 100 - 24.988839 - 5 - 60);
    const [outer, inner] = bhandari.springs;
    expect(number({ ...bhandari, springs: [inner, outer] }, 'limiting')).toBe(1);
    expect(number({ ...bhandari, springs: [outer, outer] }, 'limiting')).toBe(0);
  });

  test('a spring loose on the seat carries zero there, takes up load later, and is warned of', () => {
    const [outer, inner] = bhandari.springs;
    const loose = { ...bhandari, springs: [outer, { ...inner, freeLength: mm(73) }] };
    const answer = run(loose, 'metric');
    expect(partOf(answer.result, 'loads.1.seatLoad')).toBe(0);
    expectNear(number(loose, 'loads.1.openLoad', 'metric'), 29.4307 * (73 - (75.011161 - 5)));
    expectNear(number(loose, 'seatLoad', 'metric'), number(loose, 'loads.0.seatLoad', 'metric'));
    expect(answer.cautions.join()).toContain('Spring 2 of the list stands loose');
    expect(run(bhandari).cautions.join()).not.toContain('loose');
  });

  test('the default limit is that of coil bind; a limit given is used', () => {
    expectNear(number(bhandari, 'limit'), 0.06);
    expect(partOf(run({ ...bhandari, limit: mm(10.1), uncertainty: mm(0) }).result, 'verdict')).toBe('short');
    expect(partOf(run({ ...bhandari, limit: mm(10.1), uncertainty: mm(0.2) }).result, 'verdict')).toBe(
      'close',
    );
  });
});

describe('what can’t be', () => {
  const change = (index: number, more: object) => ({
    ...bhandari,
    springs: bhandari.springs.map((spring, at) => (at === index ? { ...spring, ...more } : spring)),
  });

  test('solid above installed, and solid above free', () => {
    expect(faults(change(1, { solidHeight: mm(76) }))).toEqual([
      '/installedHeight impossible-input',
      '/springs/1/solidHeight impossible-input',
    ]);
    expect(faults(change(0, { solidHeight: mm(101) }))).toEqual([
      '/springs/0/freeLength impossible-input',
      '/springs/0/solidHeight impossible-input',
    ]);
  });

  test('each faulty part of a spring is told at its own place', () => {
    expect(faults(change(1, { rate: 5, freeLength: undefined }))).toEqual([
      '/springs/1/freeLength required',
      '/springs/1/rate wrong-dimension',
    ]);
    expect(faults(change(1, { colour: 'red' }))).toEqual(['/springs/1/colour unknown-field']);
  });

  test('no springs, none at all, too many', () => {
    expect(faults({ ...bhandari, springs: [] })).toEqual(['/springs required']);
    expect(faults({ ...bhandari, springs: 'two' })).toEqual(['/springs not-allowed']);
    const [outer] = bhandari.springs;
    expect(faults({ ...bhandari, springs: Array(2001).fill(outer) })).toEqual(['/springs too-many']);
    expect(faults({ ...bhandari, springs: Array(100_000).fill(7) })[0]).toMatch(/^\/springs/);
  });

  test('two thousand springs are added up', () => {
    const [outer] = bhandari.springs;
    const many = { ...bhandari, springs: Array(2000).fill(outer) };
    expectNear(number(many, 'seatLoad', 'metric'), 2000 * number(bhandari, 'loads.0.seatLoad', 'metric'));
  });
});

test('the whole is the work’s derivative, and one spring of the summed rate where none is loose', () => {
  const spring = fc.record({
    k: fc.double({ min: 20, max: 600, noNaN: true }),
    free: fc.double({ min: 1.5, max: 3, noNaN: true }),
  });
  fc.assert(
    fc.property(fc.array(spring, { minLength: 1, maxLength: 4 }), (parts) => {
      const given = {
        springs: parts.map(({ k, free }) => ({
          rate: lbfPerInch(k),
          freeLength: inches(free),
          solidHeight: inches(0.6),
        })),
        installedHeight: inches(1.9),
        netLift: inches(0.5),
      };
      const metric = {
        springs: parts.map(({ k, free }) => ({
          rate: inUnit(lbfPerInch(k), 'N/mm'),
          freeLength: mm(free * 25.4),
          solidHeight: mm(15.24),
        })),
        installedHeight: mm(48.26),
        netLift: mm(12.7),
      };
      // Energy stored at a height, differentiated numerically: the second route to the load.
      const energy = (height: number) =>
        parts.reduce((sum, { k, free }) => sum + (free > height ? (k * (free - height) ** 2) / 2 : 0), 0);
      const slope = (height: number) => (energy(height - 1e-5) - energy(height + 1e-5)) / 2e-5;
      expect(number(given, 'openLoad')).toBeCloseTo(slope(1.4), 2);
      expect(number(given, 'seatLoad')).toBeCloseTo(slope(1.9), 2);
      expect(number(metric, 'openLoad')).toBeCloseTo(number(given, 'openLoad'), 8);
      expect(number(metric, 'openLoad', 'metric')).toBeCloseTo(
        number(given, 'openLoad') * 4.4482216152605,
        7,
      );
    }),
  );
});

describe('springs at heights of their own', () => {
  const [outer, inner] = bhandari.springs;
  const stepped = (own: number) => ({
    ...bhandari,
    springs: [outer, { ...inner, installedHeight: mm(own) }],
  });

  test('its own height written as the nest’s changes nothing', () => {
    const same = { ...inner, installedHeight: bhandari.installedHeight };
    expect(run({ ...bhandari, springs: [outer, same] }).result).toEqual(run(bhandari).result);
  });

  test('a step of 3 mm is a spring 3 mm longer and stiffer by nothing: Bhandari’s inner one from 88 mm', () => {
    const own = 100 - 24.988839 - 3;
    const longer = {
      ...bhandari,
      springs: [outer, { ...inner, freeLength: mm(88), solidHeight: mm(43) }],
    };
    for (const path of ['seatLoad', 'openLoad', 'loads.1.seatLoad', 'margin', 'limiting']) {
      expectNear(number(stepped(own), path, 'metric'), number(longer, path, 'metric'));
    }
  });

  test('the first to go solid is the one with the least room, and it may be the lower one', () => {
    // 75.011 − 5 − 60 = 10.011 left in the outer one; 48 − 5 − 40 = 3 in the inner one.
    expectNear(number(stepped(48), 'margin', 'metric'), 3);
    expect(number(stepped(48), 'limiting')).toBe(1);
    expect(run(stepped(48)).assumptions.join()).toContain('its own installed height');
  });

  test('the nest’s height may be left out where each has its own, and is asked for where one has none', () => {
    const { installedHeight, ...rest } = bhandari;
    const both = bhandari.springs.map((spring) => ({ ...spring, installedHeight }));
    expect(run({ ...rest, springs: both }).result).toEqual(run(bhandari).result);
    expect(faults({ ...rest, springs: [both[0], inner] })).toEqual(['/installedHeight required']);
    expect(faults({ ...rest, springs: [both[0], { ...both[1], installedHeight: 3 }] })).toEqual([
      '/springs/1/installedHeight wrong-dimension',
    ]);
    expect(faults({ ...rest, springs: [] })).toEqual(['/installedHeight required', '/springs required']);
  });

  test('what can’t be is told at the height that it was said with', () => {
    expect(faults(stepped(39))).toEqual([
      '/springs/1/installedHeight impossible-input',
      '/springs/1/solidHeight impossible-input',
    ]);
    expect(faults({ ...stepped(45), netLift: mm(45) })).toEqual([
      '/netLift impossible-input',
      '/springs/1/installedHeight impossible-input',
    ]);
    expect(faults({ ...stepped(45), netLift: mm(80) })).toEqual([
      '/installedHeight impossible-input',
      '/netLift impossible-input',
      '/springs/1/installedHeight impossible-input',
    ]);
  });
});

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

describeContract(computation, {
  body: { ...bhandari, loadTolerance: 0.05, limit: mm(1), uncertainty: mm(0.1) },
  quantities: { installedHeight: 'in', netLift: 'in', limit: 'in', uncertainty: 'in' },
  numbers: ['loadTolerance'],
  optional: ['loadTolerance', 'limit', 'uncertainty'],
  impossibleBelow: ['netLift'],
});
