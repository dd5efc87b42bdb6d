import { describe, expect, test } from 'vitest';
import { computation as leaning } from '../../server/mechanics/computations/cosine-error.ts';
import { computation } from '../../server/mechanics/computations/dial-reading.ts';
import { deg, inches } from './helpers/quantities.ts';
import { runner } from './helpers/runner.ts';
import { describeSaid } from './helpers/said.ts';

const { refused } = runner(computation);

/** 4 turns of .100 in and .082 in: .482 in from zero. */
const body = { graduation: inches(0.001), perTurn: inches(0.1), turns: 4, needle: inches(0.082) };
const start = (turns: number, needle: number) => ({ start: { turns, needle: inches(needle) } });

describeSaid(computation, {
  assumes: [
    ['nothing more', body, ['small hand', 'clockwise', 'on zero at the start']],
    ['which way it runs', { ...body, runs: 'clockwise' }, ['small hand', 'on zero at the start']],
    ['a start', { ...body, ...start(0, 0) }, ['small hand', 'clockwise']],
    ['a travel', { ...body, travel: inches(1) }, ['small hand', 'clockwise', 'on zero', 'from zero turns']],
  ],
  warns: [
    ['no travel told', body, []],
    ['.051 in left, half a turn being .050', { ...body, travel: inches(0.533) }, []],
    ['.049 in left', { ...body, travel: inches(0.531) }, ['Hardly any travel']],
    ['none left', { ...body, travel: inches(0.482) }, ['push the plunger in less']],
    // At the valve the plunger comes out: it must have been pushed in further (trade practice, 2.1).
    [
      'none left at the valve',
      { ...body, runs: 'anticlockwise', travel: inches(0.482) },
      ['push the plunger in further'],
    ],
  ],
});

describe('what a dial can’t show (by its own scale)', () => {
  const impossible = (...fields: string[]) => fields.map((field) => `/${field} impossible-input`);
  test.each([
    ['a division as large as the turn', { graduation: inches(0.1) }, []],
    ['the same in millimetres', { graduation: { value: 2.54, unit: 'mm' } }, []],
    ['a larger one', { graduation: inches(0.10001) }, ['graduation']],
    ['a hand just under a turn', { needle: inches(0.09999) }, []],
    ['a hand at a turn', { needle: inches(0.1) }, ['needle']],
    ['the same in millimetres', { needle: { value: 2.54, unit: 'mm' } }, ['needle']],
    ['a start just under a turn', start(0, 0.09999), []],
    ['a start at a turn', start(0, 0.1), ['start/needle']],
    ['both', { needle: inches(0.2), ...start(0, 0.1) }, ['needle', 'start/needle']],
    ['a start at the reading', start(4, 0.082), []],
    ['a start past it', start(4, 0.0821), ['start']],
    ['a start a turn past it', start(5, 0.082), ['start']],
    ['all of the travel', { travel: inches(0.482) }, []],
    ['more than the travel', { travel: inches(0.4819) }, ['turns', 'travel']],
    ['much more, from a start', { travel: inches(0.4), ...start(4, 0.08) }, ['turns', 'travel']],
    ['100 in', { turns: 1000, needle: inches(0) }, []],
    ['past 100 in', { turns: 1000, needle: inches(0.001) }, ['turns']],
  ])('%s', (_what, more, wanted) => {
    expect(refused({ ...body, ...more })).toEqual(impossible(...wanted));
  });

  test.each([
    [0.3, 3, 0],
    [0.7, 7, 0],
    [0.1, 1, 0],
  ])('a rounding of the units is no movement backwards: %d in and %d turns', (travel, turns, needle) => {
    // .3 in is 3 × .1 in but for a last figure of the double.
    const given = { ...body, turns, needle: inches(needle), travel: inches(travel) };
    expect(refused(given)).toEqual([]);
    expect(refused({ ...given, start: { turns: 0, needle: inches(0) } })).toEqual([]);
    expect(refused({ ...given, perTurn: { value: 2.54, unit: 'mm' }, ...start(turns, 0) })).toEqual([]);
  });
});

const lean = (tilt: number, contact = 'flat-face') => ({ reading: inches(0.5), tilt: deg(tilt), contact });
describeSaid(leaning, {
  assumes: [
    ['a flat face', lean(5), ['reads high', 'does not change']],
    ['a point carried along', lean(5, 'carried-point'), ['reads low', 'does not change']],
  ],
  warns: [
    ['a little lean', lean(14.999), ['rather than correct it']],
    ['much', lean(15.001), ['Over 15°', 'rather than correct it']],
  ],
});

test('square to the motion a plunger does not move', () => {
  const told = runner(leaning).refused;
  expect(told(lean(89.999))).toEqual([]);
  expect(told(lean(90))).toEqual(['/tilt impossible-input']);
});
