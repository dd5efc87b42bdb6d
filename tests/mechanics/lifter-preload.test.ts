import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { computation as adjusterComputation } from '../../server/mechanics/computations/adjuster.ts';
import { computation } from '../../server/mechanics/computations/lifter-preload.ts';
import { describeContract } from './helpers/bad-input.ts';
import { expectNear } from './helpers/near.ts';
import { inches } from './helpers/quantities.ts';
import { partOf, runner } from './helpers/runner.ts';
import { expectSoundUnderFire } from './helpers/under-fire.ts';

const { run, number, faults } = runner(computation);
const adjuster = runner(adjusterComputation);
const half = { turns: 0.5, thread: '7/16-20', mount: 'stud-nut', ratio: 1.5 };
const word = (body: object) => partOf(run(body).result, 'inBand');

describe('preload at the plunger', () => {
  test.each([
    // Pitch × (1 + 1/ratio) a turn at 1.5, 1.6, 1.7: the list of check values, section 8.
    ['3/8-24', [0.069444, 0.067708, 0.066176]],
    ['7/16-20', [0.083333, 0.08125, 0.079412]],
    ['5/16-18', [0.092593, 0.090278, 0.088235]],
  ])('a turn of %s on a stud', (thread, travels) => {
    [1.5, 1.6, 1.7].forEach((ratio, index) => {
      expect(number({ ...half, turns: 1, thread, ratio }, 'preload')).toBeCloseTo(travels[index] ?? 0, 6);
    });
  });

  test('a screw at the cup goes one pitch, one at the valve a pitch over the ratio', () => {
    expectNear(number({ ...half, mount: 'cup-screw' }, 'preload'), 0.025);
    expectNear(number({ ...half, mount: 'valve-end-screw' }, 'preload'), 0.025 / 1.5);
  });

  test('it is the adjuster’s own for the same turns, whatever thread, mount and ratio', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 3, noNaN: true }),
        fc.constantFrom('3/8-24', '7/16-20', '5/16-18', 'M8×1.25', 'M10×1.5'),
        fc.constantFrom('stud-nut', 'cup-screw', 'valve-end-screw'),
        fc.double({ min: 1, max: 2.2, noNaN: true }),
        (turns, thread, mount, ratio) => {
          const body = { turns, thread, mount, ratio };
          const preload = number(body, 'preload');
          expect(preload).toBe(adjuster.number({ ...body, lifter: 'hydraulic' }, 'seatMovement'));
          const back = { thread, mount, ratio, preloadWanted: inches(preload), lifter: 'hydraulic' };
          expect(adjuster.number(back, 'turns')).toBeCloseTo(turns, 12);
        },
      ),
    );
  });
});

describe('against its band', () => {
  const at = (preload: number, more: object = {}) => ({
    ...half,
    turns: preload / 0.05,
    mount: 'cup-screw',
    ...more,
  });
  const band = { wanted: { from: inches(0.03), to: inches(0.05) } };

  test('under, within with its ends, over', () => {
    expect(word(at(0.0299, band))).toBe('under');
    expect(word(at(0.03, band))).toBe('within');
    expect(word(at(0.03 - 5e-10, band))).toBe('within');
    expect(word(at(0.05, band))).toBe('within');
    expect(word(at(0.05 + 5e-10, band))).toBe('within');
    expect(word(at(0.0501, band))).toBe('over');
  });

  test('left out, .020 to .060: trade press, usual figure', () => {
    expect([0.0199, 0.02, 0.06, 0.0601].map((each) => word(at(each)))).toEqual([
      'under',
      'within',
      'within',
      'over',
    ]);
    expect(run(half).assumptions.join()).toContain('usual band of .020 in to .060 in: trade press');
    expect(run(half).assumptions.join()).toContain('one of short travel is set to 0 to .010 in');
    expect(run({ ...half, ...band }).assumptions.join()).not.toContain('usual band');
  });

  test('a short-travel lifter by 0 to .010: common practice, no source; and not beside a band of its own', () => {
    const short = { plunger: 'short-travel' };
    expect([0, 0.01, 0.0101].map((each) => word(at(each, short)))).toEqual(['within', 'within', 'over']);
    expect(run({ ...half, ...short }).assumptions.join()).toContain('short-travel lifter, 0 to .010 in');
    expect(word({ ...half, plunger: 'usual' })).toBe(word(half));
    expect(faults({ ...half, ...band, ...short })).toEqual(['/plunger not-allowed']);
  });

  test('a band of one figure, and one that ends before it begins', () => {
    expect(word(at(0.03, { wanted: { from: inches(0.03), to: inches(0.03) } }))).toBe('within');
    expect(faults({ ...half, wanted: { from: inches(0.05), to: inches(0.03) } })).toEqual([
      '/wanted/from impossible-input',
      '/wanted/to impossible-input',
    ]);
    expect(faults({ ...half, wanted: {} })).toEqual(['/wanted/from required', '/wanted/to required']);
    expect(faults({ ...half, wanted: { from: inches(-0.01), to: inches(0.03), best: 1 } })).toEqual([
      '/wanted/best unknown-field',
      '/wanted/from out-of-range',
    ]);
  });

  test('a band past the plunger’s travel can’t be; the usual one past it is cautioned', () => {
    expect(faults({ ...half, ...band, liftersTravel: inches(0.049) })).toEqual([
      '/liftersTravel impossible-input',
      '/wanted/to impossible-input',
    ]);
    expect(run({ ...half, ...band, liftersTravel: inches(0.05) }).cautions.join()).not.toContain(
      'usual band',
    );
    expect(run({ ...half, liftersTravel: inches(0.059) }).cautions.join()).toContain(
      'The usual band goes to .060 in',
    );
  });
});

