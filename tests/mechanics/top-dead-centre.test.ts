import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/top-dead-centre.ts';
import { expectNear, expectSame } from './helpers/near.ts';
import { deg, inches } from './helpers/quantities.ts';
import { runner } from './helpers/runner.ts';
import { expectSoundUnderFire } from './helpers/under-fire.ts';

const { registered, run, number, refused } = runner(computation);
const body = (first: number, second: number) => ({ stopReadings: [deg(first), deg(second)] });

test('36.75 and 35.25 average 36, pointer .75 out (printed in a degreeing text)', () => {
  expectNear(number(body(36.75, 35.25), 'trueReading'), 36);
  expectNear(number(body(36.75, 35.25), 'correction'), 0.75);
});

test('the other way round the pointer is out the other way', () => {
  expect(number(body(35.25, 36.75), 'correction')).toBeCloseTo(-0.75, 12);
});

test('half the difference: the whole difference would move the pointer twice too far', () => {
  expect(number(body(20, 10), 'correction')).toBeCloseTo(5, 12);
});

test('moving the pointer by the correction makes both sides read the same', () => {
  const reading = fc.double({ min: 0.01, max: 179, noNaN: true });
  fc.assert(
    fc.property(reading, reading, (first, second) => {
      const correction = number(body(first, second), 'correction');
      expect(first - correction).toBeCloseTo(second + correction, 9);
      expect(number(body(first, second), 'trueReading')).toBeCloseTo(second + correction, 9);
    }),
  );
});

test('the stop found from a simulated wheel whose pointer is off', () => {
  // The stop is met at 28° either side of the true top; the pointer reads 3.5° too much going one way.
  expect(number(body(28 + 3.5, 28 - 3.5), 'trueReading')).toBeCloseTo(28, 12);
  expect(number(body(28 + 3.5, 28 - 3.5), 'correction')).toBeCloseTo(3.5, 12);
});

/*
 * A wheel fixed to the crank, a pointer fixed to the block; angles in the block, counted the way the crank turns. Its zero
 * stands at the crank's angle, and the mark “n after TDC” passes the pointer n later, so it lies n behind the zero: at
 * the pointer the wheel reads crank − pointer. From that alone: a pointer at −1 meets a stop at ±36 as 37 after and 35
 * before, and is at 36 and 36 once it is shifted 1 toward the marks before TDC; the other way it would read 38 and 34.
 */
describe('a wheel on the crank and a pointer on the block', () => {
  const read = (stop: number, pointer: number) => ({ after: stop - pointer, before: -(-stop - pointer) });

  test('shifted by the correction one way it reads what it should on both sides, the other way neither', () => {
    const { after, before } = read(36, -1);
    expect([after, before]).toEqual([37, 35]);
    expectNear(number(body(after, before), 'correction'), 1);
    expect(read(36, -1 + 1)).toEqual({ after: 36, before: 36 });
    expect(read(36, -1 - 1)).toEqual({ after: 38, before: 34 });
  });

  test('the angle by which it was out is the correction, whichever way', () => {
    fc.assert(
      fc.property(fc.integer({ min: 20, max: 60 }), fc.integer({ min: -40, max: 40 }), (stop, quarter) => {
        const pointer = quarter / 4;
        const { after, before } = read(stop, pointer);
        fc.pre(after > 0 && before > 0);
        expect(number(body(after, before), 'correction')).toBeCloseTo(-pointer, 9);
        expect(number(body(after, before), 'trueReading')).toBeCloseTo(read(stop, 0).after, 9);
      }),
    );
  });
});

describe('input that can’t be', () => {
  test('a whole turn between the contacts', () => {
    expect(refused(body(180, 180))).toEqual([
      '/stopReadings/0 impossible-input',
      '/stopReadings/1 impossible-input',
    ]);
  });
  test('one reading, three readings, negative, wrong dimension', () => {
    expect(refused({ stopReadings: [deg(3)] })).toEqual(['/stopReadings required']);
    expect(refused({ stopReadings: [deg(3), deg(3), deg(3)] })).toEqual(['/stopReadings too-many']);
    expect(refused(body(-3, 0))).toEqual(['/stopReadings/0 out-of-range', '/stopReadings/1 out-of-range']);
    expect(refused({ stopReadings: [inches(3), 4] })).toEqual([
      '/stopReadings/0 wrong-dimension',
      '/stopReadings/1 wrong-dimension',
    ]);
    expect(refused({})).toEqual(['/stopReadings required']);
  });
  test('a list with one unit, and texts', () => {
    expectNear(number({ stopReadings: { values: [36.75, 35.25], unit: 'deg' } }, 'trueReading'), 36);
    expectNear(number({ stopReadings: ['36.75 deg', '35.25°'] }, 'trueReading'), 36);
  });
  test('under fire', () => {
    expectSoundUnderFire(computation, body(36, 35));
  }, 30_000);
});

test('the worked example', () => {
  expectSame(run(registered.example.inputs).result, registered.example.result);
});
