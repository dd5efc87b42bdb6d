import { describe, expect, test } from 'vitest';
import { computation as adjuster } from '../../server/mechanics/computations/adjuster.ts';
import { computation as preload } from '../../server/mechanics/computations/lifter-preload.ts';
import { inches } from './helpers/quantities.ts';
import { partOf, runner } from './helpers/runner.ts';
import { describeSaid } from './helpers/said.ts';

/** 7/16-20: .050 in to the turn. */
const screw = { thread: '7/16-20', ratio: 1.5, mount: 'stud-nut' };
const hydraulic = { ...screw, lifter: 'hydraulic', turns: 0.5 };
const solid = { ...screw, lifter: 'solid', lashFound: inches(0.02), lashWanted: inches(0.018) };
const solidTurns = { ...screw, lifter: 'solid', turns: 0.1 };
const ENDS = ['Confirm', 'at the crank', 'maker'];
const HYDRAULIC = ['bleed down first', 'lever of a nut', 'by quarters', ...ENDS];

describeSaid(adjuster, {
  assumes: [
    ['a hydraulic lifter', hydraulic, ['from zero lash', 'in line', '60°', 'locking nut']],
    ['a solid one, turned', solidTurns, ['pushrod side stands still', 'in line', '60°', 'locking nut']],
    [
      'a lash as found',
      solid,
      ['pushrod side stands still', 'in line', '60°', 'from where the nut', 'locking nut'],
    ],
  ],
  warns: [
    ['a hydraulic lifter on a stud', hydraulic, HYDRAULIC],
    [
      'at the cup, where a turn is one pitch',
      { ...hydraulic, mount: 'cup-screw' },
      HYDRAULIC.filter((part) => part !== 'lever of a nut'),
    ],
    ['zero found by spinning', { ...hydraulic, zeroFoundBy: 'spin' }, ['spinning', ...HYDRAULIC]],
    ['zero found with a feeler', { ...hydraulic, zeroFoundBy: 'feeler' }, ['feeler', ...HYDRAULIC]],
    ['zero found by play', { ...hydraulic, zeroFoundBy: 'up-and-down' }, HYDRAULIC],
    ['a solid lifter on a stud', solidTurns, ENDS],
    ['a solid one, zero by spinning', { ...solidTurns, zeroFoundBy: 'spin' }, ['spinning', ...ENDS]],
    ['a solid one, zero with a feeler, as it should be', { ...solidTurns, zeroFoundBy: 'feeler' }, ENDS],
    ['a lash as found', solid, ['one heat', ...ENDS]],
    ['a lash as found needs no zero', { ...solid, zeroFoundBy: 'spin' }, ['one heat', ...ENDS]],
    ['a lash found at zero', { ...solid, lashFound: inches(0) }, ['one heat', 'found at zero', ...ENDS]],
  ],
});

describe('which way', () => {
  const { run } = runner(adjuster);
  test.each([
    [0.02, 0.018, 'tighten'],
    [0.018, 0.02, 'loosen'],
    [0.02, 0.02, undefined],
  ])('from a gap of %d to %d in is to %s (a nut turned down closes the gap)', (from, to, wanted) => {
    const body = { ...solid, lashFound: inches(from), lashWanted: inches(to) };
    expect(partOf(run(body).result, 'direction')).toBe(wanted);
  });
});

/** Usual band .020 to .060 in, short travel 0 to .010 in; at the cup a turn of this thread is .050 in. */
const pressed = { thread: '7/16-20', ratio: 1.5, mount: 'cup-screw', turns: 0.8 };
const travel = (length: number, more: object = {}) => ({
  ...pressed,
  liftersTravel: inches(length),
  ...more,
});
const LEFT = ['bleed down first', 'Pump-up', 'by quarters', 'at the crank', 'maker'];

describeSaid(preload, {
  assumes: [
    ['no band', pressed, ['from zero lash', 'in line', 'usual band of', 'one of short travel']],
    ['the usual one meant', { ...pressed, plunger: 'usual' }, ['from zero lash', 'in line', 'usual band of']],
    [
      'short travel',
      { ...pressed, plunger: 'short-travel' },
      ['from zero lash', 'in line', 'short-travel lifter'],
    ],
    [
      'a band of one’s own',
      { ...pressed, wanted: { from: inches(0.02), to: inches(0.05) } },
      ['from zero lash', 'in line'],
    ],
  ],
  warns: [
    ['no travel told', pressed, LEFT],
    ['travel to spare', travel(0.1), LEFT],
    ['travel as far as the band', travel(0.06), LEFT],
    ['less than the band', travel(0.059), ['.060 in, past this lifter’s travel of .059 in', ...LEFT]],
    [
      'less than the usual band, but one was wanted',
      travel(0.059, { wanted: { from: inches(0), to: inches(0.05) } }),
      LEFT,
    ],
    ['all of it used: .8 × .050 = .040', travel(0.04), ['.060 in, past', 'nothing is left', ...LEFT]],
    [
      'more than there is: .005 short, .0075 at the valve',
      travel(0.035),
      [
        '.060 in, past',
        '.005 in before these turns are done, and the valve is then held off its seat by up to .0075 in',
        ...LEFT,
      ],
    ],
    [
      'on a stud',
      { ...pressed, mount: 'stud-nut' },
      ['bleed down first', 'Pump-up', 'lever of a nut', 'by quarters', 'at the crank', 'maker'],
    ],
    [
      'no turns',
      { ...pressed, turns: 0 },
      ['bleed down first', 'against its clip', 'by quarters', 'at the crank', 'maker'],
    ],
    ['zero by spinning', { ...pressed, zeroFoundBy: 'spin' }, ['spinning', ...LEFT]],
  ],
});

describe('the ends of the band count as within (definition)', () => {
  const { run, refused } = runner(preload);
  const judged = (preloaded: number, more: object) =>
    partOf(run({ ...pressed, turns: preloaded / 0.05, ...more }).result, 'inBand');
  test.each([
    [0.0199, {}, 'under'],
    [0.02, {}, 'within'],
    [0.06, {}, 'within'],
    [0.0601, {}, 'over'],
    [0.01, { plunger: 'short-travel' }, 'within'],
    [0.0101, { plunger: 'short-travel' }, 'over'],
    [0.05, { liftersTravel: inches(0.05) }, 'within'],
    [0.0501, { liftersTravel: inches(0.05) }, 'over'],
  ])('%d in %j: %s', (preloaded, more, wanted) => {
    expect(judged(preloaded, more)).toBe(wanted);
  });

  const band = (from: number, to: number, more: object = {}) => ({
    ...pressed,
    wanted: { from: inches(from), to: inches(to) },
    ...more,
  });
  test.each([
    [band(0.03, 0.03), []],
    [band(0.0301, 0.03), ['/wanted/from', '/wanted/to']],
    [band(0.03, 0.05, { liftersTravel: inches(0.05) }), []],
    [band(0.03, 0.0501, { liftersTravel: inches(0.05) }), ['/wanted/to', '/liftersTravel']],
    [
      band(0.06, 0.055, { liftersTravel: inches(0.05) }),
      ['/wanted/from', '/wanted/to', '/wanted/to', '/liftersTravel'],
    ],
  ])('a band that can be, and one that can’t %#', (body, wanted) => {
    expect(refused(body)).toEqual(wanted.map((pointer) => `${pointer} impossible-input`));
  });
});
