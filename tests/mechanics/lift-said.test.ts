import { describe, expect, test } from 'vitest';
import { computation as cover } from '../../server/mechanics/computations/cover-room.ts';
import { computation as lift } from '../../server/mechanics/computations/lift.ts';
import { computation as pivot } from '../../server/mechanics/computations/pivot-load.ts';
import { computation as seal } from '../../server/mechanics/computations/retainer-to-seal.ts';
import { inches, lbf } from './helpers/quantities.ts';
import { partOf, runner } from './helpers/runner.ts';
import { describeSaid } from './helpers/said.ts';

const lobe = { lobeLift: inches(0.35), ratio: 1.6 };
describeSaid(lift, {
  assumes: [
    ['no lash told', lobe, ['nothing in the train bends', 'net lift is the gross lift']],
    ['a lash', { ...lobe, lash: inches(0.016) }, ['nothing in the train bends']],
    ['a lash of zero', { ...lobe, lash: inches(0) }, ['nothing in the train bends']],
  ],
});

describe('a lash that takes up all the lift: .350 × 1.6 = .560 (by hand)', () => {
  const { refused } = runner(lift);
  test.each([
    [{ ...lobe, lash: inches(0.559) }, []],
    [{ ...lobe, lash: inches(0.561) }, ['/lash impossible-input']],
    // Of two numbers at the end of a double nothing is left, and no lash is to blame.
    [
      { lobeLift: inches(5e-322), ratio: 1e-3 },
      expect.not.arrayContaining([expect.stringContaining('/lash ')]),
    ],
  ])('%j', (body, wanted) => {
    expect(refused(body)).toEqual(wanted);
  });
});

describeSaid(pivot, {
  assumes: [['a load', { springLoad: lbf(500), ratio: 1.5 }, ['at rest', 'same way']]],
  warns: [['a load', { springLoad: lbf(500), ratio: 1.5 }, ['maker']]],
});

const closed = { closedDistance: inches(0.65), netLift: inches(0.56) };
describeSaid(seal, {
  assumes: [
    ['neither', closed, ['no credit', 'default limit', 'taken as exact']],
    ['a limit', { ...closed, limit: inches(0.05) }, ['no credit', 'taken as exact']],
    ['an uncertainty', { ...closed, uncertainty: inches(0.01) }, ['no credit', 'default limit']],
  ],
  warns: [['always', closed, ['pring', 'maker']]],
});

const bolted = { coverBolting: 'through-centre', assemblyWidth: inches(1.6) };
const limits = { narrowUpTo: inches(1.2), wideFrom: inches(1.5) };
describeSaid(cover, {
  assumes: [
    ['the default limits', bolted, ['sideways', 'across the trunnion', 'default limits']],
    ['limits', { ...bolted, limits }, ['sideways', 'across the trunnion']],
  ],
  warns: [['always', bolted, ['Height']]],
});

describe('the ends count as narrow and as wide', () => {
  test.each([
    [1.2, 'clear'],
    [1.2001, 'close'],
    [1.4999, 'close'],
    [1.5, 'short'],
  ])('%d in', (width, wanted) => {
    const { run } = runner(cover);
    const body = { ...bolted, assemblyWidth: inches(width), limits };
    expect(partOf(run(body).result, 'verdict')).toBe(wanted);
  });
});
