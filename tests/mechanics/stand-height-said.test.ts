import { describe, expect, test } from 'vitest';
import { computation as arms } from '../../server/mechanics/computations/arm-lengths.ts';
import { computation } from '../../server/mechanics/computations/stand-height.ts';
import { inches } from './helpers/quantities.ts';
import { partOf, runner } from './helpers/runner.ts';
import { describeSaid } from './helpers/said.ts';

const { run, refused } = runner(computation);

/** The axis is 2.000 + .300 − 1.950 = .350 in over the pivot, half the lift .300 in: .050 in to raise. */
const body = {
  pivotHeight: inches(1.95),
  tipHeight: inches(2),
  netLift: inches(0.6),
  pivotToTip: inches(1.5),
  rollerRadius: inches(0.3),
};
const shims = (...thicknesses: number[]) => ({ ...body, shims: thicknesses.map(inches) });
const { rollerRadius: _left, ...axis } = body;
const ALWAYS = ['Another height', 'Threads', 'at the crank', 'maker'];

describeSaid(computation, {
  assumes: [
    ['a radius', body, ['from one face', 'the roller stands on it', 'flat and square', 'one shim']],
    ['none', axis, ['from one face', 'as no radius was given', 'flat and square', 'one shim']],
  ],
  warns: [
    ['no shims told', body, ALWAYS],
    ['one that fits', shims(0.05), ALWAYS],
    ['none to choose from', shims(), ['No shims were named', ...ALWAYS]],
    ['one twice as thick: as far off as none', shims(0.1), ALWAYS],
    ['one thicker than that', shims(0.101), ['.050 in low against .051 in high', ...ALWAYS]],
    ['right as it stands', { ...body, pivotHeight: inches(2) }, ALWAYS],
    ['too high already', { ...body, pivotHeight: inches(2.01) }, ['.010 in too high', ...ALWAYS]],
    ['too high, with shims', { ...shims(0.05), pivotHeight: inches(2.01) }, ['.010 in too high', ...ALWAYS]],
  ],
});

describe('what can’t be', () => {
  const told = (more: object) => refused({ ...body, ...more });
  const fields = (...names: string[]) => names.map((name) => `/${name} impossible-input`);
  test('a roller that reaches the pivot, and one that just doesn’t', () => {
    // The axis at the pivot’s height: .799 + 1.2 − 2 in is next to nothing.
    const short = { pivotToTip: inches(0.8), tipHeight: inches(1.2), pivotHeight: inches(2) };
    expect(told({ ...short, rollerRadius: inches(0.799) })).toEqual([]);
    expect(told({ ...short, rollerRadius: inches(0.8) })).toEqual(fields('rollerRadius', 'pivotToTip'));
  });

  test('an axis further off than the arm is long, either way', () => {
    const places = fields('pivotHeight', 'tipHeight', 'pivotToTip');
    // 2.3 − 1.5 = .8 and 2.3 + 1.5 = 3.8 are the ends.
    expect(told({ pivotHeight: inches(0.801) })).toEqual([]);
    expect(told({ pivotHeight: inches(0.799) })).toEqual(places);
    expect(told({ pivotHeight: inches(3.799) })).toEqual([]);
    expect(told({ pivotHeight: inches(3.801) })).toEqual(places);
  });

  test('no shim is named where none is needed, and nothing without one', () => {
    expect(partOf(run({ ...shims(0.03), pivotHeight: inches(2) }).result, 'nearest')).toBeUndefined();
    expect(partOf(run(body).result, 'nearest')).toBeUndefined();
  });
});

const limit = { errorLimit: inches(0.005) };
describeSaid(arms, {
  assumes: [
    [
      'two arms',
      { pivotToTip: { value: inches(1.48), ...limit }, pivotToCup: { value: inches(0.925), ...limit } },
      ['centre to centre', 'at mid-lift', 'error limits'],
    ],
  ],
  warns: [
    [
      'two arms',
      { pivotToTip: { value: inches(1.48), ...limit }, pivotToCup: { value: inches(0.925), ...limit } },
      ['settle no dispute'],
    ],
  ],
});
