import type { Call } from './call.ts';
import { answered, arm, asked, described, onSheet, passes, placed, setUp } from './entry.ts';

const START = [
  asked('none'),
  described({ engine: { cylinders: 8 } }),
  described({
    cam: { assumedRatio: 1.6, intake: { lobeLift: '.330 in' }, exhaust: { lobeLift: '.330 in' } },
  }),
];
const COUNTED = { counted: true };
const TWO = [arm('A', { ratioStamp: '1.6' }), arm('B', { ratioStamp: '1.6' })];

/*
 * A on 7 intake, then the two of cylinder 7 changed over. Over the .330 in of both lobes .5615 is 1.702 and .529 is
 * 1.603: what is high goes with A, so it is the part. What follows the part is its own: common practice, no source.
 */
const CHANGED_OVER = [
  ...START,
  ...TWO,
  placed('A', 7),
  placed('B', 7, 'exhaust'),
  setUp('high', { cylinder: 7, armId: '$A', after: ['A on 7 intake', 'B on 7 exhaust'] }),
  ...passes('high', 'valve-lift', ['.5615 in', '.561 in', '.5615 in'], COUNTED),
  answered('read-back', false, { on: 'high', after: ['high valve-lift 3'] }),
  placed('A', 7, 'exhaust', ['high valve-lift 3']),
  placed('B', 7, 'intake', ['high valve-lift 3']),
  setUp('moved', {
    cylinder: 7,
    valve: 'exhaust',
    armId: '$A',
    after: ['A on 7 exhaust', 'B on 7 intake'],
  }),
  ...passes('moved', 'valve-lift', ['.561 in', '.5605 in', '.561 in'], COUNTED),
  setUp('other', { cylinder: 7, armId: '$B', after: ['A on 7 exhaust', 'B on 7 intake', 'moved'] }),
  ...passes('other', 'valve-lift', ['.529 in', '.529 in', '.5295 in'], COUNTED),
];

const row = (valve: string, kind: string) => (figure: string, at: number) => ({
  cylinder: at + 1,
  valve,
  kind,
  reading: `${figure} in`,
});
const column = (valve: string, kind: string, figures: readonly string[]) =>
  onSheet(figures.map(row(valve, kind)));

/* .568 over .355 is 1.600, .533 over .355 is 1.501. */
const SIX = ['.568', '.5685', '.5674', '.568', '.5683', '.533', '.567', '.5687'];
const SIX_LOBES = ['.3550', '.3555', '.3545', '.3551', '.3550', '.3549', '.3545', '.3552'];
const ONE_OF_ANOTHER_KIND = [
  asked('none'),
  described({ engine: { cylinders: 8, lifter: 'solid-flat' } }),
  described({ cam: { assumedRatio: 1.6, intake: { lobeLift: '.355 in' } } }),
  described({ rockers: { nominalRatio: 1.6 } }),
  column('intake', 'valve-lift', SIX),
  column('intake', 'lobe-lift', SIX_LOBES),
];

/* Over lobes of .340 in: .561 is 1.65 and .527 is 1.55. The arms of cylinder 3 sit the other way round. */
const TWELVE = [1, 2, 3, 4, 5, 6].flatMap((cylinder) => {
  const [own, other] = cylinder === 3 ? (['exhaust', 'intake'] as const) : (['intake', 'exhaust'] as const);
  return [
    arm(`I${cylinder}`, { ratioStamp: '1.65' }),
    arm(`E${cylinder}`, { ratioStamp: '1.55' }),
    placed(`I${cylinder}`, cylinder, own),
    placed(`E${cylinder}`, cylinder, other),
  ];
});

export const OF_OWN_ARMS: readonly Call[] = [
  {
    said: 'Seven intake is high, so I changed it over with the exhaust beside it, and it went along',
    goal: 'verify-ratio',
    entries: CHANGED_OVER,
    expected: {
      words: { 'ratio:7-intake:A:mark': 'differs', 'ratio:7-exhaust:A:mark': 'differs' },
      headline: /^Swap of A and B between 7 intake and 7 exhaust: the difference went with A, high on both/,
      says: [/7 exhaust: 1\.69\d [^\n]*on both valves: it is the arm, as the swap told/],
      never: [/doubted before the part is/, /read the lobe lift at the lifter/i],
      next: 'read-lot',
    },
  },
  {
    said: 'Six is thirty-five down, and by the way: it says one five on that one',
    goal: 'one-valve-differs',
    entries: [...ONE_OF_ANOTHER_KIND, arm('F', { ratioStamp: '1.5' }), placed('F', 6)],
    expected: {
      words: { 'odd:light:6-intake': undefined },
      headline: /^6 intake reads \.035 in low, as the 1\.5 stamped on F has it/,
      asksNot: ['hand-read-backwards', 'turn-miscounted'],
      never: [/is the odd one/, /Swap/, /once more, the same way/],
      next: 'said',
    },
  },
  {
    // Stamped like the others it has no such reason.
    said: 'Six is thirty-five down, and it says one six like the rest',
    goal: 'one-valve-differs',
    entries: [...ONE_OF_ANOTHER_KIND, arm('F', { ratioStamp: '1.6' }), placed('F', 6)],
    expected: { never: [/stamped on F has it/], asks: ['hand-read-backwards'], next: 'hand-read-backwards' },
  },
  {
    said: 'One sixty-five on the intakes, one fifty-five on the exhausts; cylinder three reads the other way round',
    goal: 'one-valve-differs',
    entries: [
      asked('none'),
      described({ engine: { cylinders: 6, lifter: 'solid-flat' } }),
      described({ cam: { intake: { lobeLift: '.340 in' }, exhaust: { lobeLift: '.340 in' } } }),
      ...TWELVE,
      column('intake', 'valve-lift', ['.5600', '.5605', '.5265', '.5603', '.5598', '.5602']),
      column('exhaust', 'valve-lift', ['.5262', '.5267', '.5608', '.5263', '.5268', '.5265']),
      column('intake', 'lobe-lift', ['.3400', '.3405', '.3398', '.3401', '.3400', '.3399']),
      column('exhaust', 'lobe-lift', ['.3402', '.3403', '.3397', '.3401', '.3404', '.3399']),
    ],
    expected: {
      headline: /By their marks its arm and that of 3 exhaust sit crossed/,
      asksNot: ['hand-read-backwards'],
      never: [/is the odd one/, /whether they are two numbers/, /Swap/],
      next: 'said',
    },
  },
];
