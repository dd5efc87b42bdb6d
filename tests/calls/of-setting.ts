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
];
