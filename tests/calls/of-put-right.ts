import type { Call } from './call.ts';
import { asked, chose, described, type Entry } from './entry.ts';
import { START as CARD_OF_ARMS, ELSEWHERE, last } from './of-arms.ts';

/* What was said or read is put right later: what was read before then stays read as it was. */

const START = [
  asked('none'),
  described({ engine: { cylinders: 8, lifter: 'solid-flat', rockerMounting: 'stud' } }),
  described({ cam: { assumedRatio: 1.5, intake: { lobeLift: '.348 in', lash: '.018 in' } } }),
  described({ clearances: { intake: { lobeLiftAtClosest: '.150 in' } } }),
];
const soldAs = (nominalRatio: number, name: string, after: readonly string[] = []): Entry => ({
  ...described({ rockers: { nominalRatio } }),
  name,
  after,
});

/** A scan with its least of .110 in at 12° after: .110 + .0004·(x − 12)² in, a made-up engine. */
const SCAN: Entry = {
  name: 'the scan',
  method: 'POST',
  path: 'build/gap-scans',
  after: ['one five'],
  body: {
    cylinder: 1,
    valve: 'intake',
    readings: [4, 6, 8, 10, 12, 14, 16, 18, 20].map((angle) => ({
      crankAngle: `${angle} deg`,
      gap: `${(0.11 + 0.0004 * (angle - 12) ** 2).toFixed(3)} in`,
    })),
    tool: 'indicator',
    spring: 'light',
    lifter: 'solid',
    lash: 'zero',
  },
};
const FEELER: Entry = {
  method: 'POST',
  path: 'build/gap-scans/$the scan/corrections',
  body: { tool: 'feeler', reason: 'it was a feeler' },
  after: ['one six'],
};

const OLD_AND_NEW = [soldAs(1.5, 'one five'), soldAs(1.6, 'one six', ['the scan'])];
/** An answer to whether A was moved, and another to the same after it. */
const saidOfMove = (first: string, then: string): Entry[] => [
  { ...chose('arm-sits-elsewhere', first, { on: 'named', after: [last('named')] }), name: 'first said' },
  chose('arm-sits-elsewhere', then, { on: 'named', after: [last('named'), 'first said'] }),
];

export const OF_PUT_RIGHT: readonly Call[] = [
  {
    // .110 − .150 × .1 = .095 with a 1.6: with what it was read does not hang on when its tool was put right.
    said: 'I scanned it with the one fives, then put one sixes on; and it was a feeler',
    goal: 'clearances-after-a-change',
    entries: [...START, ...OLD_AND_NEW, SCAN, FEELER],
    expected: {
      asks: ['gap-arms-then'],
      says: [/1 intake with the 1\.6 they are sold as: \.09\d in/, /read with the arms that are off since/],
      next: 'lobe-lift-exhaust',
    },
  },
  {
    said: 'I read A on three after all; no: it was moved to number one',
    goal: 'verify-ratio',
    entries: [...CARD_OF_ARMS, ...ELSEWHERE, ...saidOfMove('other-valve', 'moved')],
    expected: {
      words: { 'ratio:1-intake:A:mark': 'cannot-tell' },
      asks: ['arm-sits-elsewhere'],
      never: [/3 intake: 1\.500/],
      says: [/Put on record that A was moved to 1 intake/],
      next: 'move',
    },
  },
  {
    said: 'It was B that sat there; no: I read A where it sits, on three',
    goal: 'verify-ratio',
    entries: [...CARD_OF_ARMS, ...ELSEWHERE, ...saidOfMove('arm-there', 'other-valve')],
    expected: {
      asks: ['arm-sits-elsewhere'],
      headline: /^3 intake: 1\.500/m,
      never: [/1 intake: 1\.500/],
      next: 'valve-lift-at-.200',
    },
  },
  {
    said: 'It was moved; no, nobody moved it',
    goal: 'verify-ratio',
    entries: [...CARD_OF_ARMS, ...ELSEWHERE, ...saidOfMove('moved', 'nobody moved it')],
    expected: {
      asks: ['arm-sits-elsewhere'],
      never: [/Put on record that A was moved/],
      headline: /Was it moved\?/,
      next: 'arm-sits-elsewhere',
    },
  },
];
