import type { Call } from './call.ts';
import { arm, asked, chose, described, type Entry, passes, placed, setUp } from './entry.ts';

const CARD = {
  cam: {
    assumedRatio: 1.6,
    intake: { lobeLift: '.348 in', lash: '.018 in' },
    exhaust: { lobeLift: '.361 in', lash: '.020 in' },
  },
};
export const START = [asked('none'), described({ engine: { cylinders: 8 } }), described(CARD)];
const SOLD = described({ rockers: { nominalRatio: 1.6 } });
const SPRINGS = described({ springs: { installedHeight: '1.800 in', solidHeight: '1.150 in' } });
const COUNTED = { counted: true };

/* Valve lifts over the .348 in of the card: .557 is 1.601, .522 is 1.500, .530 is 1.523. */
const LIKE_IT = ['.557 in', '.557 in', '.5575 in'];
const ONE_FIVE = ['.522 in', '.522 in', '.5225 in'];
const LOW = ['.530 in', '.530 in', '.5305 in'];
export const last = (name: string): string => `${name} valve-lift 3`;

/** A set-up with three passes, after what came before it. */
const readAs = (name: string, lifts: readonly string[], more: Parameters<typeof setUp>[1] = {}): Entry[] => [
  setUp(name, more),
  ...passes(name, 'valve-lift', lifts, COUNTED),
];
const TWICE = [...readAs('one', LIKE_IT), ...readAs('two', ONE_FIVE, { after: [last('one')] })];

const NAMED = [arm('A', { ratioStamp: '1.6' }), arm('B', { ratioStamp: '1.6' })];
/** A is read on 1 intake; then it goes to 3 intake, and B from there to 1 intake. */
const CHANGED_OVER = [
  ...NAMED,
  placed('A', 1),
  placed('B', 3),
  ...readAs('before', LOW, { armId: '$A', after: ['A on 1 intake', 'B on 3 intake'] }),
  placed('A', 3, 'intake', [last('before')]),
  placed('B', 1, 'intake', [last('before'), 'A on 3 intake']),
];
const moved = { after: ['A on 3 intake', 'B on 1 intake'] };

/** A on 3 intake by the record, another arm on 1 intake, and a set-up that names A there. */
export const ELSEWHERE = [
  arm('A', { ratioStamp: '1.6' }),
  arm('B', { ratioStamp: '1.5' }),
  placed('A', 3),
  placed('B', 1),
  ...readAs('named', ONE_FIVE, { armId: '$A', after: ['A on 3 intake', 'B on 1 intake'] }),
];

/** The lobes of 1, 2 and 3 intake at the lifter, once the valve lift was read: nothing is read after one that stops it. */
const LOBE = { lobeSource: 'indicator', lobeErrorLimit: '.002 in' };
const lobesRead = (lifts: readonly string[], times: number): Entry[] => {
  const names = ['low', 'second', 'third'];
  const started = names.map((name, at) => setUp(name, { ...LOBE, cylinder: at + 1 }));
  return [
    ...started,
    ...passes('low', 'valve-lift', ['.534 in', '.5345 in', '.535 in'], COUNTED),
    ...names.flatMap((name, at) =>
      passes(
        name,
        'lobe-lift',
        Array.from({ length: times }, () => lifts[at] ?? ''),
      ).map((entry) => ({
        ...entry,
        after: [...[1, 2, 3].map((pass) => `low valve-lift ${pass}`), ...names],
      })),
    ),
  ];
};

