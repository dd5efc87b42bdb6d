import { expect } from 'vitest';
import type { Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { IN } from '../../../server/mechanics/kit/si.ts';
import { PLAIN } from '../../mechanics/assessment/plain-build.ts';
import { assessAsTold } from '../../tools/told/assess-as-told.ts';
import { type Call, codes, of, SOLID, tellEach } from './call.ts';

let log = 0;
const lashOf = (moment: 'found' | 'set', inches: number, day: number): Evidence['lash'][number] => {
  log += 1;
  return {
    id: `lash-${log}`,
    line: 100 + log,
    standing: true,
    cylinder: 2,
    valve: 'exhaust',
    gap: { value: inches * IN },
    readAs: `${inches} in`,
    moment,
    engine: 'hot',
    nut: 'held',
    day: `2026-03-0${day}`,
  };
};

const CALLS: readonly Call[] = [
  {
    name: 'a solid lash of .200 is asked, and no turn is told of it',
    kept: [['adjuster', { ...SOLID, lashFound: '.200 in' }]],
    check: (said) => {
      expect(codes(said)).toContain('sum-unlikely');
      expect(of(said, 'adjuster')).toEqual([
        'Nothing is told of these turns yet. Is the lash found really .200 in?',
      ]);
      expect(said.quantities.find(({ id }) => id === 'working:turns')?.lacks).toHaveLength(1);
    },
  },
  {
    // The figure itself is held by the tests of the computation: here that it is told, cold beside hot.
    name: 'a lash hot and cold is told as both',
    kept: [
      [
        'lash-hot-cold',
        {
          hotLash: '.018 in',
          coldFound: '.018 in',
          temperatureRise: '126 degF',
          ratio: 1.6,
          materials: { block: 'cast iron', head: 'aluminium', pushrod: 'steel', valve: 'steel' },
        },
      ],
    ],
    check: (said) => {
      expect(of(said, 'adjuster')[0]).toMatch(
        /gap grows by about \.0\d+ in with heat: \.018 in hot is about/,
      );
      expect(of(said, 'adjuster')[0]).toMatch(/Found at \.018 in cold, it becomes about \.02\d in hot/);
    },
  },
  {
    name: 'a turn for a valve that the log has at that gap names it',
    base: { lash: [lashOf('found', 0.022, 1)] },
    kept: [['adjuster', SOLID]],
    check: (said) =>
      expect(of(said, 'adjuster')[0]).toMatch(/^2 exhaust: tighten .*the lash goes from \.022 to \.016 in/),
  },
  {
    name: 'once it was set that turn is history',
    base: { lash: [lashOf('found', 0.022, 1), lashOf('set', 0.016, 2)] },
    kept: [['adjuster', SOLID]],
    check: (said) => {
      expect(of(said, 'adjuster')[0]).toMatch(/was made: set at 2 exhaust\. Read it again once locked/);
      expect(of(said, 'adjuster').join(' ')).not.toContain('ighten');
      expect(said.details.workings.turnToMake).toBeUndefined();
    },
  },
  {
    name: 'it stays history when the gap has grown again',
    base: { lash: [lashOf('found', 0.022, 1), lashOf('set', 0.016, 2), lashOf('found', 0.021, 3)] },
    kept: [['adjuster', SOLID]],
    check: (said) =>
      expect(of(said, 'adjuster').join(' ')).toMatch(
        /was made: set at 2 exhaust\. Found since: 2 exhaust \.021 in\.$/,
      ),
  },
  {
    // .006 ÷ (1.6 × .0417 × 1.625) = .0554 turn, 19.9°.
    name: 'a solid adjuster from .022 to .016',
    kept: [['adjuster', { ...SOLID, thread: '3/8-24' }]],
    check: (said) =>
      expect(of(said, 'adjuster')).toEqual([
        'Tighten .055 turn, 20°: the lash goes from .022 to .016 in. Which valve was found so?',
      ]),
  },
  {
    name: 'the same under a stop is not told',
    base: { call: { ...PLAIN.call, contact: 'something' } },
    kept: [['adjuster', SOLID]],
    check: (said) => expect(of(said, 'adjuster')).toEqual([]),
  },
];

tellEach(CALLS, assessAsTold('kept-workings-lash'));
