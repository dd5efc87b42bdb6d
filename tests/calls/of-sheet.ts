import type { Call } from './call.ts';
import { arm, asked, described, onSheet, placed } from './entry.ts';

const START = [
  asked('none'),
  described({
    engine: { cylinders: 8, lifter: 'solid-flat', rockerMounting: 'stud', bankOrder: '1 3 5 7 / 2 4 6 8' },
  }),
  described({
    cam: { assumedRatio: 1.6, intake: { lobeLift: '.355 in' }, exhaust: { lobeLift: '.363 in' } },
  }),
  described({ rockers: { nominalRatio: 1.6 } }),
];
const row = (kind: string) => (reading: string, at: number) => ({
  cylinder: at + 1,
  valve: 'intake',
  kind,
  reading,
});
const lobes = (...figures: string[]) => onSheet(figures.map(row('lobe-lift')));
const lifts = (...figures: string[]) => onSheet(figures.map(row('valve-lift')));

const LOBES = ['.3550', '.3555', '.3545', '.3550', '.3550', '.3555', '.3545', '.3550'].map(
  (text) => `${text} in`,
);
const LIFTS = ['.568', '.569', '.567', '.568', '.568', '.5685', '.567', '.568'].map((text) => `${text} in`);
const withOne = (list: readonly string[], at: number, figure: string) =>
  list.map((each, index) => (index === at ? figure : each));

/* Repeats within .002, odd beyond .008 of the siblings’ median: common practice, no published source. */
export const OF_SHEET: readonly Call[] = [
  {
    said: 'Fifteen read alike, five intake doesn’t',
    goal: 'one-valve-differs',
    entries: [...START, lobes(...LOBES), lifts(...withOne(LIFTS, 4, '.552 in'))],
    expected: { next: 'read-again', says: [/5 intake/], never: [/condemn/] },
  },
  {
    // .467 on 3: a turn.
    said: 'Three intake is a hundred short',
    goal: 'one-valve-differs',
    entries: [...START, lobes(...LOBES), lifts(...withOne(LIFTS, 2, '.467 in'))],
    expected: { asks: ['turn-miscounted'], next: /turn|read|one-more/, never: [/Swap/] },
  },
  {
    said: 'Number six lobe is eight down',
    goal: 'one-valve-differs',
    entries: [...START, lobes(...withOne(LOBES, 5, '.347 in')), lifts(...withOne(LIFTS, 5, '.5555 in'))],
    expected: { next: /./, says: [/6 intake/], never: [/Swap/] },
  },
  {
    said: 'The lobe column is the lifts again',
    goal: 'one-valve-differs',
    entries: [...START, lobes(...LIFTS), lifts(...LIFTS)],
    expected: { asks: ['gross-lift-as-lobe'], next: /./, never: [/Swap/] },
  },
  {
    // Arms of 5 and 7 changed over: the low lift went with the arm.
    said: 'I changed five and seven over, and now seven is low',
    goal: 'one-valve-differs',
    entries: [
      ...START,
      lobes(...LOBES),
      arm('E'),
      arm('G'),
      placed('E', 5),
      placed('G', 7),
      { ...lifts(...withOne(LIFTS, 4, '.552 in')), name: 'first', after: ['E on 5 intake', 'G on 7 intake'] },
      { ...onSheet([row('valve-lift')('.552 in', 4)]), name: 'again', after: ['first'] },
      { ...placed('E', 7, 'intake', ['again']), name: 'E moved' },
      { ...placed('G', 5, 'intake', ['again']), name: 'G moved' },
      onSheet([
        { ...row('valve-lift')('.568 in', 4), armId: '$G' },
        { ...row('valve-lift')('.552 in', 6), armId: '$E' },
      ]),
      onSheet([
        { ...row('valve-lift')('.568 in', 4), armId: '$G' },
        { ...row('valve-lift')('.5515 in', 6), armId: '$E' },
      ]),
    ].map((entry) =>
      JSON.stringify(entry.body).includes('$') && entry.path === 'build/sheet'
        ? { ...entry, after: ['E moved', 'G moved'] }
        : entry,
    ),
    expected: { says: [/It is the part: E/], next: 'read-lot' },
  },
  {
    // .511 over .355 is 1.44: every one of them, and no arm makes that.
    said: 'Every intake I read is fifty short, all eight of them',
    goal: 'one-valve-differs',
    entries: [
      ...START,
      lobes(...LOBES),
      lifts(...['.511', '.512', '.510', '.511', '.5115', '.512', '.510', '.511'].map((text) => `${text} in`)),
    ],
    expected: {
      headline: /All 8 intakes read alike, about 1\.4\d\d: 10 % under the 1\.6 they are sold as/,
      asks: ['side-off'],
      asksNot: ['digits-swapped', 'hand-read-backwards'],
      next: 'side-off',
    },
  },
  {
    said: 'All eight are within a thousandth or so: is that good?',
    goal: 'one-valve-differs',
    entries: [...START, lobes(...LOBES), lifts(...LIFTS)],
    expected: { headline: /No intake stands out: all 8 lie within/, next: 'said' },
  },
  {
    said: 'I read five again and now it is five sixty-seven',
    goal: 'one-valve-differs',
    entries: [
      ...START,
      lobes(...LOBES),
      lifts(...withOne(LIFTS, 4, '.530 in')),
      onSheet([row('valve-lift')('.567 in', 4)]),
    ],
    expected: { asks: ['read-otherwise'], next: 'read-otherwise', never: [/Swap/, /is the odd one/] },
  },
];
