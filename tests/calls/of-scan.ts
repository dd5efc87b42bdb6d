import type { Call } from './call.ts';
import { answered, asked, described, type Entry, kept } from './entry.ts';

const START = [
  asked('none', 'apart'),
  described({ engine: { cylinders: 8, lifter: 'solid-flat', rockerMounting: 'stud', use: 'street' } }),
  described({ cam: { assumedRatio: 1.6, intake: { lobeLift: '.348 in' } } }),
];

const scan = (pairs: readonly (readonly [angle: string, gap: string])[], more: object = {}): Entry => ({
  method: 'POST',
  path: 'build/gap-scans',
  body: {
    cylinder: 1,
    valve: 'intake',
    readings: pairs.map(([crankAngle, gap]) => ({ crankAngle, gap })),
    tool: 'indicator',
    spring: 'light',
    lifter: 'solid',
    lash: 'zero',
    ...more,
  },
});

/** A curve with its least of .112 in at 12° after: .112 + .0004·(x − 12)² in, a made-up engine. */
const gapAt = (angle: number, least = 0.112): string =>
  `${(least + 0.0004 * (angle - 12) ** 2).toFixed(3)} in`;
const scanOf = (angles: readonly number[], least?: number, more?: object) =>
  scan(
    angles.map((angle) => [`${angle} deg`, gapAt(angle, least)]),
    more,
  );

const EVERY_2 = [4, 6, 8, 10, 12, 14, 16, 18, 20];
/** The same on an exhaust: before top dead centre. */
const exhaustOf = (least: number, more: object = {}) =>
  scan(
    EVERY_2.map((angle) => [`${-angle} deg`, gapAt(angle, least)]),
    { valve: 'exhaust', ...more },
  );

const named = (name: string, entry: Entry): Entry => ({ ...entry, name });
/** One that stops it: nothing is scanned after it. */
const last = (entry: Entry, after: readonly string[]): Entry => ({ ...entry, after });

/* By hand: equal drop at 60 and 148 peaks at 104, 4° early of 108. */
const EARLY = kept('centreline', { before: '60 deg', after: '148 deg', card: '108 deg', side: 'intake' });
const CAM_THEN = 'Was piston to valve read with the cam where it is now, or was the cam moved after that?';
const INTAKE = 'gap:piston-to-valve:1-intake';
const EXHAUST = 'gap:piston-to-valve:1-exhaust';

