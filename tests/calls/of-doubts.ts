import type { Call } from './call.ts';
import { asked, chose, described, onSheet } from './entry.ts';

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
];
