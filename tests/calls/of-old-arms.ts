import type { Call } from './call.ts';
import { chose, described, type Entry, onSheet } from './entry.ts';
import { START } from './of-arms.ts';

/** A gap of .110 in that was read while the arms were said to be sold as 1.5. */
const GAP_WITH_THE_OLD: readonly Entry[] = [
  ...START,
  described({ clearances: { intake: { lobeLiftAtClosest: '.150 in' } } }),
  { ...described({ rockers: { nominalRatio: 1.5 } }), name: 'old' },
  {
    ...onSheet([{ cylinder: 1, valve: 'intake', kind: 'piston-to-valve', reading: '.110 in' }]),
    name: 'gap',
    after: ['old'],
  },
];

/** Gaps that were read with other arms than those that are on now, or are to be fitted. */
export const OF_OLD_ARMS: readonly Call[] = [
  {
    // .110 − .150 × .1 = .095 with a 1.6: it was read with the 1.5.
    said: 'That one ten was with the old ones; the one sixes are on now',
    goal: 'clearances-after-a-change',
    entries: [...GAP_WITH_THE_OLD, { ...described({ rockers: { nominalRatio: 1.6 } }), after: ['gap'] }],
    expected: {
      asks: ['gap-arms-then'],
      words: { 'gap:piston-to-valve:1-intake': undefined },
      says: [/1 intake with the 1\.6 they are sold as: \.095 in/, /read with the arms that are off since/],
      next: 'read-on-now',
    },
  },
  {
    said: 'The one five was a slip of mine: they were one sixes all along',
    goal: 'clearances-after-a-change',
    entries: [
      ...GAP_WITH_THE_OLD,
      { ...described({ rockers: { nominalRatio: 1.6 } }), name: 'new', after: ['gap'] },
      chose('gap-arms-then', 'same-arms', {
        ask: 'The arms were sold as 1.5 when a gap was read, and as 1.6 now. With which arms was that?',
        after: ['new'],
      }),
    ],
    expected: { never: [/\.095/, /off since/], says: [/\.110 in ± \.002, measured/], next: 'planned' },
  },
  {
    // .348 × 1.6 − .018 = .539; 1.770 − .539 − 1.150 = .081; an arm 4.5 % over takes .025 of that: .056, under .060.
    said: 'One seven seven installed: will the one sixes clear?',
    goal: 'choose-ratio',
    entries: [
      ...START,
      described({ rockers: { plannedRatio: 1.6 } }),
      described({ springs: { installedHeight: '1.770 in', solidHeight: '1.150 in' } }),
    ],
    expected: {
      words: { 'gap:coil-bind:intake': 'close' },
      says: [/\.081 in/, /the first arm read on a light spring, or the gap measured on the engine/],
      next: 'sold-as',
    },
  },
];
