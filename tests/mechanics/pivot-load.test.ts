import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/pivot-load.ts';
import { describeContract } from './helpers/bad-input.ts';
import { expectNear } from './helpers/near.ts';
import { lbf, newtons } from './helpers/quantities.ts';
import { runner } from './helpers/runner.ts';

const { number, faults } = runner(computation);
const body = { springLoad: lbf(500), ratio: 1.5 };

describe('pushrod and pivot load', () => {
  test('500 lbf at 1.5 load the pushrod with 750 lbf (a pushrod maker’s article)', () => {
    expectNear(number(body, 'pushrodLoad'), 750);
  });

  test('the stud carries the sum, 1250 lbf, not the 750 of the pushrod (by hand)', () => {
    expectNear(number(body, 'pivotLoad'), 1250);
  });

  test('no load, no force', () => {
    expect(number({ ...body, springLoad: lbf(0) }, 'pivotLoad')).toBe(0);
  });

  test('moments about the pivot and about the cup both balance', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 2000, noNaN: true }),
        fc.double({ min: 0.5, max: 3, noNaN: true }),
        (load, ratio) => {
          const given = { springLoad: newtons(load), ratio };
          const pushrod = number(given, 'pushrodLoad', 'metric');
          const pivot = number(given, 'pivotLoad', 'metric');
          // Arms 1 (cup) and ratio (valve): about the pivot, and about the cup.
          expectNear(pushrod * 1, load * ratio);
          expectNear(pivot * 1, load * (1 + ratio));
          expectNear(number(given, 'pivotLoad') * 4.4482216152605, pivot);
        },
      ),
    );
  });

  test('a ratio of zero is refused', () => {
    expect(faults({ ...body, ratio: 0 })).toEqual(['/ratio out-of-range']);
  });
});

describeContract(computation, { body, quantities: { springLoad: 'lbf' }, numbers: ['ratio'] });
