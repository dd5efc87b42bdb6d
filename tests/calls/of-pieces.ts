import type { Call } from './call.ts';
import { asked, described, type Entry, kept, lashLine } from './entry.ts';

const BUCKETS = [
  asked('none', 'apart'),
  described({
    engine: {
      cylinders: 2,
      valveGear: 'bucket',
      lifter: 'solid-flat',
      shimStock: '2.65 mm, 2.70 mm, 2.75 mm',
    },
    cam: { lashAt: 'cold', intake: { lash: '.25 mm' } },
  }),
];

const at = (cylinder: number, lash: string, shim: string, moment: 'found' | 'set', day: number): Entry => ({
  name: `${cylinder} ${moment} on ${day}`,
  ...lashLine(cylinder, lash, { engine: 'cold', moment, shim, readOn: `2026-03-0${day}` }),
});

const STUD = (lifter: string) => [
  asked('none', 'has-run'),
  described({ engine: { cylinders: 8, lifter, rockerMounting: 'stud', studSize: '3/8' } }),
];

export const OF_PIECES: readonly Call[] = [
  {
    // 2 intake: 2.60 + .33 − .25 = 2.68. The 2.70 went into 1 intake; 2.65 would leave .28, past what is left as it is. By hand.
    said: 'I put the two-seventy into number one; number two has thirty-three on a two-sixty',
    goal: 'adjuster',
    entries: [
      ...BUCKETS,
      at(1, '.34 mm', '2.60 mm', 'found', 1),
      at(1, '.25 mm', '2.70 mm', 'set', 2),
      at(2, '.33 mm', '2.60 mm', 'found', 2),
    ],
    expected: {
      headline: /Shims to order: 2 intake 2\.68 mm/,
      next: 'said',
      never: [/Shims to fit: [^.]*2\.70/],
    },
  },
  {
    said: 'Three eighths studs, and I worked it out on a seven sixteenths thread',
    goal: 'adjuster',
    entries: [
      ...STUD('solid-flat'),
      kept('adjuster', {
        thread: '7/16-20',
        mount: 'stud-nut',
        ratio: 1.5,
        lifter: 'solid',
        lashFound: '.026 in',
        lashWanted: '.018 in',
      }),
    ],
    expected: {
      asks: ['threads-differ'],
      headline: /Nothing is told of these turns yet\. Which thread is on the stud\?/,
      next: 'threads-differ',
      never: [/[Tt]ighten/],
    },
  },
  {
    said: 'Three quarters past zero, and I found zero with a feeler',
    goal: 'adjuster',
    entries: [
      ...STUD('hydraulic-flat'),
      kept('lifter-preload', {
        thread: '3/8-24',
        mount: 'stud-nut',
        ratio: 1.5,
        turns: 0.75,
        zeroFoundBy: 'feeler',
      }),
    ],
    expected: {
      headline: /Zero was found with a feeler, .*there is no gap to feel.* Look for it again/,
      next: 'said',
    },
  },
];
