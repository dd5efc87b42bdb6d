import type { Call } from './call.ts';
import { asked, described, type Entry, kept, lashLine } from './entry.ts';

const START = [
  asked('none', 'has-run'),
  described({
    engine: { cylinders: 8, lifter: 'solid-flat', rockerMounting: 'stud' },
    cam: { assumedRatio: 1.5, lashAt: 'hot', intake: { lash: '.022 in' } },
  }),
];

const sum: Entry = {
  name: 'sum',
  ...kept('adjuster', {
    thread: '7/16-20',
    mount: 'stud-nut',
    ratio: 1.5,
    lifter: 'solid',
    lashFound: '.030 in',
    lashWanted: '.022 in',
  }),
};

const one = (lash: string, moment: 'found' | 'set', day: number, more: object = {}): Entry => ({
  name: `one ${moment} at ${lash} on ${day}`,
  ...lashLine(1, lash, { moment, engine: 'hot', nut: 'held', readOn: `2026-03-0${day}`, ...more }),
});

/* What was set is done once it is read again and has held; locking shifts about .001 in: common practice, no published source. */
export const OF_SET_AGAIN: readonly Call[] = [
  {
    said: 'Thirty, set to twenty-two and a half, and it reads twenty-two',
    goal: 'adjuster',
    entries: [
      ...START,
      sum,
      one('.030 in', 'found', 1),
      one('.0225 in', 'set', 2),
      one('.022 in', 'found', 3),
    ],
    expected: {
      headline:
        /The turn from \.030 to \.022 in was made: set at 1 intake\. It has held, read again since: 1 intake \.022 in\./,
      next: 'said',
      never: [/No turn holds/, /found otherwise/, /not made any more/],
    },
  },
  {
    said: 'Thirty, set to twenty-two, and it reads twenty-three once locked',
    goal: 'adjuster',
    entries: [
      ...START,
      sum,
      one('.030 in', 'found', 1),
      one('.022 in', 'set', 2),
      one('.023 in', 'found', 3),
    ],
    expected: { headline: /It has held/, next: 'said', never: [/No turn holds/] },
  },
  {
    said: 'Found it at thirty, set it to twenty-two without any sum, and it reads twenty-two',
    goal: 'adjuster',
    entries: [...START, one('.030 in', 'found', 1), one('.022 in', 'set', 2), one('.022 in', 'found', 3)],
    expected: {
      headline: /^Set, and read again since: 1 intake \.022 in\.$/m,
      next: 'said',
      never: [/thread and turns/],
    },
  },
  {
    said: 'Number one reads twenty-two as the card has it',
    goal: 'adjuster',
    entries: [...START, one('.022 in', 'found', 1)],
    expected: { headline: /Found as the card asks, with no turn needed: 1 intake \.022 in/, next: 'said' },
  },
];
