import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/dial-reading.ts';
import { describeContract } from './helpers/bad-input.ts';
import { expectNear } from './helpers/near.ts';
import { inches, mm } from './helpers/quantities.ts';
import { runner } from './helpers/runner.ts';

const { run, number, faults } = runner(computation);
const body = {
  graduation: inches(0.001),
  perTurn: inches(0.1),
  turns: 4,
  needle: inches(0.082),
  travel: inches(1),
};

describe('turns and needle (common practice, no published source)', () => {
  test('.482 is four turns and eighty-two; the hand stands at 82', () => {
    expectNear(number(body, 'reading'), 0.482);
    expectNear(number(body, 'needleAngle'), 295.2);
    expectNear(number(body, 'remainingTravel'), 0.518);
  });

  test('at the valve the hand runs backwards: 4 turns and 82 back stands at 18', () => {
    const back = { ...body, runs: 'anticlockwise' };
    expectNear(number(back, 'reading'), 0.482);
    expectNear((number(back, 'needleAngle') / 360) * 100, 18);
  });

  test('18 on the face taken for the needle would give .418, which is not the reading', () => {
    expectNear(number({ ...body, needle: inches(0.018) }, 'reading'), 0.418);
    expect(Math.abs(number({ ...body, runs: 'anticlockwise' }, 'reading') - 0.418)).toBeGreaterThan(0.05);
  });

  test('a hand on zero stands at zero whichever way it runs', () => {
    for (const runs of ['clockwise', 'anticlockwise']) {
      expect(number({ ...body, needle: inches(0), runs }, 'needleAngle')).toBe(0);
    }
  });

  test('a start is taken off; the travel counts from zero turns', () => {
    // Preload .100: from one turn to five turns and eighty-two is .482, and .418 of an inch is left.
    const preloaded = { ...body, turns: 5, start: { turns: 1, needle: inches(0) } };
    expectNear(number(preloaded, 'reading'), 0.482);
    expectNear(number(preloaded, 'remainingTravel'), 0.418);
    expectNear(number({ ...body, start: { turns: 3, needle: inches(0.09) } }, 'reading'), 0.092);
  });

  test('without the travel nothing is said of what is left', () => {
    const { travel: _gone, ...rest } = body;
    expect(run(rest).result).toEqual({ reading: expect.anything(), needleAngle: expect.anything() });
  });

  test('little travel left is cautioned', () => {
    expect(run({ ...body, turns: 9, needle: inches(0.06) }).cautions.join()).toContain('stop short');
    expect(run(body).cautions).toEqual([]);
  });
});

test('stepping the plunger division by division ends on the same reading and angle, in inch and mm', () => {
  const division = fc.constantFrom(0.001, 0.0005);
  fc.assert(
    fc.property(division, fc.integer({ min: 0, max: 900 }), fc.boolean(), (graduation, steps, back) => {
      const perTurn = 0.1;
      const inTurn = Math.round(perTurn / graduation);
      // Second route: a hand that moves one division at a time and a small hand that counts.
      let [turns, hand, angle] = [0, 0, 0];
      for (let step = 0; step < steps; step += 1) {
        hand += 1;
        angle = (angle + (back ? inTurn - 1 : 1)) % inTurn;
        if (hand === inTurn) {
          hand = 0;
          turns += 1;
        }
      }
      const runs = back ? 'anticlockwise' : 'clockwise';
      const dial = { graduation: inches(graduation), perTurn: inches(perTurn), turns, runs };
      const inInches = { ...dial, needle: inches(hand * graduation) };
      const inMm = { ...dial, perTurn: mm(2.54), needle: mm(hand * graduation * 25.4) };
      for (const given of [inInches, inMm]) {
        expect(Math.abs(number(given, 'reading') - steps * graduation)).toBeLessThan(1e-12);
        expect(Math.abs(number(given, 'reading', 'metric') - steps * graduation * 25.4)).toBeLessThan(1e-11);
        expect(Math.abs(number(given, 'needleAngle') - (angle / inTurn) * 360)).toBeLessThan(1e-9);
      }
    }),
  );
});

describe('what no dial shows', () => {
  test.each([
    ['a needle of a whole turn', { needle: inches(0.1) }, ['/needle impossible-input']],
    ['the same in thousandths', { needle: { value: 100, unit: 'thou' } }, ['/needle impossible-input']],
    ['part of a turn among the turns', { turns: 4.5 }, ['/turns out-of-range']],
    ['turns below zero', { turns: -1 }, ['/turns out-of-range']],
    ['a reading past the travel', { turns: 12 }, ['/travel impossible-input', '/turns impossible-input']],
    ['a start past the reading', { start: { turns: 5, needle: inches(0) } }, ['/start impossible-input']],
    [
      'a start with a whole turn',
      { start: { turns: 0, needle: inches(0.2) }, needle: inches(0.3) },
      ['/needle impossible-input', '/start/needle impossible-input'],
    ],
    ['a division longer than a turn', { graduation: inches(0.2) }, ['/graduation impossible-input']],
    ['a start without its needle', { start: { turns: 1 } }, ['/start/needle required']],
    ['more turns than a dial has room for', { turns: 1001 }, ['/turns impossible-input']],
    ['no such direction', { runs: 'left' }, ['/runs not-allowed']],
  ])('%s', (_what, change, refused) => {
    expect(faults({ ...body, ...change })).toEqual(refused);
  });

  test('the whole travel exactly is no fault, whatever the units', () => {
    const whole = { ...body, turns: 10, needle: inches(0) };
    expect(number(whole, 'remainingTravel')).toBe(0);
    expect(number({ ...whole, travel: mm(25.4) }, 'remainingTravel')).toBeCloseTo(0, 12);
  });
});

describeContract(computation, {
  body,
  quantities: { graduation: 'in', perTurn: 'in', needle: 'in', travel: 'in' },
  numbers: ['turns'],
  optional: ['travel'],
});
