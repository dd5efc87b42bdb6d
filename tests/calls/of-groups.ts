import type { Call } from './call.ts';
import { asked, described, onSheet } from './entry.ts';

const start = (engine: object, lash: string, exhaust = '.340 in') => [
  asked('none'),
  described({ engine: { lifter: 'solid-flat', rockerMounting: 'stud', ...engine } }),
  described({ rockers: { nominalRatio: 1.6 } }),
  described({
    cam: {
      assumedRatio: 1.6,
      intake: { lobeLift: '.340 in', lash, centreline: '108 deg' },
      exhaust: { lobeLift: exhaust, lash, centreline: '112 deg' },
    },
  }),
];
const EIGHT = { cylinders: 8, bankOrder: '1 2 3 4 / 5 6 7 8' };
const onSide = (valve: string, kind: string, figures: readonly string[]) =>
  onSheet(figures.map((reading, at) => ({ cylinder: at + 1, valve, kind, reading: `${reading} in` })));
const lobes = (count: number) =>
  ['intake', 'exhaust'].map((valve) =>
    onSide(
      valve,
      'lobe-lift',
      Array.from({ length: count }, (_, at) => (at === 1 ? '.341' : '.340')),
    ),
  );
const BY_LASH = {
  method: 'POST' as const,
  path: 'build/answers',
  body: {
    question: 'Was the lash left in there?',
    questionId: 'question:group-off:build:light-5-6-7-8:are-valves-off-for-what-they-have-in-common',
    code: 'group-off',
    answer: 'lash: that side was at running lash',
  },
};

/*
 * Several valves that are off alike: what they have in common is asked before any one of them is called odd (common
 * practice, no published source). .340 × 1.6 = .544; less .012 of lash .532; less .025 .519.
 */
export const OF_GROUPS: readonly Call[] = [
  {
    said: 'Four cylinders: one and two are right, three and four both twelve low',
    goal: 'one-valve-differs',
    entries: [
      ...start({ cylinders: 4 }, '.012 in'),
      ...lobes(4),
      onSide('intake', 'valve-lift', ['.544', '.545', '.532', '.532']),
      onSide('exhaust', 'valve-lift', ['.544', '.544', '.532', '.533']),
    ],
    expected: {
      headline: /3 and 4, intake and exhaust, read \.012 in low against the other 2 of each side/,
      asksNot: ['lash-left-in'],
      never: [/odd one/, /[Ss]wap/, /in high/],
      next: 'group-off',
    },
  },
  {
    // .544 − .010 = .534, while .505 on three is no lash of any card.
    said: 'Six and seven read five thirty-four, and three reads five oh five',
    goal: 'one-valve-differs',
    entries: [
      ...start({ cylinders: 8 }, '.010 in'),
      onSide(
        'intake',
        'lobe-lift',
        Array.from({ length: 8 }, () => '.340'),
      ),
      onSide('intake', 'valve-lift', ['.544', '.543', '.505', '.544', '.545', '.534', '.534', '.544']),
    ],
    expected: {
      words: { 'odd:light:3-intake': 'odd' },
      asks: ['lash-left-in'],
      says: [
        /6 intake .*as much as its lash, if that was left in/,
        /7 intake .*as much as its lash, if that was left in/,
      ],
      next: 'read-again',
    },
  },
  {
    // Backwards, .535 would be .565, .560 × 1.009: four of one bank do not read so by chance.
    said: 'The even bank is twenty-five low, intakes and exhausts',
    goal: 'one-valve-differs',
    entries: [
      ...start({ cylinders: 8, bankOrder: '1 3 5 7 / 2 4 6 8' }, '.018 in', '.350 in'),
      onSide('intake', 'lobe-lift', ['.340', '.341', '.340', '.340', '.340', '.340', '.340', '.340']),
      onSide('exhaust', 'lobe-lift', ['.350', '.350', '.350', '.351', '.350', '.350', '.350', '.350']),
      onSide('intake', 'valve-lift', ['.545', '.518', '.544', '.520', '.544', '.518', '.544', '.519']),
      onSide('exhaust', 'valve-lift', ['.559', '.535', '.560', '.536', '.559', '.535', '.561', '.535']),
    ],
    expected: {
      headline: /Bank 2-4-6-8 reads \.025 in low against bank 1-3-5-7, intakes and exhausts alike/,
      asksNot: ['hand-read-backwards', 'digits-swapped'],
      next: 'group-off',
    },
  },
  {
    said: 'Five to eight were read with the lash in; I have read five and six again, and the rest comes',
    goal: 'one-valve-differs',
    entries: [
      ...start(EIGHT, '.012 in'),
      ...lobes(8),
      BY_LASH,
      onSide('intake', 'valve-lift', ['.544', '.545', '.544', '.544', '.545', '.544', '.532', '.532']),
      onSide('exhaust', 'valve-lift', ['.544', '.544', '.545', '.544', '.544', '.544', '.544', '.533']),
    ],
    expected: {
      headline: /7 and 8 intake read \.012 in low .* The lash was in, as was answered\./,
      says: [/8 exhaust reads \.011 in low .* The lash was in, as was answered\./],
      never: [/odd one/, /ask how they were read/],
      next: 'read-again',
    },
  },
  {
    said: 'Five to eight were read with the lash in; five is read again, and the first is still on the sheet',
    goal: 'one-valve-differs',
    entries: [
      ...start(EIGHT, '.012 in'),
      ...lobes(8),
      BY_LASH,
      onSide('intake', 'valve-lift', ['.544', '.545', '.544', '.544', '.532', '.532', '.533', '.532']),
      onSide('exhaust', 'valve-lift', ['.544', '.544', '.545', '.544', '.532', '.532', '.532', '.533']),
      onSheet([{ cylinder: 5, valve: 'intake', kind: 'valve-lift', reading: '.545 in' }]),
    ],
    expected: {
      says: [
        /5 intake was read \.532 in and \.545 in\. Which of them was read with the lash in\?/,
        /5 intake: Strike out with the reason what was read with the lash in/,
      ],
      never: [/odd one/, /ask how they were read/, /misread/],
      next: 'read-otherwise',
    },
  },
  {
    said: 'Five to eight were read with the lash in, and all of them are read again now',
    goal: 'one-valve-differs',
    entries: [
      ...start(EIGHT, '.012 in'),
      ...lobes(8),
      BY_LASH,
      onSide('intake', 'valve-lift', ['.544', '.545', '.544', '.544', '.545', '.544', '.544', '.544']),
      onSide('exhaust', 'valve-lift', ['.545', '.544', '.545', '.543', '.544', '.543', '.545', '.544']),
    ],
    expected: { asksNot: ['group-off'], headline: /No valve stands out: all 16/, next: 'said' },
  },
];
