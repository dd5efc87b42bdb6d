import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/lift.ts';
import { describeContract } from './helpers/bad-input.ts';
import { expectNear } from './helpers/near.ts';
import { inches, mm } from './helpers/quantities.ts';
import { runner } from './helpers/runner.ts';

const { run, number, faults } = runner(computation);
const body = { lobeLift: inches(0.35), ratio: 1.6, lash: inches(0.016) };

describe('valve lift', () => {
  test('lash is taken off at the valve tip: .350 × 1.6 − .016 = .544 in (by hand)', () => {
    expectNear(number(body, 'grossLift'), 0.56);
    expectNear(number(body, 'netLift'), 0.544);
  });

  test('.016 taken at the lifter instead would give .5344 in, which is not the answer', () => {
    expect(Math.abs(number(body, 'netLift') - 0.5344)).toBeGreaterThan(0.009);
    // .010 at the lifter is .016 at the tip of a 1.6 rocker (by hand).
    expectNear(number(body, 'netLift'), 1.6 * (0.35 - 0.01));
  });

  test('without lash the net lift is the gross lift, and the answer says so', () => {
    const answer = run({ lobeLift: inches(0.35), ratio: 1.6 });
    expect(answer.result).toEqual({ grossLift: expect.anything(), netLift: expect.anything() });
    expectNear(number({ lobeLift: inches(0.35), ratio: 1.6 }, 'netLift'), 0.56);
    expect(answer.assumptions.join()).toContain('no lash');
  });

  test('texts that the forms take are taken', () => {
    expectNear(number({ lobeLift: '350 thou', ratio: 1.6, lash: '.016 in' }, 'netLift'), 0.544);
  });

  test('lash that takes up all the lift is refused, to the last thousandth', () => {
    expect(faults({ ...body, lash: inches(0.561) })).toEqual(['/lash impossible-input']);
    expect(faults({ lobeLift: inches(0.5), ratio: 1, lash: inches(0.5) })).toEqual([
      '/lash impossible-input',
    ]);
    expect(number({ lobeLift: inches(0.5), ratio: 1, lash: inches(0.499) }, 'netLift')).toBeCloseTo(
      0.001,
      12,
    );
  });

  test('millimetres in, millimetres out give the same lift', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 4, noNaN: true }),
        fc.double({ min: 0.5, max: 3, noNaN: true }),
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        (lobe, ratio, share) => {
          const lash = lobe * ratio * share;
          const fromInches = { lobeLift: inches(lobe), ratio, lash: inches(lash) };
          const fromMm = { lobeLift: mm(lobe * 25.4), ratio, lash: mm(lash * 25.4) };
          // A second route: what is left of the lift when the lash is seen from the lobe.
          const wanted = ratio * (lobe - lash / ratio);
          expectNear(number(fromInches, 'netLift'), wanted);
          expectNear(number(fromMm, 'netLift'), wanted);
          expectNear(number(fromInches, 'netLift', 'metric'), wanted * 25.4);
          expectNear(number(fromMm, 'grossLift', 'metric') / 25.4, lobe * ratio);
        },
      ),
    );
  });
});

test('a ratio of zero or less, or over 100, is refused', () => {
  expect(faults({ ...body, ratio: 0 })).toEqual(['/ratio out-of-range']);
  expect(faults({ ...body, ratio: -1.6 })).toEqual(['/ratio out-of-range']);
  expect(faults({ ...body, ratio: 100.1 })).toEqual(['/ratio impossible-input']);
});

describeContract(computation, {
  body,
  quantities: { lobeLift: 'in', lash: 'in' },
  numbers: ['ratio'],
  optional: ['lash'],
});
