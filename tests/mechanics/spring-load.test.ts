import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/spring-load.ts';
import { describeContract } from './helpers/bad-input.ts';
import { expectNear } from './helpers/near.ts';
import { inches, inUnit, lbf, lbfPerInch, mm, newtons } from './helpers/quantities.ts';
import { partOf, runner } from './helpers/runner.ts';

const { run, number, faults } = runner(computation);

const body = {
  installedHeight: inches(1.9),
  seatLoad: lbf(130),
  rate: lbfPerInch(350),
  netLift: inches(0.56),
  solidHeight: inches(1.15),
};
const verdict = (more: object) => partOf(run({ ...body, ...more }).result, 'verdict');

describe('spring load', () => {
  test('130 lbf + 350 lbf/in × .500 in = 305 lbf (by hand)', () => {
    expectNear(number({ ...body, netLift: inches(0.5) }, 'openLoad'), 305);
  });

  test('the rate times the lift alone would be 175 lbf: the seat load counts', () => {
    expect(number({ ...body, netLift: inches(0.5) }, 'openLoad')).toBeGreaterThan(175 + 100);
  });

  test('100 lbf at 1.750 in, 300 lbf/in, .500 in gives 250 lbf (trade article on spring load)', () => {
    const given = { ...body, installedHeight: inches(1.75), seatLoad: lbf(100), rate: lbfPerInch(300) };
    const result = { ...given, netLift: inches(0.5), solidHeight: inches(1.1) };
    expectNear(number(result, 'openLoad'), 250);
    expectNear(number(result, 'openHeight'), 1.25);
  });

  test('150 N at 35 mm and 300 N at 30 mm are a rate of 30 N/mm (Bhandari, Design of Machine Elements, example 10.4)', () => {
    const given = {
      installedHeight: mm(35),
      seatLoad: newtons(150),
      rate: { value: 30, unit: 'N/mm' },
      netLift: mm(5),
      solidHeight: mm(28),
    };
    expectNear(number(given, 'openLoad', 'metric'), 300);
    expectNear(number(given, 'openHeight', 'metric'), 30);
    expectNear(number(given, 'margin', 'metric'), 2);
  });

  test('coil bind 1.900 − .560 − 1.150 = .190 in (by hand), with net lift, not gross', () => {
    expectNear(number(body, 'margin'), 0.19);
    // Lash .016 forgotten, the lift would be .576 and the margin .174.
    expect(Math.abs(number(body, 'margin') - 0.174)).toBeGreaterThan(0.01);
  });
});

describe('the verdict', () => {
  test('the default limit is .060 in (common practice, no published source)', () => {
    expectNear(number(body, 'limit'), 0.06);
    expect(run(body).assumptions.join()).toContain('default limit');
    expect(run({ ...body, limit: inches(0.06) }).assumptions.join()).not.toContain('default limit');
  });

  test.each([
    [0.19, 0, 'clear'],
    [0.1901, 0, 'short'],
    [0.15, 0.04, 'clear'],
    [0.15, 0.0401, 'close'],
    [0.2, 0.01, 'close'],
    [0.2, 0.0101, 'close'],
    [0.2, 0.0099, 'short'],
  ])('room of .190 in against %d ± %d in is %s', (limit, uncertainty, wanted) => {
    expect(verdict({ limit: inches(limit), uncertainty: inches(uncertainty) })).toBe(wanted);
  });

  test('equality within a billionth of an inch counts as met', () => {
    expect(verdict({ limit: inches(0.19 + 5e-10) })).toBe('clear');
    expect(verdict({ limit: inches(0.19 + 5e-9) })).toBe('short');
  });

  test('coils that touch give a negative margin and are warned of', () => {
    const tight = { ...body, netLift: inches(0.8) };
    expectNear(number(tight, 'margin'), -0.05);
    expect(run(tight).cautions.join()).toContain('coils touch');
    expect(run(body).cautions.join()).not.toContain('coils touch');
    expect(partOf(run(tight).result, 'verdict')).toBe('short');
  });
});

describe('what can’t be', () => {
  test('solid above installed', () => {
    expect(faults({ ...body, solidHeight: inches(1.901) })).toEqual([
      '/installedHeight impossible-input',
      '/solidHeight impossible-input',
    ]);
    expectNear(number({ ...body, solidHeight: inches(1.9) }, 'margin'), -0.56);
  });

  test('a lift that takes up the whole spring', () => {
    expect(faults({ ...body, netLift: inches(1.9) })).toEqual([
      '/installedHeight impossible-input',
      '/netLift impossible-input',
    ]);
  });

  test('a lift of zero or less', () => {
    expect(faults({ ...body, netLift: inches(0) })).toEqual(['/netLift impossible-input']);
    expect(faults({ ...body, netLift: inches(-0.5) })).toEqual(['/netLift impossible-input']);
  });
});

test('the load comes back as the work put in: integral of the load over the lift, either system of units', () => {
  const inch = fc.double({ min: 0.05, max: 1, noNaN: true });
  fc.assert(
    fc.property(
      inch,
      fc.double({ min: 1, max: 900, noNaN: true }),
      fc.integer({ min: 0, max: 500 }),
      (lift, k, seat) => {
        const given = {
          ...body,
          netLift: inches(lift),
          rate: lbfPerInch(k),
          seatLoad: lbf(seat),
          solidHeight: inches(0.5),
        };
        const open = number(given, 'openLoad');
        // Mean load × lift is the work; seat·h + k·h²/2 is the same by integration.
        expectNear(((seat + open) / 2) * lift, seat * lift + (k * lift * lift) / 2, 1e-10);
        const metric = {
          ...body,
          solidHeight: mm(12.7),
          netLift: inUnit(inches(lift), 'mm'),
          rate: inUnit(lbfPerInch(k), 'N/mm'),
          seatLoad: inUnit(lbf(seat), 'N'),
        };
        expectNear(number(metric, 'openLoad'), open);
        expectNear(number(metric, 'openLoad', 'metric'), open * 4.4482216152605);
        expectNear(number(metric, 'openHeight', 'metric'), (1.9 - lift) * 25.4);
      },
    ),
  );
});

describeContract(computation, {
  body: { ...body, limit: inches(0.05), uncertainty: inches(0.01) },
  quantities: {
    installedHeight: 'in',
    seatLoad: 'lbf',
    rate: 'lbf/in',
    netLift: 'in',
    solidHeight: 'in',
    limit: 'in',
    uncertainty: 'in',
  },
  optional: ['limit', 'uncertainty'],
  impossibleBelow: ['netLift'],
});
