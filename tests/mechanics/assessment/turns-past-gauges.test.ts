import { expect, test } from 'vitest';
import { assess } from '../../../server/mechanics/assessment/assess.ts';
import type { TurnsEvidence } from '../../../server/mechanics/assessment/evidence/kept-sums.ts';
import type { Bounds, Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { line } from './lash-log.ts';
import { PLAIN } from './plain-build.ts';

/* What turns close past a gap opens the valve, by hand: .094 closed of .020 is .074 past it. */
const TURNS: TurnsEvidence = {
  of: 'turns',
  thread: '7/16-20',
  pitch: IN / 20,
  size: '7/16',
  mount: 'stud-nut',
  ratio: 1.5,
  lifter: 'solid',
  turns: 0.75,
  lashChange: -0.094 * IN,
};
const told = (gap: Bounds) => {
  const evidence: Evidence = {
    ...PLAIN,
    lash: [line(1, '2026-01-10', 0, { gap })],
    workings: [
      {
        id: 'w',
        line: 9,
        computation: 'adjuster-travel',
        set: TURNS,
      },
    ],
  };
  return assess(evidence).stop.map(({ sentence }) => sentence);
};

test('past a gap that is known they hold the valve open', () => {
  expect(told({ value: 0.02 * IN })).toEqual([
    'Do not turn it: the turns kept close the lash by .094 in, .074 in more than the .020 in of 3 exhaust, and hold the valve open by up to .074 in.',
  ]);
});

test('past the thinner of two gauges alone they may', () => {
  const said =
    'Do not turn it: the turns kept close the lash by .094 in, .074 in more than the .020 in that 3 exhaust has at the least, and may hold the valve open by up to .074 in.';
  expect(told({ low: 0.02 * IN, high: 0.1 * IN })).toEqual([said]);
  expect(told({ low: 0.02 * IN })).toEqual([said]);
  expect(told({ low: 0.02 * IN, high: 0.024 * IN })[0]).toMatch(/, and hold the valve open/);
});
