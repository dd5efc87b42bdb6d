import type { Call } from './call.ts';
import { asked, described, marked, onSheet } from './entry.ts';

const START = [
  asked('none'),
  described({ engine: { cylinders: 8, lifter: 'solid-flat', rockerMounting: 'stud' } }),
];
const intakes = (kind: string, figures: readonly string[]) =>
  onSheet(
    figures.map((reading, at) => ({ cylinder: at + 1, valve: 'intake', kind, reading: `${reading} in` })),
  );
const LIFTS = ['.568', '.569', '.567', '.568', '.568', '.5685', '.567', '.568'];

/** What is said of a whole side, and of the marks of a gear that has no pushrod. */
export const OF_SIDE: readonly Call[] = [
  {
    said: 'All eight lifts, no lobes: I have no card here',
    goal: 'one-valve-differs',
    entries: [...START, intakes('valve-lift', LIFTS)],
    expected: {
      headline:
        /No intake stands out: .*Not known: their ratio\. It takes the lobe lift under each, read at the lifter or taken from the card\./,
      next: 'said',
    },
  },
  {
    // 1.800 − (.348 × 1.5 − .018) − 1.150 = .146; an arm 4.5 % over takes .024 more, and the exhausts are as tall.
    said: 'One fives on it, and both valves come to the same coil bind: how close is the worst?',
    goal: 'clearances-after-a-change',
    entries: [
      ...START,
      described({
        cam: {
          assumedRatio: 1.6,
          intake: { lobeLift: '.348 in', lash: '.018 in' },
          exhaust: { lobeLift: '.348 in', lash: '.018 in' },
        },
      }),
      described({ rockers: { nominalRatio: 1.5 } }),
      described({ springs: { installedHeight: '1.800 in', solidHeight: '1.150 in' } }),
    ],
    expected: {
      headline:
        /room to coil bind on the intake valves and the exhaust valves with the 1\.5 they are sold as: clear, at worst \.121 in \(\.146 to be expected\)/,
      next: 'centrelines',
    },
  },
  {
    said: 'A follower on a pivot, and its mark sits toward the valley',
    goal: 'geometry',
    entries: [
      asked('none'),
      described({ engine: { cylinders: 4, valveGear: 'finger-follower', rockerMounting: 'stud' } }),
      marked(1, { width: '.060 in', side: 'valley', off: '.030 in' }),
    ],
    expected: {
      asks: ['mark-off-centre'],
      says: [/heights that the follower is made for/],
      never: [/pushrod is too|longer|shorter|guide plate|on a stud/i],
      next: 'mark-off-centre',
    },
  },
];
