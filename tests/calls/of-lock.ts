import type { Call } from './call.ts';
import { asked, described, type Entry, lashLine } from './entry.ts';

const START = [
  asked('none', 'has-run'),
  described({
    engine: { cylinders: 8, lifter: 'solid-flat', rockerMounting: 'stud' },
    cam: { assumedRatio: 1.6, lashAt: 'hot', intake: { lash: '.018 in' } },
  }),
];

const told = (code: string, answer: string, more: object = {}): Entry => ({
  method: 'POST',
  path: 'build/answers',
  body: { question: code, code, answer, ...more },
});

/** All that is asked of a noise, as of a lock that let go. */
const ANSWERS: readonly Entry[] = [
  told('noise-signs', 'none'),
  told('noise-which', 'one', { cylinder: 3, valve: 'intake' }),
  told('noise-hours', 'slowly'),
  told('noise-oil', 'usual'),
  told('noise-set-screw', 'loose'),
  told('noise-nut-used', 'again'),
  told('noise-stud-top', 'flat'),
  told('noise-stud', 'firm'),
  told('noise-speed', 'from-idle'),
  told('noise-heat', 'both'),
  told('noise-thread', 'sound'),
  told('noise-pushrod', 'smooth'),
  told('noise-tip', 'smooth'),
  told('noise-roller', 'free'),
  told('noise-trunnion', 'smooth'),
];

const three = (lash: string, moment: 'found' | 'set', day: number, nut = 'not-looked'): Entry => ({
  name: `three ${moment} at ${lash} on ${day}`,
  ...lashLine(3, lash, { moment, engine: 'hot', nut, readOn: `2026-03-0${day}` }),
});

const GREW = [three('.018 in', 'set', 1), three('.026 in', 'found', 2, 'moved')];

/* A lock that let go is looked at, put right and read again once locked: common practice, no published source. */
export const OF_LOCK: readonly Call[] = [
  {
    said: 'It opened up eight, the nut turned, and everything you asked is looked at',
    goal: 'adjuster',
    entries: [...START, ...ANSWERS, ...GREW],
    expected: { asks: ['lash-grew'], next: 'lash-grew', says: [/whether the nut was used before/] },
  },
  {
    said: 'The nut had turned; there is a new one on it, and it is set to eighteen again',
    goal: 'adjuster',
    entries: [...START, ...ANSWERS, ...GREW, three('.018 in', 'set', 3)],
    expected: { next: 'lash-again', says: [/Read the gap of 3 intake again, locked/] },
  },
  {
    // Of the lock before nothing is told of the one that is on now.
    said: 'Set again with a new nut: nineteen and held, then twenty-four and held',
    goal: 'adjuster',
    entries: [
      ...START,
      ...ANSWERS,
      ...GREW,
      three('.018 in', 'set', 3),
      three('.019 in', 'found', 4, 'held'),
      three('.024 in', 'found', 5, 'held'),
    ],
    expected: {
      asks: ['lock-told-when'],
      stop: [/grew again/],
      next: 'under-lash-grew-again',
      never: [/Most speaks for the lock/],
    },
  },
];
