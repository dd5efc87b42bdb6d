import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/cosine-error.ts';
import { describeContract } from './helpers/bad-input.ts';
import { expectNear } from './helpers/near.ts';
import { deg, inches, mm } from './helpers/quantities.ts';
import { runner } from './helpers/runner.ts';

const { run, number, faults } = runner(computation);
const body = { reading: inches(0.5), tilt: deg(5), contact: 'flat-face' };

describe('a leaning indicator, .5000 in of motion (cosines of a seven-place table)', () => {
  test.each([
    [1, 0.50008, 0.49992],
    [2, 0.5003, 0.4997],
    [3, 0.50069, 0.49931],
    [5, 0.50191, 0.4981],
    [10, 0.50771, 0.4924],
    [15, 0.51764, 0.48296],
    [20, 0.53209, 0.46985],
  ])('%d°: reads %d on a flat face, %d on a carried point', (tilt, high, low) => {
    const flat = { ...body, reading: inches(high), tilt: deg(tilt) };
    const carried = { reading: inches(low), tilt: deg(tilt), contact: 'carried-point' };
    expect(Math.abs(number(flat, 'trueMotion') - 0.5)).toBeLessThan(6e-6);
    expect(Math.abs(number(carried, 'trueMotion') - 0.5)).toBeLessThan(6e-6);
    expect(number(flat, 'error')).toBeGreaterThan(0);
    expect(number(carried, 'error')).toBeLessThan(0);
  });

  test.each([
    [10, 0.98],
    [20, 0.94],
    [30, 0.87],
    [40, 0.77],
    [50, 0.64],
    [60, 0.5],
  ])('at %d° the flat face takes the factor printed in instrument catalogues, %d', (tilt, factor) => {
    // A lever indicator's ball rolls over the face as the flat face slides: true = reading × cos.
    expect(number({ ...body, reading: inches(1), tilt: deg(tilt) }, 'trueMotion').toFixed(2)).toBe(
      factor.toFixed(2),
    );
  });

  test('the two contacts correct in opposite directions: one taken for the other is off twice as far', () => {
    const flat = number({ ...body, tilt: deg(10) }, 'trueMotion');
    const carried = number({ ...body, tilt: deg(10), contact: 'carried-point' }, 'trueMotion');
    expectNear(flat, 0.492403876506104);
    expectNear(carried, 0.507713305942872);
  });
});

/** Where the plunger's axis meets a face square to the motion, found by stepping the face up: a second route. */
function seenOnFlatFace(motion: number, tilt: number): number {
  // Plunger axis along (sin, cos) from the origin; the face is the line y = motion.
  let [low, high] = [0, motion * 100 + 1];
  for (let step = 0; step < 200; step += 1) {
    const middle = (low + high) / 2;
    if (middle * Math.cos(tilt) < motion) low = middle;
    else high = middle;
  }
  return high;
}

test('the reading of a flat face agrees with the axis met by bisection; both contacts go out and back in mm', () => {
  const motion = fc.double({ min: 0.01, max: 2, noNaN: true });
  fc.assert(
    fc.property(motion, fc.double({ min: 0, max: 80, noNaN: true }), (d, tilt) => {
      const radians = (tilt * Math.PI) / 180;
      const reading = seenOnFlatFace(d, radians);
      expectNear(number({ ...body, reading: inches(reading), tilt: deg(tilt) }, 'trueMotion'), d, 1e-9);
      // A carried point moves the plunger by its part along the axis.
      const along = { reading: mm(d * 25.4 * Math.cos(radians)), tilt: deg(tilt), contact: 'carried-point' };
      expectNear(number(along, 'trueMotion', 'metric'), d * 25.4);
      expectNear(number(along, 'trueMotion'), d);
      const { reading: shown } = along;
      expect(Math.abs(number(along, 'error', 'metric') - (shown.value - d * 25.4))).toBeLessThan(1e-9);
    }),
  );
});

test('in line there is no error; square to it the plunger would not move', () => {
  expect(number({ ...body, tilt: deg(0) }, 'error')).toBe(0);
  expect(faults({ ...body, tilt: deg(90) })).toEqual(['/tilt impossible-input']);
  expect(faults({ ...body, tilt: deg(135) })).toEqual(['/tilt impossible-input']);
  expect(faults({ ...body, contact: 'ball' })).toEqual(['/contact not-allowed']);
});

test('a great lean is cautioned', () => {
  expect(run({ ...body, tilt: deg(20) }).cautions.join()).toContain('15°');
  expect(run(body).cautions.join()).not.toContain('15°');
});

describeContract(computation, { body, quantities: { reading: 'in', tilt: 'deg' } });
