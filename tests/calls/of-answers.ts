import type { Call } from './call.ts';
import { answered, arm, asked, described, type Entry, passes, placed, setUp } from './entry.ts';

export const cam = (lobeLift: string) => ({
  cam: { assumedRatio: 1.6, intake: { lobeLift, lash: '.016 in' }, exhaust: { lobeLift } },
});
export const START = [
  asked('none'),
  described({ engine: { cylinders: 8, lifter: 'solid-flat', bankOrder: '1 3 5 7 / 2 4 6 8' } }),
];
const STAMPED = [arm('A', { ratioStamp: '1.6' })];
const COUNTED = { counted: true };

/** Numbered on from those before them: passes that were read again. */
const morePasses = (
  on: string,
  kind: string,
  peaks: readonly string[],
  from: number,
  after: string,
): Entry[] =>
  peaks.map((peak, at) => ({
    name: `${on} ${kind} ${from + at}`,
    method: 'POST',
    path: `build/set-ups/$${on}/readings`,
    body: { kind, peak, pass: from + at },
    after: [after, ...(at === 0 ? [] : [`${on} ${kind} ${from + at - 1}`])],
  }));

const corrected = (reading: string, peak: string, after: string): Entry => ({
  name: `${reading} put right`,
  method: 'POST',
  path: `build/readings/$${reading}/corrections`,
  body: { peak, reason: 'a turn was missed' },
  after: [after],
});

export const named = (name: string, entry: Entry): Entry => ({ ...entry, name });

/* .509 over .318 is 1.601; a turn of the usual dial is .100 in. */
const A_TURN_SHORT = [
  ...START,
  described(cam('.318 in')),
  ...STAMPED,
  placed('A', 1, 'exhaust'),
  setUp('short', { valve: 'exhaust', armId: '$A', after: ['A on 1 exhaust'] }),
  ...passes('short', 'valve-lift', ['.409 in', '.4095 in', '.409 in']),
  named(
    'turn found',
    answered('turn-miscounted', true, {
      on: 'short',
      after: [1, 2, 3].map((pass) => `short valve-lift ${pass}`),
    }),
  ),
];

/* .557 over .348 is 1.601, .541 is 1.555: a running spring takes lift and never gives any (mechanics). */
const WRONG_WAY_ROUND = [
  ...START,
  described(cam('.348 in')),
  ...STAMPED,
  placed('A', 3),
  setUp('first', { cylinder: 3, armId: '$A', after: ['A on 3 intake'] }),
  ...passes('first', 'valve-lift', ['.541 in', '.541 in', '.5415 in'], COUNTED),
  setUp('second', { cylinder: 3, armId: '$A', spring: 'running', after: ['A on 3 intake', 'first'] }),
  ...passes('second', 'valve-lift', ['.557 in', '.557 in', '.5575 in'], COUNTED),
];
const BOTH_READ = ['first', 'second'].flatMap((on) => [1, 2, 3].map((pass) => `${on} valve-lift ${pass}`));
const RIGHT_WAY_ROUND = {
  words: { 'ratio:3-intake:A:mark': 'agrees' },
  headline: /running spring takes \.016 in/,
  never: [/entered again/, /Enter /],
  next: 'said',
};

