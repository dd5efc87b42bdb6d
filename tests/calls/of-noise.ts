import type { Call } from './call.ts';
import { asked, described, type Entry, lashLine } from './entry.ts';

const START = [
  asked('none', 'has-run'),
  described({ engine: { cylinders: 8, lifter: 'solid-flat', rockerMounting: 'stud' } }),
];
const told = (question: string, answer: string, more: object = {}): Entry => ({
  method: 'POST',
  path: 'build/answers',
  body: { question, code: question, answer, ...more },
});

/* The order of questions and causes: the playbook's fifth call, common practice, no published source. */
export const OF_NOISE: readonly Call[] = [
  {
    said: 'It ticks. That is all I know',
    goal: 'noise-or-failure',
    entries: [...START],
    expected: { asks: ['noise-signs'], next: 'noise-signs' },
  },
  {
    said: 'One valve opened up, and the nut has not moved',
    goal: 'noise-or-failure',
    entries: [
      ...START,
      told('noise-signs', 'none'),
      told('noise-nut', 'held'),
      lashLine(5, '.018 in', { moment: 'set', engine: 'hot', readOn: '2026-03-01' }),
      lashLine(5, '.027 in', { moment: 'found', engine: 'hot', nut: 'held', readOn: '2026-03-08' }),
    ],
    expected: { next: 'noise-which', never: [/thread and turns/i] },
  },
  {
    said: 'There is glitter in the filter',
    goal: 'noise-or-failure',
    entries: [...START, told('noise-signs', 'metal')],
    expected: { stop: [/metal was found/], next: 'under-sign-of-damage' },
  },
  {
    said: 'One rocker came off with three needles missing, and it still runs',
    goal: 'noise-or-failure',
    entries: [
      asked('none', 'runs'),
      told('noise-signs', 'none'),
      told('noise-trunnion', 'worn: three needles missing'),
    ],
    expected: {
      stop: [/three needles missing/],
      asks: ['contact-told-otherwise'],
      headline: /^No verdict\. Found: needles of the pivot’s bearing are missing/m,
      says: [/Do not run it: shut it off/],
      next: 'under-part-damaged',
      never: [/what moved, with the engine/],
    },
  },
];
