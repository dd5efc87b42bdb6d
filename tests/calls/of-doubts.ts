import type { Call } from './call.ts';
import { arm, asked, chose, described, type Entry, onSheet, passes, placed, setUp } from './entry.ts';

const START = [
  asked('none', 'apart'),
  described({ engine: { cylinders: 8, lifter: 'solid-flat', rockerMounting: 'stud' } }),
  described({ cam: { assumedRatio: 1.5, intake: { lobeLift: '.340 in', lash: '.016 in' } } }),
  described({ rockers: { nominalRatio: 1.5 } }),
];
const bindRead = (reading: string) => ({
  ...onSheet([{ cylinder: 1, valve: 'intake', kind: 'coil-bind', reading }]),
  name: `bind ${reading}`,
});
const BIND_OFF = chose('gap-against-calculated', 'found', {
  ask: 'Room to coil bind on 1 intake was read .160 in. Is that reading off, or what the gap is calculated from?',
  after: ['bind .160 in'],
});

const liftsRead = (lifts: readonly string[], after: string): Entry => ({
  ...onSheet(
    lifts.map((reading, at) => ({ cylinder: at + 1, valve: 'intake', kind: 'valve-lift', reading })),
  ),
  after: [after],
});
/** Read while the arms were said to be sold as 1.5; then the 1.6s went on. Lobe .340 of the card: .510 is 1.500. */
const SOLD_SINCE: readonly Entry[] = [
  ...START.slice(0, 3),
  { ...described({ rockers: { nominalRatio: 1.5 } }), name: 'old' },
  { ...liftsRead(['.510 in', '.511 in', '.5105 in', '.510 in'], 'old'), name: 'lifts' },
  { ...described({ rockers: { nominalRatio: 1.6 } }), after: ['lifts'] },
];

const ARMS = [1, 2, 3, 4].map((number) => `arm ${number}`);
const STAMPED_16: readonly Entry[] = [
  ...START,
  ...ARMS.flatMap((name, at) => [arm(name, { ratioStamp: '16' }), placed(name, at + 1)]),
  { ...liftsRead(['.544 in', '.545 in', '.544 in', '.5445 in'], 'arm 4 on 4 intake'), name: 'lifts' },
];

/*
 * Answers that take a reading away, and what is asked after them. Room to bind is 1.750 − 1.160 − (.340 × 1.5 − .016) =
 * .096 in; limit .060 in of the playbook (common practice, no published source).
 */
export const OF_DOUBTS: readonly Call[] = [
  {
    said: 'One sixty of room to bind? No, that I read off',
    goal: 'clearances-after-a-change',
    entries: [
      ...START,
      described({ springs: { installedHeight: '1.750 in', solidHeight: '1.160 in' } }),
      bindRead('.160 in'),
      BIND_OFF,
    ],
    expected: {
      words: { 'gap:coil-bind:1-intake': undefined, 'gap:coil-bind:intake': 'clear' },
      headline: /no word yet on room to coil bind.*another reading: this one was found off/i,
      asks: ['gap-against-calculated'],
      never: [/\.160 in[^.]*: clear/],
      next: 'gap-waits',
    },
  },
  {
    // The answer is of the .160 alone: .097 is what comes out, and nothing is asked of it.
    said: 'That one sixty was read off; now it is ninety-seven',
    goal: 'clearances-after-a-change',
    entries: [
      ...START,
      described({ springs: { installedHeight: '1.750 in', solidHeight: '1.160 in' } }),
      bindRead('.160 in'),
      BIND_OFF,
      bindRead('.097 in'),
    ],
    expected: {
      words: { 'gap:coil-bind:1-intake': 'clear' },
      asksNot: ['gap-against-calculated'],
      next: 'lobe-lift-exhaust',
    },
  },
  {
    said: 'Four intakes I read with the one fives, before the one sixes went on',
    goal: 'clearances-after-a-change',
    entries: SOLD_SINCE,
    expected: {
      headline: /middle ratio is 1\.50\d, .* the 1\.5 they were sold as when they were read/,
      asks: ['gap-arms-then'],
      asksNot: ['side-off'],
      never: [/1\.6 they are sold as/],
      says: [/The ratio of 1, 2, 3 and 4 intake with the arms that are on now/],
      next: 'lobe-lift-exhaust',
    },
  },
  {
    said: 'Four intakes; one six was right on the order all along',
    goal: 'clearances-after-a-change',
    entries: [
      ...SOLD_SINCE,
      chose('gap-arms-then', 'same-arms', {
        ask: 'The arms were sold as 1.5 when 4 valve lifts were read, and as 1.6 now. With which arms was that?',
        after: ['lifts'],
      }),
    ],
    expected: {
      headline:
        /The 4 intakes read so far \(of \d+\) read alike, about 1\.50\d: 6 % under the 1\.6 they are sold as/,
      asks: ['side-off'],
      next: 'lobe-lift-exhaust',
    },
  },
  {
    // .544 / .340 = 1.600: 7 % over the 1.5 on the order, and just what “16” would be.
    said: 'They say sixteen on them, no point; the order says one five',
    goal: 'one-valve-differs',
    entries: STAMPED_16,
    expected: {
      asks: ['stamp-is-ratio'],
      says: [/Is the “16” on the arms the ratio 1\.6/],
      next: 'stamp-is-ratio',
    },
  },
  {
    said: 'Sixteen is their ratio, I looked it up',
    goal: 'one-valve-differs',
    entries: [
      ...STAMPED_16,
      chose('stamp-is-ratio', 'ratio', {
        ask: 'Is the “16” on the arms the ratio 1.6, or another number?',
        after: ['lifts'],
      }),
    ],
    expected: {
      headline: /middle ratio is 1\.60\d, .* the 1\.6 stamped on them/,
      asksNot: ['side-off'],
      next: 'rows',
    },
  },
  {
    // .340 × 1.6 = .544: the mark, and not the 1.5 on the order.
    said: 'I did order one six, it is written down wrong',
    goal: 'verify-ratio',
    entries: [
      ...START,
      arm('the arm', { ratioStamp: '1.6' }),
      placed('the arm', 1),
      setUp('bench', { armId: '$the arm', after: ['the arm on 1 intake'] }),
      ...passes('bench', 'valve-lift', ['.544 in', '.544 in', '.5445 in'], { counted: true }),
      chose('stamp-against-sold', 'stamp', {
        ask: 'the arm is stamped 1.6; it is sold as 1.5. Which was ordered?',
        after: ['bench valve-lift 3'],
      }),
    ],
    expected: {
      headline: /agrees with the 1\.6 stamped on it\. The 1\.6 was ordered: put right what they are sold as/,
      says: [/Put right what they are sold as: the 1\.6 was ordered/],
      next: 'sold-as-right',
    },
  },
];
