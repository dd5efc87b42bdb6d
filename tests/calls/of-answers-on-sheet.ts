import type { Call } from './call.ts';
import { arm, chose, described, type Entry, onSheet, placed } from './entry.ts';
import { cam, named, START } from './of-answers.ts';

const row = (valve: string) => (reading: string, at: number) => ({
  cylinder: at + 1,
  valve,
  kind: 'valve-lift',
  reading,
});
const EXHAUSTS = ['.4370', '.4375', '.4365', '.4371', '.5372', '.5365', '.5377', '.5368'];
const oneTurn = (at: number) => ({
  ...chose('turn-miscounted', 'found', {
    ask: 'Could one turn of the dial be missing?',
    after: ['sheet'],
  }),
  name: `turn of ${at}`,
});
const ofValve = (at: number, entry: Entry): Entry => ({
  ...entry,
  body: {
    ...entry.body,
    questionId: `question:turn-miscounted:${at}-exhaust:light:could-one-turn-of-the-dial-be-missing`,
  },
});
const TURNS_FOUND = [1, 2, 3, 4].map((at) => ofValve(at, oneTurn(at)));
const AGAIN = ['.5369', '.5376', '.5364', '.5373'].map((reading, at) => ({
  ...onSheet([row('exhaust')(`${reading} in`, at)]),
  name: `${at + 1} again`,
  after: [`turn of ${at + 1}`],
}));
const ON_SHEET = [
  ...START,
  described(cam('.3358 in')),
  described({ rockers: { nominalRatio: 1.6 } }),
  named('sheet', onSheet(EXHAUSTS.map((text, at) => row('exhaust')(`${text} in`, at)))),
];

/* .568 less .016 of lash is .552, on every valve of one bank. */
const INTAKES = ['.568', '.552', '.569', '.5525', '.5685', '.5515', '.567', '.552'];
const GROUP =
  'Bank 2-4-6-8 reads .016 in low against bank 1-3-5-7 on its intakes. Was the lash left in there, or were they read with another indicator base or another spring?';
const BANK_FOUND = [
  ...START,
  described(cam('.355 in')),
  described({ rockers: { nominalRatio: 1.6 } }),
  named('sheet', onSheet(INTAKES.map((text, at) => row('intake')(`${text} in`, at)))),
  {
    name: 'lash found',
    method: 'POST' as const,
    path: 'build/answers',
    body: {
      question: GROUP,
      questionId: 'question:group-off:intake:light-2-4-6-8:are-valves-off-for-what-they-have-in-common',
      code: 'group-off',
      answer: 'lash',
    },
    after: ['sheet'],
  },
];

const SIX_LOW = ['.568', '.5685', '.5674', '.568', '.5683', '.532', '.567', '.5687'];

/* .552 over .355 is 1.555; .5683 over it is 1.601. */
const IN = ['.5520', '.5525', '.5515', '.5521', '.5527', '.5518', '.5523', '.5519'];
const OUT = ['.5683', '.5688', '.5679', '.5684', '.5690', '.5681', '.5686', '.5682'];
const LASH_ASKED = [
  ...START,
  described({ cam: { assumedRatio: 1.6, intake: { lobeLift: '.355 in' } } }),
  named('sheet', onSheet(IN.map((text, at) => row('intake')(`${text} in`, at)))),
];
const lashSaid = (answer: string): Entry => ({
  name: 'lash said',
  method: 'POST',
  path: 'build/answers',
  body: {
    question: 'How was the lash when the valves of the sheet were read?',
    questionId: 'question:lash-not-said:build:sheet:how-was-the-lash-when-the-valves-of-the-sheet-were-read',
    code: 'lash-not-said',
    answer,
  },
  after: ['sheet'],
});

/** Lobes of a row of four, the last .018 in under the others: past the .010 in that a lobe may be down. */
const LOW_LOBE = ['.3350', '.3352', '.3347', '.3170'];
const OF_LOW = ['.5360', '.5365', '.5355', '.5072'];

