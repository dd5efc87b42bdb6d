import type { Call } from './call.ts';
import { asked, chose, described, type Entry, kept, lashLine } from './entry.ts';

const START = [
  asked('none', 'apart'),
  described({
    engine: { cylinders: 8, lifter: 'solid-flat', rockerMounting: 'stud', studSize: '7/16' },
    rockers: { nominalRatio: 1.6 },
  }),
];

const card = (intake: object): Entry => described({ cam: { assumedRatio: 1.5, intake } });

const STOP = kept('top-dead-centre', { stopReadings: ['36 deg', '36 deg'] });

/* Equal drop at 64.5 and 159.5 peaks at 112: 4 late of a card of 108. */
const drop = (more: object = {}): Entry => ({
  name: 'peak',
  ...kept('centreline', { before: '64.5 deg', after: '159.5 deg', ...more }),
});

/* 8 before TDC and 49 after BDC are 8 + 180 + 49 = 237 open; the peak is at 237 / 2 − 8 = 110.5. */
const EVENTS = kept('centreline', { opens: '8 BTDC', closes: '49 ABDC' });

/* .006 at 1.6 on a 7/16-20 stud: .006 / (.050 × 2.6) = .046 of a turn. */
const turn = (more: object = {}): Entry => ({
  name: 'sum',
  ...kept('adjuster', {
    thread: '7/16-20',
    mount: 'stud-nut',
    ratio: 1.6,
    lifter: 'solid',
    lashFound: '.022 in',
    lashWanted: '.016 in',
    ...more,
  }),
});

const found = (lash: string, more: object = {}): Entry => ({
  name: `five at ${lash}`,
  ...lashLine(5, lash, { moment: 'found', engine: 'cold', ...more }),
});

/* What was worked out is held against the card as it is now: common practice, no published source. */
export const OF_CARD: readonly Call[] = [
  {
    said: 'It peaks at one twelve; here is the card, it says one oh eight',
    goal: 'cam-timing',
    entries: [...START, STOP, drop(), card({ centreline: '108 deg' })],
    expected: { headline: /112° after TDC, give or take 1°: 4° retarded/, next: 'said' },
  },
  {
    said: 'One oh eight I told you; no, I misread it, the card says one twelve',
    goal: 'cam-timing',
    entries: [...START, STOP, drop({ card: '108 deg' }), card({ centreline: '112 deg' })],
    expected: {
      headline: /The build has 112°; the reading was held against 108°\. No word against the card yet/,
      asks: ['card-differs'],
      next: 'card-differs',
      never: [/: 4° retarded/, /straight up/],
    },
  },
  {
    said: 'I read it off again, one twelve is what is printed',
    goal: 'cam-timing',
    entries: [
      ...START,
      STOP,
      drop({ card: '108 deg' }),
      card({ centreline: '112 deg' }),
      chose('card-differs', 'build', {
        ask: 'Which centreline does the card give the intake: 112° or 108°?',
        after: ['peak'],
      }),
    ],
    expected: { headline: /: straight up, as the card has it/, next: 'said', never: [/retarded/] },
  },
  {
    said: 'It opens eight before and shuts forty-nine after, and the card has two forty-two',
    goal: 'cam-timing',
    entries: [
      ...START,
      STOP,
      EVENTS,
      card({ centreline: '108 deg', durations: [{ atLift: '.050 in', duration: '242 deg' }] }),
    ],
    expected: {
      headline: /5° under the card’s.*No word against the card yet/,
      next: 'duration-off',
      never: [/: 2\.5° retarded/],
    },
  },
  {
    said: 'Twenty-two, and I want sixteen; hold on, the card says twenty-eight, I had it wrong',
    goal: 'adjuster',
    entries: [...START, turn(), found('.022 in'), card({ lash: '.028 in' })],
    expected: {
      headline: /Nothing is told of these turns yet/,
      asks: ['sum-unlikely'],
      next: 'sum-unlikely',
      never: [/[Tt]ighten/],
    },
  },
  {
    said: 'Nineteen, then twenty-five the same day; nobody can say which, and I worked it from twenty-five',
    goal: 'adjuster',
    entries: [
      ...START,
      card({ lash: '.016 in' }),
      found('.019 in'),
      found('.025 in'),
      turn({ lashFound: '.025 in' }),
      chose('found-twice', 'neither', {
        ask: 'The lash of 5 intake was found at .019 in and .025 in. Which one holds?',
        after: ['five at .019 in', 'five at .025 in'],
      }),
    ],
    expected: { next: 'found-twice', never: [/[Tt]ighten/, /Give thread and turns/] },
  },
  {
    said: 'They are hydraulic, the card says; I worked a gap of twenty-two down to sixteen',
    goal: 'adjuster',
    entries: [
      asked('none', 'apart'),
      described({
        engine: { cylinders: 8, lifter: 'hydraulic-flat', rockerMounting: 'stud' },
        rockers: { nominalRatio: 1.6 },
      }),
      turn(),
      found('.022 in'),
    ],
    expected: { asks: ['lifters-differ'], next: 'gap-on-hydraulic', never: [/tighten/i] },
  },
];
