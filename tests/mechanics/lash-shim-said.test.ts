import { describe, expect, test } from 'vitest';
import { computation } from '../../server/mechanics/computations/lash-shim.ts';
import { mm } from './helpers/quantities.ts';
import { partOf, runner } from './helpers/runner.ts';
import { describeSaid } from './helpers/said.ts';

const { run, refused } = runner(computation);

/** 2.60 + .30 − .20: a shim of 2.70 mm is wanted. */
const body = { shimFitted: mm(2.6), lashFound: mm(0.3), lashWanted: mm(0.2) };
const stock = (...thicknesses: number[]) => ({ ...body, stock: thicknesses.map(mm) });
const LAST = ['two turns', 'at the crank', 'maker'];

describeSaid(computation, {
  assumes: [['always', body, ['whole thickness', 'measured itself']]],
  warns: [
    ['no stock told', body, ['one heat', ...LAST]],
    ['a gap of nothing', { ...body, lashFound: mm(0) }, ['one heat', 'found at zero', ...LAST]],
    ['an empty stock', stock(), ['one heat', 'Nothing is in stock', ...LAST]],
    ['none that leaves a gap', stock(2.95), ['one heat', 'No shim in stock leaves a gap', ...LAST]],
    ['the very shim', stock(2.7), ['one heat', ...LAST]],
    ['a thinner one', stock(2.65), ['one heat', 'more gap', ...LAST]],
    ['a thicker one', stock(2.75), ['one heat', 'less gap', ...LAST]],
  ],
});

describe('a shim that takes the whole gap is not named; 2.90 mm fills it (by hand)', () => {
  test.each([
    [2.8999, 2.8999],
    [2.9, undefined],
    [2.9001, undefined],
  ])('%d mm', (thickness, named) => {
    const told = partOf(run(stock(thickness), 'metric').result, 'nearest.shim');
    if (named === undefined) expect(told).toBeUndefined();
    else expect(told).toBeCloseTo(named, 9);
  });

  test('but where no gap is wanted the one that fills it is', () => {
    const none = { ...stock(2.9), lashWanted: mm(0) };
    expect(partOf(run(none, 'metric').result, 'nearest.shim')).toBeCloseTo(2.9, 9);
    expect(partOf(run(none, 'metric').result, 'nearest.lash')).toBeCloseTo(0, 9);
  });
});

test('a shim of no thickness is refused, one of a thousandth of a millimetre is not', () => {
  const all = ['/shimFitted', '/lashFound', '/lashWanted'].map((field) => `${field} impossible-input`);
  expect(refused({ ...body, lashWanted: mm(2.899) })).toEqual([]);
  expect(refused({ ...body, lashWanted: mm(2.9) })).toEqual(all);
  expect(refused({ ...body, lashWanted: mm(2.901) })).toEqual(all);
});
