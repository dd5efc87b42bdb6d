import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/piston-drop.ts';
import { deg, inches } from './helpers/quantities.ts';
import { runner } from './helpers/runner.ts';
import { describeSaid } from './helpers/said.ts';

const body = {
  stroke: inches(4),
  rodLength: inches(6),
  crankAngles: [deg(90)],
  from: 'true-tdc',
};

describeSaid(computation, {
  assumes: [
    ['no offset', body, ['rigid parts', 'no pin offset']],
    ['an offset', { ...body, pinOffset: inches(0.06) }, ['rigid parts']],
    ['an offset told as zero', { ...body, pinOffset: inches(0) }, ['rigid parts']],
  ],
  warns: [['of turning the engine', body, ['at the crank']]],
});

describe('the most that a pin can stand aside: rod less throw, 6 − 2 = 4 in (by hand)', () => {
  const { refused } = runner(computation);
  test.each([
    [3.999, 0],
    [4, 1],
    [4.001, 1],
    [-3.999, 0],
    [-4, 1],
  ])('%d in', (offset, faults) => {
    expect(refused({ ...body, pinOffset: inches(offset) })).toHaveLength(faults);
  });
});
