import type { Call } from './call.ts';
import { asked, described, type Entry } from './entry.ts';

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
];