describe('how zero was found', () => {
  const said = (more: object) => run({ ...half, ...more }).cautions.join(' ');
  test('a spun pushrod and a feeler are cautioned, up-and-down play is not; a pumped-up lifter always', () => {
    expect(said({ zeroFoundBy: 'spin' })).toContain('an oily one still spins under load');
    expect(said({ zeroFoundBy: 'feeler' })).toContain('there is no gap to feel');
    for (const plain of [{}, { zeroFoundBy: 'up-and-down' }])
      expect(said(plain)).not.toMatch(/Zero was found/);
    expect(said({})).toContain('Let the lifter bleed down first');
  });
});

describe('against its travel', () => {
  test('what is left, or how far past the bottom, exact', () => {
    expectNear(number({ ...half, liftersTravel: inches(0.12) }, 'left'), 0.12 - 0.125 / 3);
    expectNear(number({ ...half, turns: 1.5, liftersTravel: inches(0.12) }, 'left'), -0.005);
    expect(run(half).result).not.toHaveProperty('left');
  });

  test('a plunger at or past its bottom is cautioned, with what the valve is then held open by', () => {
    // .125 in of .120: .005 too far at the plunger, .0075 at the valve by 1.5.
    const past = run({ ...half, turns: 1.5, liftersTravel: inches(0.12) }).cautions.join();
    expect(past).toContain('.005 in before these turns are done');
    expect(past).toContain('up to .0075 in');
    const just = { ...half, turns: 2, mount: 'cup-screw', liftersTravel: inches(0.1) };
    expect(run(just).cautions.join()).toContain('nothing is left');
    expect(run({ ...half, liftersTravel: inches(0.12) }).cautions.join()).not.toContain('bottom');
  });

  test('past the travel it is over, also where the usual band goes further than the plunger', () => {
    // .041667 in on a plunger of .040 in; .016667 in on one of .015 in, where the usual band has not begun.
    expect(word({ ...half, liftersTravel: inches(0.04) })).toBe('over');
    expect(word({ ...half, turns: 0.2, liftersTravel: inches(0.015) })).toBe('over');
    expect(word({ ...half, turns: 0.1, liftersTravel: inches(0.015) })).toBe('under');
    // It can rise no further than it went: .040 in, .060 in at the valve by 1.5.
    expect(run({ ...half, liftersTravel: inches(0.04) }).cautions.join()).toMatch(
      /Pump-up: .*up to \.060 in/,
    );
  });

  test('pump-up is cautioned with what it takes at the valve; at zero lash there is none', () => {
    // .041667 in at the plunger is .0625 at the valve by 1.5.
    expect(run(half).cautions.join()).toMatch(/Pump-up: .*up to \.0625 in/);
    const zero = run({ ...half, turns: 0 });
    expect(zero.result).toEqual({ preload: { value: 0, unit: 'in' }, inBand: 'under' });
    expect(zero.cautions.join()).not.toContain('Pump-up');
  });
});

test('turns before zero lash are none of preload', () => {
  expect(faults({ ...half, turns: -0.25 })).toEqual(['/turns out-of-range']);
  expect(faults({ ...half, liftersTravel: inches(0) })).toEqual(['/liftersTravel out-of-range']);
});

test('under fire', () => {
  expectSoundUnderFire(computation, {
    ...half,
    liftersTravel: inches(0.15),
    wanted: { from: inches(0.02), to: inches(0.06) },
  });
}, 30_000);

describeContract(computation, { body: half, numbers: ['turns', 'ratio'] });
