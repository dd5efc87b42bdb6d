import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/spring-from-wire.ts';
import { describeContract } from './helpers/bad-input.ts';
import { expectNear } from './helpers/near.ts';
import { inches, inUnit, mm } from './helpers/quantities.ts';
import { runner } from './helpers/runner.ts';

const { run, number, faults } = runner(computation);
const psi = (value: number) => ({ value, unit: 'psi' as const });
const gpa = (value: number) => ({ value, unit: 'GPa' as const });
const perCubicInch = (value: number) => ({ value, unit: 'lb/in3' as const });

/** Shigley, Mechanical Engineering Design, 9th ed., problem 10-3: music wire, plain and ground ends. */
const problem103 = {
  wire: mm(2.5),
  meanDiameter: mm(28.5),
  activeCoils: 13,
  totalCoils: 14,
  ends: 'plain-ground',
  shearModulus: gpa(81),
  density: { value: 7850, unit: 'kg/m3' as const },
};

/** Shigley, same book, example 10-1 (from memory), with the mean diameter rounded to .400 in as it prints. */
const example101 = {
  wire: inches(0.037),
  meanDiameter: inches(0.4),
  activeCoils: 10.5,
  totalCoils: 12.5,
  ends: 'squared',
  shearModulus: psi(11.85e6),
  density: perCubicInch(0.284),
};

describe('rate and solid height', () => {
  test('Shigley problem 10-3: k 1.314 N/mm, solid 35 mm', () => {
    expect(number(problem103, 'rate', 'metric')).toBeCloseTo(1.314247, 6);
    expectNear(number(problem103, 'solidHeight', 'metric'), 35);
  });

  test('Shigley example 10-1 (from memory): k 4.13 lbf/in, solid .500 in', () => {
    expect(number(example101, 'rate')).toBeCloseTo(4.131103, 6);
    expectNear(number(example101, 'solidHeight'), 0.4995);
    expect(number({ ...example101, meanDiameter: inches(0.4005) }, 'rate')).toBeCloseTo(4.11565, 6);
  });

  test('Bhandari example 10.19: outer 28.253472, inner 29.430700 N/mm', () => {
    const spring = { ...problem103, shearModulus: gpa(81.37), totalCoils: 12 };
    const outer = { ...spring, wire: mm(6), meanDiameter: mm(36), activeCoils: 10 };
    const inner = { ...spring, wire: mm(5), meanDiameter: mm(30), activeCoils: 8 };
    expect(number(outer, 'rate', 'metric')).toBeCloseTo(28.253472, 6);
    expect(number(inner, 'rate', 'metric')).toBeCloseTo(29.4307, 5);
  });

  test('the outside diameter instead of the mean one gives another rate', () => {
    const outside = number({ ...problem103, meanDiameter: mm(31) }, 'rate', 'metric');
    expect(Math.abs(outside - 1.314247)).toBeGreaterThan(0.2);
  });

  test.each([
    ['plain', 15],
    ['plain-ground', 14],
    ['squared', 15],
    ['squared-ground', 14],
  ])('%s ends: the stack is %d wires high (Shigley table 10-1)', (ends, wires) => {
    expectNear(number({ ...problem103, ends }, 'solidHeight', 'metric'), wires * 2.5);
  });
});

describe('natural frequency', () => {
  test('of example 10-1’s spring: 314.59 Hz, and 313.80 with .4005 in (two routes, by hand)', () => {
    expect(number(example101, 'naturalFrequency')).toBeCloseTo(314.59, 2);
    expect(number({ ...example101, meanDiameter: inches(0.4005) }, 'naturalFrequency')).toBeCloseTo(313.8, 2);
  });

  test('π counted once in the mass, as one page prints it, would give 557.6 Hz', () => {
    expect(number(example101, 'naturalFrequency')).toBeLessThan(400);
  });
});

test('the frequency is half the root of rate over mass, the mass that of the wire weighed straight', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.02, max: 0.3, noNaN: true }),
      fc.double({ min: 3, max: 12, noNaN: true }),
      fc.double({ min: 2, max: 20, noNaN: true }),
      (wire, index, coils) => {
        const given = {
          ...example101,
          wire: inches(wire),
          meanDiameter: inches(wire * index),
          activeCoils: coils,
          totalCoils: coils + 2,
        };
        const metric = {
          ...given,
          wire: mm(wire * 25.4),
          meanDiameter: mm(wire * index * 25.4),
          shearModulus: inUnit(psi(11.85e6), 'GPa'),
          density: inUnit(perCubicInch(0.284), 'kg/m3'),
        };
        // Straight wire of the coils' length: volume × density, then a bar of springs and masses.
        const mass = 0.284 * (Math.PI / 4) * wire ** 2 * Math.PI * wire * index * coils;
        const rate = number(given, 'rate');
        const wanted = Math.sqrt((rate * 386.0885826771654) / mass) / 2;
        expectNear(number(given, 'naturalFrequency'), wanted, 1e-9);
        expectNear(number(metric, 'naturalFrequency', 'metric'), wanted, 1e-9);
        // Castigliano: deflection of one coil under a unit load, 8·D³/(G·d⁴), times the coils.
        expectNear((1 / rate) * 11.85e6 * wire, 8 * index ** 3 * coils, 1e-9);
        expectNear(number(metric, 'rate'), rate, 1e-9);
      },
    ),
  );
});

describe('what can’t be', () => {
  test('wire as thick as the coils are wide', () => {
    expect(faults({ ...problem103, wire: mm(28.5) })).toEqual([
      '/meanDiameter impossible-input',
      '/wire impossible-input',
    ]);
  });

  test('more coils active than there are', () => {
    expect(faults({ ...problem103, activeCoils: 14.5 })).toEqual([
      '/activeCoils impossible-input',
      '/totalCoils impossible-input',
    ]);
    expect(faults({ ...problem103, activeCoils: 0 })).toEqual(['/activeCoils out-of-range']);
    expect(faults({ ...problem103, totalCoils: -3 })).toEqual(['/totalCoils out-of-range']);
  });

  test('ends of another kind', () => {
    expect(faults({ ...problem103, ends: 'beehive' })).toEqual(['/ends not-allowed']);
  });

  test('coils that such ends do not usually leave are remarked on, not refused', () => {
    expect(run(problem103).assumptions.join()).not.toContain('usually leave');
    expect(run({ ...problem103, activeCoils: 12 }).assumptions.join()).toContain('usually leave');
  });
});

describeContract(computation, {
  body: problem103,
  quantities: { wire: 'in', meanDiameter: 'in', shearModulus: 'psi', density: 'kg/m3' },
  numbers: ['activeCoils', 'totalCoils'],
});
