import type { Call } from './call.ts';
import { arm, asked, chose, described, type Entry, placed } from './entry.ts';

const START = [
  asked('none', 'apart'),
  described({ engine: { cylinders: 8, lifter: 'solid-flat', rockerMounting: 'stud', use: 'street' } }),
  described({ cam: { assumedRatio: 1.5, intake: { lobeLift: '.310 in', lash: '.020 in' } } }),
  described({ rockers: { nominalRatio: 1.5 } }),
];
const ONE_SIX_PLANNED = described({ rockers: { plannedRatio: 1.6 } });

/** A curve with its least of .105 in at 10° after, a made-up engine; `by` so much less at every angle. */
const scan = (name: string, by = 0, more: object = {}, after: readonly string[] = []): Entry => ({
  name,
  method: 'POST',
  path: 'build/gap-scans',
  body: {
    cylinder: 1,
    valve: 'intake',
    readings: [
      [-10, 0.178],
      [0, 0.136],
      [6, 0.112],
      [10, 0.105],
      [14, 0.11],
      [20, 0.133],
    ].map(([angle = 0, gap = 0]) => ({ crankAngle: `${angle} deg`, gap: `${(gap - by).toFixed(3)} in` })),
    tool: 'indicator',
    spring: 'light',
    lifter: 'solid',
    lash: 'zero',
    ...more,
  },
  after,
});

/** The old arm is on while it is scanned at .085, then one stamped 1.7 goes on. */
const SCANNED_THEN_PLACED: readonly Entry[] = [
  ...START,
  arm('old'),
  placed('old', 1),
  scan('first', 0.02, {}, ['old on 1 intake']),
  arm('new', { ratioStamp: '1.7' }),
  placed('new', 1, 'intake', ['first']),
];
const PUT_ON_LATER: readonly Entry[] = [
  ...START,
  scan('first', 0.02),
  arm('new', { ratioStamp: '1.7' }),
  placed('new', 1, 'intake', ['first']),
];
const WITH_WHICH =
  'The arm stamped 1.7 was put on record on 1 intake after a gap was read there. With which arm was that?';

/** Closed gap .320 at TDC in a pocket: with 1.5 it comes out at .184 at its least, by the sweep. */
const FROM_CLOSED_GAP: readonly Entry[] = [
  ...START,
  described({ engine: { stroke: '3.480 in', rodLength: '5.700 in', valveAngle: '23 deg' } }),
  described({
    cam: { intake: { centreline: '108 deg', durations: [{ duration: '234 deg', atLift: '.050 in' }] } },
  }),
  described({ clearances: { intake: { closedGapAtTdc: '.320 in', pistonFloor: 'pocket' } } }),
];

const READ = 'gap:piston-to-valve:1-intake';
const WORKED_OUT = 'gap:piston-to-valve:1-intake:worked-out';

/*
 * A scan and the arms it was read with. .080 in on a street intake: trade press, usual figure; what a train bends on its
 * running springs, up to .040 in on studs, is in seeds/allowances.json with its source.
 */
export const OF_SCAN_ARMS: readonly Call[] = [
  {
    // .105 − .002 − .040 = .063 as it is; with 1.6 no more than that, and never clear.
    said: 'One oh five on the big springs, and one sixes are to go on',
    goal: 'clearances-after-a-change',
    entries: [...START, scan('first', 0, { spring: 'running' }), ONE_SIX_PLANNED],
    expected: {
      words: { [READ]: 'close', [WORKED_OUT]: 'close' },
      says: [
        /1 intake with the planned 1\.6: .*close, it can’t be told from the limit\. It needs a reading on a light spring/,
      ],
      next: 'lobe-lift-exhaust',
    },
  },
  {
    said: 'One oh five before, and nobody knows which springs were on; one sixes next',
    goal: 'choose-ratio',
    entries: [...START, scan('first', 0, { spring: 'not-said', arms: 'before' }), ONE_SIX_PLANNED],
    expected: {
      words: { [READ]: 'close' },
      says: [/it can’t be told from the limit\. It needs which spring was on the valve/],
      next: 'lobe-lift-exhaust',
    },
  },
  {
    said: 'Eighty-five with the old arm; the one seven is on now',
    goal: 'clearances-after-a-change',
    entries: SCANNED_THEN_PLACED,
    expected: {
      words: { [READ]: undefined },
      headline: /Scan of 1 intake, with the arms that are off since: least \.085 in .*no word yet/,
      never: [/\.085 in[^.]*against \.080 in: clear/],
      next: 'lobe-lift-exhaust',
    },
  },
  {
    // What is read with the arm that is on stands first, and is what is told of the valve.
    said: 'Eighty-five with the old arm, a hundred with the one seven',
    goal: 'clearances-after-a-change',
    entries: [...SCANNED_THEN_PLACED, scan('second', 0.005, {}, ['new on 1 intake'])],
    expected: {
      words: { [READ]: 'clear' },
      headline:
        /Scan of 1 intake: least \.100 in .*clear\.\nScan of 1 intake, with the arms that are off since: least \.085 in/,
      asksNot: ['scans-apart'],
      next: 'lobe-lift-exhaust',
    },
  },
  {
    said: 'Eighty-five, a one seven went on record after it, and the old one was on',
    goal: 'clearances-after-a-change',
    entries: [
      ...PUT_ON_LATER,
      chose('gap-arms-then', 'arms-before', { ask: WITH_WHICH, after: ['new on 1 intake'] }),
    ],
    expected: {
      headline: /Scan of 1 intake, with the arms that are off since: least \.085 in .*no word yet/,
      never: [/\.085 in[^.]*against \.080 in: clear/],
      next: 'lobe-lift-exhaust',
    },
  },
  {
    said: 'Eighty-five, a one seven went on record after it, and that one was on',
    goal: 'clearances-after-a-change',
    entries: [
      ...PUT_ON_LATER,
      chose('gap-arms-then', 'same-arms', { ask: WITH_WHICH, after: ['new on 1 intake'] }),
    ],
    expected: {
      words: { [READ]: 'clear' },
      headline: /Scan of 1 intake: least \.085 in .*clear/,
      next: 'lobe-lift-exhaust',
    },
  },
  {
    // .088 is less than the .169 that it can come out at: what clears the other intakes is asked first.
    said: 'By the closed gap one eighty-four; the scan says eighty-eight, and one sixes are to go on',
    goal: 'clearances-after-a-change',
    entries: [...FROM_CLOSED_GAP, ONE_SIX_PLANNED, scan('first', 0.017)],
    expected: {
      words: { [READ]: 'clear', [WORKED_OUT]: 'close', 'gap:piston-to-valve:intake': undefined },
      asks: ['gap-against-calculated'],
      says: [/gone over: calculated it would be/],
      never: [/other intake valves[^.]*\.173 in[^.]*: clear/],
      next: 'gap-waits',
    },
  },
];
