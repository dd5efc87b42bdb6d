import type { Call } from './call.ts';
import { asked, described, lashLine, marked } from './entry.ts';

const START = [
  asked('none', 'has-run'),
  described({ engine: { cylinders: 8, lifter: 'solid-flat', rockerMounting: 'stud' } }),
];

/* A gap that grew over .004 on one valve, and again after a reset, is a stop: common practice, no published source. */
export const OF_SETTING: readonly Call[] = [
  {
    said: 'Number six ticks, I’ve set it three times',
    goal: 'noise-or-failure',
    entries: [
      ...START,
      lashLine(6, '.018 in', { moment: 'set', engine: 'hot', readOn: '2026-03-01' }),
      lashLine(6, '.026 in', { moment: 'found', engine: 'hot', nut: 'held', readOn: '2026-03-08' }),
      lashLine(6, '.018 in', { moment: 'set', engine: 'hot', readOn: '2026-03-09' }),
      lashLine(6, '.025 in', { moment: 'found', engine: 'hot', nut: 'held', readOn: '2026-03-15' }),
    ],
    expected: { stop: [/grew|grow/], next: /./ },
  },
  {
    said: 'It opened up eight, and the nut had turned',
    goal: 'noise-or-failure',
    entries: [
      ...START,
      lashLine(6, '.018 in', { moment: 'set', engine: 'hot', readOn: '2026-03-01' }),
      lashLine(6, '.026 in', { moment: 'found', engine: 'hot', nut: 'moved', readOn: '2026-03-08' }),
    ],
    expected: { says: [/nut|lock/], next: /./ },
  },
  {
    said: 'The stripe sits thirty to the exhaust side, sixty wide',
    goal: 'geometry',
    entries: [
      ...START,
      marked(1, { width: '.060 in', side: 'exhaust', off: '.030 in', found: 'fresh-ink', spring: 'light' }),
    ],
    expected: { says: [/short/], next: /./ },
  },
  {
    // 2.30 + .05 − .15 = 2.20; what no gap wants cannot be worked out: it may be held open by any amount.
    said: 'Number two has no gap at all; I have a two-twenty and a two-twenty-five here',
    goal: 'adjuster',
    entries: [
      asked('none', 'apart'),
      described({
        engine: {
          cylinders: 4,
          valveGear: 'bucket',
          lifter: 'solid-flat',
          shimStock: '2.20 mm, 2.25 mm',
        },
        cam: { lashAt: 'cold', intake: { lash: '.15 mm' } },
      }),
      lashLine(2, '0 mm', { engine: 'cold', shim: '2.30 mm' }),
      lashLine(1, '.05 mm', { engine: 'cold', shim: '2.30 mm' }),
    ],
    expected: {
      headline: /No gap found at 2 intake/,
      says: [/Do not run it: 2 intake has no gap/, /Shims to fit: 1 intake 2\.20 mm/],
      next: /./,
      never: [/2\.15 mm/],
    },
  },
];
