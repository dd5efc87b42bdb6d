import type { Call } from './call.ts';
import { asked, chose, described, type Entry, lashLine } from './entry.ts';

const HYDRAULIC = [
  asked('none', 'has-run'),
  described({ engine: { cylinders: 8, lifter: 'hydraulic-roller', rockerMounting: 'stud' } }),
];

const six = (lash: string, day: number): Entry => ({
  name: `six at ${lash}`,
  ...lashLine(6, lash, { moment: 'found', engine: 'hot', nut: 'held', readOn: `2026-03-0${day}` }),
});

/* A hydraulic lifter has preload and no lash; the usual .020 to .060 is of the trade press. */
export const OF_HYDRAULIC: readonly Call[] = [
  {
    // A plunger that can be pressed down shows its own travel: common practice, no published source.
    said: 'They’re hydraulic, and I feel twelve at six; the nut has held',
    goal: 'adjuster',
    entries: [...HYDRAULIC, six('.012 in', 2)],
    expected: {
      asks: ['gap-on-hydraulic'],
      headline: /No lash of 6 intake counts yet\. How did the lifter of 6 intake stand/,
      next: 'gap-on-hydraulic',
      never: [/[Tt]ighten/],
    },
  },
  {
    said: 'Twelve at six on hydraulics, and I could push the plunger down',
    goal: 'adjuster',
    entries: [
      ...HYDRAULIC,
      six('.012 in', 2),
      chose('gap-on-hydraulic', 'pressed-down', {
        ask: 'How did the lifter of 6 intake stand when its gap was found?',
        after: ['six at .012 in'],
      }),
    ],
    expected: { headline: /plunger travel and no lash/, next: 'preload' },
  },
  {
    // .75 × .050 × (1 + 1/1.6) = .0609, where .020 to .060 is usual: trade press.
    said: 'Three quarters of a turn past zero on hydraulics, is that all right?',
    goal: 'adjuster',
    entries: [
      ...HYDRAULIC,
      {
        method: 'POST',
        path: 'build/workings',
        body: {
          computation: 'adjuster',
          inputs: { thread: '7/16-20', mount: 'stud-nut', ratio: 1.6, lifter: 'hydraulic', turns: 0.75 },
        },
      },
    ],
    expected: {
      asks: ['preload-over'],
      headline: /presses the plunger \.061 in: just over the usual \.020 to \.060 in/,
      next: 'preload-over',
      never: [/[Tt]ighten \.75/],
    },
  },
];
