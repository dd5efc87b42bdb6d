import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/spring-nest.ts';
import { describeContract } from './helpers/bad-input.ts';
import { expectNear } from './helpers/near.ts';
import { inches, inUnit, lbfPerInch, mm } from './helpers/quantities.ts';
import { partOf, runner } from './helpers/runner.ts';
import { bhandari } from './helpers/textbook-nest.ts';

const { run, number, faults } = runner(computation);

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

describeContract(computation, {
  body: { ...bhandari, loadTolerance: 0.05, limit: mm(1), uncertainty: mm(0.1) },
  quantities: { installedHeight: 'in', netLift: 'in', limit: 'in', uncertainty: 'in' },
  numbers: ['loadTolerance'],
  optional: ['loadTolerance', 'limit', 'uncertainty'],
  impossibleBelow: ['netLift'],
});
