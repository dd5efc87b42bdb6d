import type { Call } from './call.ts';
import { answered, arm, asked, described, passes, placed, setUp } from './entry.ts';

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
];