/* What is entered because of an answer is the cure of what was answered: no source, the design of the assessment. */
export const OF_ANSWERS_ON_SHEET: readonly Call[] = [
  {
    said: 'One to four exhaust were a turn short, all four; I read them again',
    goal: 'one-valve-differs',
    entries: [...ON_SHEET, ...TURNS_FOUND, ...AGAIN],
    expected: {
      headline: /No exhaust stands out: all 8/,
      asksNot: ['turn-miscounted', 'read-otherwise', 'pass-apart'],
      next: 'said',
    },
  },
  {
    said: 'They were a turn short; I have read two of them again so far',
    goal: 'one-valve-differs',
    entries: [...ON_SHEET, ...TURNS_FOUND, ...AGAIN.slice(0, 2)],
    expected: {
      asksNot: ['read-otherwise', 'pass-apart'],
      says: [/3 exhaust: enter that reading again/],
      next: 'turn-miscounted',
    },
  },
  {
    said: 'The right bank had the lash in; that is zero now, and they are all five sixty-eight',
    goal: 'one-valve-differs',
    entries: [
      ...BANK_FOUND,
      ...['.5681', '.5674', '.5685', '.5679'].map((reading, at) => ({
        ...onSheet([row('intake')(`${reading} in`, 2 * at + 1)]),
        after: ['lash found'],
      })),
    ],
    expected: {
      headline: /No intake stands out: all 8/,
      asksNot: ['group-off', 'read-otherwise'],
      next: 'said',
    },
  },
  {
    // 5 turns and 68 read the wrong way round is 5 and 32; it was looked at, and which arm it is was said last.
    said: 'The hand ran the right way, I looked; and it is arm F that sits on six',
    goal: 'one-valve-differs',
    entries: [
      ...START,
      described(cam('.355 in')),
      described({ rockers: { nominalRatio: 1.6 } }),
      named('sheet', onSheet(SIX_LOW.map((text, at) => row('intake')(`${text} in`, at)))),
      {
        name: 'looked',
        method: 'POST',
        path: 'build/answers',
        body: {
          question: 'Could the hand have been read backwards?',
          questionId: 'question:hand-read-backwards:6-intake:light:could-the-hand-have-been-read-backwards',
          code: 'hand-read-backwards',
          answer: 'not-found',
        },
        after: ['sheet'],
      },
      arm('F', { ratioStamp: '1.6' }),
      placed('F', 6),
    ],
    expected: {
      headline: /6 intake is the odd one/,
      never: [/6 intake is not set against the others yet/],
      next: 'read-again',
    },
  },
  {
    said: 'I looked at the lifter: that lobe is gone. May I turn it to get the cam out?',
    goal: 'one-valve-differs',
    entries: [
      ...START.slice(0, 1),
      described({ engine: { cylinders: 4, lifter: 'solid-flat' } }),
      described(cam('.335 in')),
      {
        // Nothing is read after the lobe that stops it.
        ...onSheet(LOW_LOBE.map((text, at) => ({ ...row('exhaust')(`${text} in`, at), kind: 'lobe-lift' }))),
        name: 'lobes',
        after: ['lifts'],
      },
      { ...onSheet(OF_LOW.map((text, at) => row('exhaust')(`${text} in`, at))), name: 'lifts' },
      {
        name: 'worn',
        method: 'POST',
        path: 'build/answers',
        body: {
          question: 'Is the lobe of 4 exhaust worn, or was it read short?',
          questionId: 'question:lobe-worn:4-exhaust:is-the-lobe-of-exhaust-worn-or-was-it-read-short',
          code: 'lobe-worn',
          answer: 'found',
        },
        after: ['lobes', 'lifts'],
      },
      {
        name: 'lifted',
        method: 'POST',
        path: 'call/hold/lift',
        body: { reason: 'the pushrods are out, and it is turned by hand to take the cam out' },
        after: ['worn'],
      },
    ],
    expected: {
      headline: /^The lobe of 4 exhaust was looked at, and is worn: it is \.018 in down on the others/,
      says: [/Do not run it: the lobe of 4 exhaust is worn/],
      never: [/at the lifter once more/, /is the odd one/],
      next: 'said',
    },
  },
  {
    said: 'All alike; and yes, the lash was out on every one of them',
    goal: 'one-valve-differs',
    entries: [...LASH_ASKED, lashSaid('zero')],
    expected: { headline: /No intake stands out: all 8/, never: [/How the lash was/], next: 'said' },
  },
  {
    said: 'All alike; but the lash was in, on every one of them',
    goal: 'one-valve-differs',
    entries: [...LASH_ASKED, lashSaid('set')],
    expected: { headline: /Not their ratio yet: the lash was left in/, next: 'read-again' },
  },
  {
    said: 'The lash was in on every one; now I have them all again with it out',
    goal: 'one-valve-differs',
    entries: [
      ...LASH_ASKED,
      lashSaid('set'),
      { ...onSheet(OUT.map((text, at) => row('intake')(`${text} in`, at))), after: ['lash said'] },
    ],
    expected: {
      headline: /No intake stands out: all 8 [^\n]*1\.601/,
      asksNot: ['read-otherwise'],
      never: [/lash was left in/, /How the lash was is/],
      next: 'said',
    },
  },
];