/* What repeats, what makes a valve odd (.008 in) and what wears a lobe (.010 in) is in seeds/allowances.json with its sources. */
export const OF_ARMS: readonly Call[] = [
  {
    // With 1.601 the room is 1.800 − (.557 − .018) − 1.150 = .111; no word, since 1.500 was read as well.
    said: 'I read it twice: one six, then one five',
    goal: 'verify-ratio',
    entries: [...START, SOLD, SPRINGS, ...TWICE],
    expected: {
      words: { 'ratio:1-intake:sold-as': undefined, 'gap:coil-bind:1-intake': undefined },
      asks: ['set-ups-differ'],
      headline: /came out 1\.601 in set-up 1 and 1\.500 in set-up 2\. Which one holds\?/,
      says: [/1 intake with the measured 1\.601: \.111 in/],
      never: [/agrees with the 1\.6/, /1\.500 ±/],
      next: 'set-ups-differ',
    },
  },
  {
    said: 'And a third time: one six again',
    goal: 'verify-ratio',
    entries: [
      ...START,
      ...NAMED.slice(0, 1),
      placed('A', 1),
      SPRINGS,
      ...readAs('one', LIKE_IT, { armId: '$A', after: ['A on 1 intake'] }),
      ...readAs('two', ONE_FIVE, { armId: '$A', after: [last('one')] }),
      ...readAs('three', LIKE_IT, { armId: '$A', after: [last('two')] }),
    ],
    expected: {
      words: { 'ratio:1-intake:A:mark': 'agrees', 'gap:coil-bind:1-intake': 'clear' },
      asks: ['set-ups-differ'],
      next: 'said',
    },
  },
  {
    said: 'The second one is right: the base was loose the first time',
    goal: 'verify-ratio',
    entries: [
      ...START,
      described({ rockers: { nominalRatio: 1.5 } }),
      ...TWICE,
      chose('set-ups-differ', 'set-up-2', {
        ask: '1 intake came out 1.601 in set-up 1 and 1.500 in set-up 2. Which one holds?',
        after: [last('two')],
      }),
    ],
    expected: {
      words: { 'ratio:1-intake:sold-as': 'agrees' },
      headline: /1\.500 ±.*agrees with the 1\.5/,
      next: 'arm',
    },
  },
  {
    said: 'It reads one six, and when I do it again one five, and so on',
    goal: 'verify-ratio',
    entries: [
      ...START,
      SOLD,
      ...TWICE,
      chose('set-ups-differ', 'both', {
        ask: '1 intake came out 1.601 in set-up 1 and 1.500 in set-up 2. Which one holds?',
        after: [last('two')],
      }),
    ],
    expected: {
      words: { 'ratio:1-intake:sold-as': undefined },
      headline: /First: base, lifter and lash looked at, and then three passes more/,
      next: 'what-moves',
    },
  },
  {
    // A low on both valves, B ordinary on the first: .530 − .557 goes with A, and .530 − .530 is left of the valves.
    said: 'I changed one and three over without reading three first: A is low there too, B is fine on one',
    goal: 'verify-ratio',
    entries: [
      ...START,
      ...CHANGED_OVER,
      ...readAs('A there', LOW, { cylinder: 3, armId: '$A', ...moved }),
      ...readAs('B here', LIKE_IT, { armId: '$B', after: [...moved.after, last('A there')] }),
    ],
    expected: {
      headline: /went with A, low on both valves\. It is the part: A\..*not read: 3 intake with B/,
      next: 'read-lot',
    },
  },
  {
    said: 'I changed one and three over without reading three first: A is fine there, B is low on one',
    goal: 'verify-ratio',
    entries: [
      ...START,
      ...CHANGED_OVER,
      ...readAs('A there', LIKE_IT, { cylinder: 3, armId: '$A', ...moved }),
      ...readAs('B here', LOW, { armId: '$B', after: [...moved.after, last('A there')] }),
    ],
    expected: {
      headline: /stayed on 1 intake, low with both arms\. It is the position, not the arm/,
      next: 'swap-pushrods',
    },
  },
  {
    said: 'I changed one and three over, and A is low on three as well',
    goal: 'verify-ratio',
    entries: [...START, ...CHANGED_OVER, ...readAs('A there', LOW, { cylinder: 3, armId: '$A', ...moved })],
    expected: {
      headline: /Still to be read: 1 intake with B and 3 intake with B/,
      says: [/Read 1 intake with B as they sit now/],
      never: [/It is the part/],
      next: 'read-swapped',
    },
  },
  {
    said: 'That was A, on number one; no, I never told you that I moved it',
    goal: 'verify-ratio',
    entries: [...START, ...ELSEWHERE],
    expected: {
      words: { 'ratio:1-intake:A:mark': undefined },
      asks: ['arm-sits-elsewhere'],
      headline: /By the record A sat on 3 intake when set-up 1 was read with it on 1 intake\. Was it moved\?/,
      next: 'arm-sits-elsewhere',
    },
  },
  {
    said: 'Not A, then: it is the one that sits there',
    goal: 'verify-ratio',
    entries: [
      ...START,
      ...ELSEWHERE,
      chose('arm-sits-elsewhere', 'arm-there', { on: 'named', after: [last('named')] }),
    ],
    expected: { words: { 'ratio:1-intake:B:mark': 'agrees' }, never: [/with A/], next: 'said' },
  },
  {
    said: 'Not number one: I read A where it sits, on three',
    goal: 'verify-ratio',
    entries: [
      ...START,
      ...ELSEWHERE,
      chose('arm-sits-elsewhere', 'other-valve', { on: 'named', after: [last('named')] }),
    ],
    expected: { headline: /^3 intake: 1\.500/m, never: [/1 intake: 1\.500/], next: 'valve-lift-at-.200' },
  },
  {
    said: 'Yes, A was moved to number one',
    goal: 'verify-ratio',
    entries: [
      ...START,
      ...ELSEWHERE,
      chose('arm-sits-elsewhere', 'moved', { on: 'named', after: [last('named')] }),
    ],
    expected: {
      words: { 'ratio:1-intake:A:mark': 'cannot-tell' },
      says: [/Put on record that A was moved to 1 intake/],
      next: 'move',
    },
  },
  {
    // .348 − .334 = .014, over the .010 of a worn lobe; the others are the card’s.
    said: 'Lobe one three thirty-four, two and three three forty-eight: all at the lifter',
    goal: 'verify-ratio',
    entries: [...START, SOLD, ...lobesRead(['.334 in', '.348 in', '.3485 in'], 1)],
    expected: {
      asks: ['lobe-worn'],
      asksNot: ['card-not-this-lobe'],
      stop: [/the lobe of 1 intake is \.014 in down on the others/],
      never: [/two more intake/],
      next: 'under-lobe-worn',
    },
  },
  {
    // One other is the card’s, one is as low: neither of the two tells.
    said: 'Lobe one three thirty-four, two three forty-eight, three three thirty-five',
    goal: 'verify-ratio',
    entries: [...START, SOLD, ...lobesRead(['.334 in', '.348 in', '.335 in'], 3)],
    expected: {
      says: [/ead the other intake lobes at the lifter too: those read so far do not agree/],
      never: [/two more intake/],
      next: 'lobe-siblings',
    },
  },
];