/* What is entered because of an answer is the cure of what was answered: no source, the design of the assessment. */
export const OF_ANSWERS: readonly Call[] = [
  {
    said: 'Yes, a turn on every one of them; the first is five-o-nine then',
    goal: 'verify-ratio',
    entries: [...A_TURN_SHORT, corrected('short valve-lift 1', '.509 in', 'turn found')],
    expected: {
      words: { 'ratio:1-exhaust:A:mark': undefined },
      says: [/pass 2 entered again or struck out: it reads \.410 in, one turn of the dial under pass 1/],
      never: [/over the others/, /pass 1 entered again/],
      next: 'enter-again-pass-2',
    },
  },
  {
    said: 'And the other two, five-o-nine and a half and five-o-nine',
    goal: 'verify-ratio',
    entries: [
      ...A_TURN_SHORT,
      corrected('short valve-lift 1', '.509 in', 'turn found'),
      corrected('short valve-lift 2', '.5095 in', 'turn found'),
      corrected('short valve-lift 3', '.509 in', 'turn found'),
    ],
    expected: { words: { 'ratio:1-exhaust:A:mark': 'agrees' }, next: 'said' },
  },
  {
    said: 'A turn on every one; I read it three times more instead',
    goal: 'verify-ratio',
    entries: [
      ...A_TURN_SHORT,
      ...morePasses('short', 'valve-lift', ['.509 in', '.5095 in', '.509 in'], 4, 'turn found'),
    ],
    expected: {
      words: { 'ratio:1-exhaust:A:mark': 'agrees' },
      asksNot: ['turn-miscounted'],
      never: [/entered again/, /one turn/],
      next: 'said',
    },
  },
  {
    said: 'No, I take that back: I looked again, no turn is missing',
    goal: 'verify-ratio',
    entries: [...A_TURN_SHORT, answered('turn-miscounted', false, { on: 'short', after: ['turn found'] })],
    expected: { asks: ['count-does-not-fit'], never: [/entered again/], next: /./ },
  },
  {
    said: 'You are right, I had the two springs the wrong way round',
    goal: 'verify-ratio',
    entries: [...WRONG_WAY_ROUND, answered('springs-swapped', true, { on: 'second', after: BOTH_READ })],
    expected: RIGHT_WAY_ROUND,
  },
  {
    said: 'The springs, yes; I said so of the first as well',
    goal: 'verify-ratio',
    entries: [
      ...WRONG_WAY_ROUND,
      named('yes', answered('springs-swapped', true, { on: 'second', after: BOTH_READ })),
      answered('springs-swapped', true, { on: 'first', after: ['yes'] }),
    ],
    expected: RIGHT_WAY_ROUND,
  },
  {
    said: 'The springs, no: I looked it up, each was as I told you',
    goal: 'verify-ratio',
    entries: [
      ...WRONG_WAY_ROUND,
      named('yes', answered('springs-swapped', true, { on: 'second', after: BOTH_READ })),
      answered('springs-swapped', false, { on: 'second', after: ['yes'] }),
    ],
    expected: {
      // .557 less .541 is the lash of the card: that is the next guess.
      asks: ['lash-left-in'],
      never: [/entered again/],
      next: 'lash-left-in',
    },
  },
  {
    // .3355 is 3.6 % under the .348 of the card.
    said: 'The caliper was on the ramp',
    goal: 'verify-ratio',
    entries: [
      ...START,
      described(cam('.348 in')),
      ...STAMPED,
      placed('A', 4, 'exhaust'),
      setUp('caliper', {
        cylinder: 4,
        valve: 'exhaust',
        armId: '$A',
        lobeSource: 'caliper',
        after: ['A on 4 exhaust'],
      }),
      ...passes('caliper', 'lobe-lift', ['.335 in', '.335 in', '.3355 in']),
      ...passes('caliper', 'valve-lift', ['.557 in', '.557 in', '.5575 in'], COUNTED),
      answered('caliper-on-lobe', true, {
        on: 'caliper',
        after: ['caliper lobe-lift 3', 'caliper lobe-lift 2', 'caliper lobe-lift 1', 'caliper valve-lift 3'],
      }),
    ],
    expected: {
      says: [/Enter passes 1, 2 and 3 of the lobe of 4 exhaust again/],
      next: 'enter-again-passes-1-2-and-3-of-the-lobe',
    },
  },
  {
    // .528 is the gross lift; .3305 at the lifter, .5285 over it 1.599.
    said: 'I gave you the valve lift for the lobe; the lobe is three thirty and a half',
    goal: 'verify-ratio',
    entries: [
      ...START,
      described(cam('.3305 in')),
      ...STAMPED,
      placed('A', 3),
      setUp('gross', {
        cylinder: 3,
        armId: '$A',
        lobeSource: 'indicator',
        lobeErrorLimit: '.002 in',
        after: ['A on 3 intake'],
      }),
      ...passes('gross', 'lobe-lift', ['.5285 in', '.528 in', '.5285 in']),
      ...passes('gross', 'valve-lift', ['.528 in', '.5285 in', '.5285 in'], COUNTED),
      named(
        'gross found',
        answered('gross-lift-as-lobe', true, {
          on: 'gross',
          after: ['lobe-lift', 'valve-lift'].flatMap((kind) =>
            [1, 2, 3].map((pass) => `gross ${kind} ${pass}`),
          ),
        }),
      ),
      ...morePasses('gross', 'lobe-lift', ['.3305 in', '.331 in', '.3305 in'], 4, 'gross found'),
    ],
    expected: {
      words: { 'ratio:3-intake:A:mark': 'agrees' },
      never: [/lie \.\d+ in apart/, /find first what moves/],
      next: 'said',
    },
  },
];