/* Gap over the crank every 2° (trade press); .080 in on a street intake (trade press, usual figure). */
export const OF_SCAN: readonly Call[] = [
  {
    said: 'Every two degrees from four to twenty after: least one twelve at twelve',
    goal: 'clearances-after-a-change',
    entries: [...START, scanOf([4, 6, 8, 10, 12, 14, 16, 18, 20])],
    expected: { says: [/\.11[0-2]/, /clear/], next: 'lobe-lift-exhaust' },
  },
  {
    said: 'From fourteen to twenty-four, one thirteen at fourteen',
    goal: 'clearances-after-a-change',
    entries: [...START, scanOf([14, 16, 18, 20, 22, 24])],
    expected: {
      never: [/against .080 in: clear/],
      says: [/before 14|earlier|on before/],
      next: 'scan-intake',
    },
  },
  {
    said: 'I did it twice: one twelve first, then one thirty',
    goal: 'clearances-after-a-change',
    entries: [
      ...START,
      scanOf([4, 6, 8, 10, 12, 14, 16, 18, 20]),
      scanOf([4, 6, 8, 10, 12, 14, 16, 18, 20], 0.13),
    ],
    expected: { says: [/\.11[0-2]/], next: 'lobe-lift-exhaust' },
  },
  {
    // Advance costs the intake its gap: a cam maker’s pages (trade practice 2.8).
    said: 'Eighty-five on the intake; now the wheel says it is four degrees advanced',
    goal: 'clearances-after-a-change',
    entries: [...START, scanOf(EVERY_2, 0.085), EARLY],
    expected: {
      words: { [INTAKE]: undefined },
      asks: ['cam-then'],
      says: [/the cam moved after that/],
      never: [/against .080 in: clear/],
      next: 'scan-intake',
    },
  },
  {
    said: 'Four degrees advanced, and the eighty-five was read with it standing so',
    goal: 'clearances-after-a-change',
    entries: [...START, scanOf(EVERY_2, 0.085), EARLY, answered('cam-then', false, { question: CAM_THEN })],
    expected: {
      words: { [INTAKE]: 'clear' },
      headline: /Scan of 1 intake: .*clear\. It was scanned with the cam as it was found, 4° advanced/,
      next: 'lobe-lift-exhaust',
    },
  },
  {
    said: 'Four degrees advanced, and I moved it after the scan',
    goal: 'clearances-after-a-change',
    entries: [
      ...START,
      named('scanned', scanOf(EVERY_2, 0.085)),
      EARLY,
      last(answered('cam-then', true, { question: CAM_THEN }), ['scanned']),
    ],
    expected: {
      words: { [INTAKE]: undefined },
      says: [/a scan with the cam where it is now: it was moved after this one/],
      never: [/against .080 in: clear/, /belong together/],
      next: 'scan-intake',
    },
  },
  {
    // Which came first may be told late: it is asked before the timing is told as all there is.
    said: 'Four degrees advanced by the wheel, the stop reads alike, and I scanned one intake',
    goal: 'cam-timing',
    entries: [
      ...START,
      kept('top-dead-centre', { stopReadings: ['36 deg', '36 deg'] }),
      EARLY,
      scanOf(EVERY_2, 0.085),
    ],
    expected: { asks: ['cam-then'], next: 'cam-then' },
  },
  {
    // Equal drop at 67 and 148 peaks at 107.5, .5 off a card of 108 and good to 1 either way.
    said: 'It peaks at one oh seven and a half, and the stop reads alike',
    goal: 'cam-timing',
    entries: [
      ...START,
      kept('top-dead-centre', { stopReadings: ['36 deg', '36 deg'] }),
      kept('centreline', { before: '67 deg', after: '148 deg', card: '108 deg', side: 'intake' }),
    ],
    expected: {
      headline: /107\.5° after TDC, give or take 1°: level with the card, as near as a wheel is read\./,
      next: 'said',
      never: [/(advanced|retarded) against the card/, /costs (intake|exhaust) gap/],
    },
  },
  {
    // .100 on a street exhaust: trade press, usual figure.
    said: 'Exhaust side, every two from twenty to four before: one eighteen at twelve before',
    goal: 'clearances-after-a-change',
    entries: [...START, exhaustOf(0.118)],
    expected: {
      words: { [EXHAUST]: 'clear' },
      headline: /Scan of 1 exhaust: least .118 in ± .002 at about 12° before TDC/,
      next: 'lobe-lift-exhaust',
    },
  },
  {
    said: 'Both valves on one: one twelve on the intake, ninety-six on the exhaust',
    goal: 'clearances-after-a-change',
    entries: [...START, named('intake', scanOf(EVERY_2)), last(exhaustOf(0.096), ['intake'])],
    expected: {
      words: { [INTAKE]: 'clear', [EXHAUST]: 'short' },
      stop: [/1 exhaust/],
      next: 'under-gap-short',
    },
  },
  {
    said: 'Eighty-eight on the intake, and it was on the big springs',
    goal: 'clearances-after-a-change',
    entries: [...START, scanOf(EVERY_2, 0.088, { spring: 'running' })],
    expected: {
      words: { [INTAKE]: 'close' },
      says: [/a reading on a light spring: on the running one the train bends/],
      next: 'lobe-lift-exhaust',
    },
  },
  {
    said: 'Three times round: one twelve, one ten, one eleven',
    goal: 'clearances-after-a-change',
    entries: [...START, scanOf(EVERY_2), scanOf(EVERY_2, 0.11), scanOf(EVERY_2, 0.111)],
    expected: {
      words: { [INTAKE]: 'clear' },
      says: [/It is the worst of what was read/],
      asksNot: ['scans-apart'],
      next: 'lobe-lift-exhaust',
    },
  },
  {
    said: 'Three scans, and the last of them is at seventy-six',
    goal: 'clearances-after-a-change',
    entries: [
      ...START,
      named('first', scanOf(EVERY_2)),
      named('second', scanOf(EVERY_2, 0.11)),
      last(scanOf(EVERY_2, 0.076), ['first', 'second']),
    ],
    expected: {
      words: { [INTAKE]: 'short' },
      stop: [/1 intake/],
      asks: ['scans-apart'],
      next: 'under-gap-short',
    },
  },
];
