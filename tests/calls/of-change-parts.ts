import type { Call } from './call.ts';
import { arm, asked, chose, described, passes, placed, setUp } from './entry.ts';

/** A solid roller on studs: lobes .361 and .334, lash .016 and .018, the card works with 1.5. Invented. */
const START = [
  asked('none', 'has-run'),
  described({
    engine: { cylinders: 8, lifter: 'solid-roller', rockerMounting: 'stud', studSize: '3/8', use: 'street' },
  }),
  described({
    cam: {
      assumedRatio: 1.5,
      intake: { lobeLift: '.361 in', lash: '.016 in' },
      exhaust: { lobeLift: '.334 in', lash: '.018 in' },
    },
  }),
];

const PUSHROD = [
  ...START,
  described({ rockers: { nominalRatio: 1.6, plannedRatio: 1.7, pivotToTip: '1.480 in' } }),
  described({ clearances: { intake: { pushrodToHead: '.090 in' } } }),
];

/*
 * Net lift = lobe × ratio − lash; room to bind of each spring of a nest by itself; loads of a nest add; the cup moves by tip
 * arm × (1/r₁ − 1/r₂) (trade practice 2.9 and 2.12); 3/8 studs commonly below 300 to 350 lb open: common practice, no
 * published source.
 */
export const OF_CHANGE_PARTS: readonly Call[] = [
  {
    // .361 × 1.65 − .016 = .580: outer 1.850 − .580 − 1.130 = .140, inner 1.750 − .580 − 1.120 = .050. Open 140 + 300 × .580
    // + 60 + 150 × .580 = 461 lb.
    said: 'Doubles on three-eighths studs, the inner sits a tenth lower: one sixty-five?',
    goal: 'choose-ratio',
    entries: [
      ...START,
      described({ rockers: { nominalRatio: 1.5, plannedRatio: 1.65 } }),
      described({
        springs: {
          installedHeight: '1.850 in',
          seatLoad: '140 lbf',
          rate: '300 lbf/in',
          solidHeight: '1.130 in',
          retainerToSeal: '.740 in',
          inner: {
            installedHeight: '1.750 in',
            seatLoad: '60 lbf',
            rate: '150 lbf/in',
            solidHeight: '1.120 in',
          },
        },
      }),
    ],
    expected: {
      headline: /room to coil bind of the inner spring on the intake valves: close, \.050 in/,
      words: { 'gap:coil-bind:intake': 'close' },
      figures: { 'change:open-load:intake': '461' },
      asks: ['stud-load'],
      says: [/3\/8 studs are commonly kept below about 300 to 350 lb open/],
      never: [/\.140 in/],
      next: 'stud-load',
    },
  },
  {
    said: 'Doubles, and nobody knows where the inner binds',
    goal: 'choose-ratio',
    entries: [
      ...START,
      described({ engine: { studSize: '7/16' } }),
      described({ rockers: { nominalRatio: 1.5, plannedRatio: 1.65 } }),
      described({
        springs: {
          installedHeight: '1.850 in',
          solidHeight: '1.130 in',
          inner: { seatLoad: '60 lbf', rate: '150 lbf/in' },
        },
      }),
    ],
    expected: {
      says: [/coil-bind height of the inner spring/],
      never: [/coils? touch/, /room to coil bind[^.]*clear/],
      next: 'centrelines',
    },
  },
  {
    // .090 − 1.48 × (1/1.6 − 1/1.7) = .036 with those that are on, .090 − 1.48 × (1/1.5 − 1/1.7) = −.026 with the card’s.
    said: 'Ninety at the pushrod; the card is for one fives, and one sixes are on it',
    goal: 'choose-ratio',
    entries: PUSHROD,
    expected: {
      words: { 'gap:pushrod-to-head:intake': 'close' },
      asks: ['pushrod-read-with'],
      says: [/It needs which arms it was read with/],
      next: 'gap-close',
    },
  },
  {
    said: 'Ninety at the pushrod, and that was with the one fives of the card',
    goal: 'choose-ratio',
    entries: [
      ...PUSHROD,
      chose('pushrod-read-with', 'others', {
        ask: 'With which arms was pushrod to head of the intake valves read: those that are on now, the 1.6 they are sold as, or ones of the 1.5 the card assumes?',
      }),
    ],
    expected: {
      says: [/the pushrod would be \.026 in/],
      never: [/\.036 in/, /which arms it was read with/],
      next: 'do-not-fit',
    },
  },
  {
    // .361 × 1.6 − .016 = .562; 1.760 − .562 − 1.130 = .068. One arm of the new set was read, the others were not.
    said: 'The first of the new one sixes is on and reads five seventy-eight',
    goal: 'choose-ratio',
    entries: [
      ...START,
      described({ rockers: { nominalRatio: 1.5, plannedRatio: 1.6 } }),
      described({ springs: { installedHeight: '1.760 in', solidHeight: '1.130 in' } }),
      arm('new', { ratioStamp: '1.6' }),
      placed('new', 1),
      setUp('first', { armId: '$new', after: ['new on 1 intake'] }),
      ...passes('first', 'valve-lift', ['.578 in', '.578 in', '.5775 in'], { counted: true }),
    ],
    expected: {
      says: [/the arms of these valves read on a light spring too/],
      // 1.5 is what the old set was sold as.
      never: [/the first arm read on a light spring/, /it is sold as/],
      next: 'gap-close',
    },
  },
  {
    said: 'The one sixes went on last week; what is there between valve and spring now?',
    goal: 'clearances-after-a-change',
    entries: [
      ...START,
      described({ rockers: { nominalRatio: 1.6 } }),
      described({ springs: { installedHeight: '1.900 in', solidHeight: '1.130 in' } }),
    ],
    expected: {
      // Exhausts .334 × 1.6 − .018 = .516, intakes .361 × 1.6 − .016 = .562: 1.900 − .562 − 1.130 = .208.
      // An arm as sold may be 4.5 % over (seeds/allowances.json): .361 × 1.6 × .045 = .026 less, and the rounding of the card.
      headline:
        /intake valves and the exhaust valves with the 1\.6 they are sold as: clear, at worst \.181 in \(\.208 to be expected\)/,
      never: [/is to be fitted/],
      next: 'centrelines',
    },
  },
  {
    said: 'One five on it, and one five is what I want to put on',
    goal: 'choose-ratio',
    entries: [...START, described({ rockers: { nominalRatio: 1.5, plannedRatio: 1.5 } })],
    expected: { says: [/With the planned 1\.5 nothing changes/], next: 'centrelines' },
  },
];
