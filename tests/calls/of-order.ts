import type { Call } from './call.ts';
import { arm, asked, chose, described, passes, placed, setUp } from './entry.ts';

const LOBE = { lobeLift: '.350 in', lash: '.018 in', centreline: '108 deg' };
const START = [
  asked('none'),
  described({ engine: { cylinders: 8, lifter: 'solid-flat' }, rockers: { nominalRatio: 1.6 } }),
  arm('the arm', { ratioStamp: '1.65' }),
  placed('the arm', 1),
];
const carded = (assumedRatio: number) => described({ cam: { assumedRatio, intake: LOBE, exhaust: LOBE } });
const read = (lift: string) => [
  setUp('bench', { armId: '$the arm', lobeSource: 'indicator' }),
  ...passes('bench', 'lobe-lift', ['.350 in', '.350 in', '.350 in']),
  ...passes('bench', 'valve-lift', [lift, lift, lift], { counted: true }),
];
const ORDERED = chose('stamp-against-sold', 'sold', {
  ask: 'the arm is stamped 1.65; it is sold as 1.6. Which was ordered?',
});
const MARK = 'ratio:1-intake:the arm:mark';
const SOLD = 'ratio:1-intake:the arm:sold-as';

/*
 * An arm that is stamped as another than was ordered. Bands (within 2 %, to 4.5 % under): common practice, no published
 * source. .561 / .350 = 1.603; .578 / .350 = 1.651; .566 / .350 = 1.617.
 */
export const OF_ORDER: readonly Call[] = [
  {
    // 1.6 × .350 = .560, whole at zero lash; with 1.65 it is .5775, which is .0165 short.
    said: 'One sixty-five on it, sold as a one six, lash out, and I read five sixty-one',
    goal: 'verify-ratio',
    entries: [...START, carded(1.6), ...read('.561 in')],
    expected: {
      words: { [MARK]: 'cannot-tell' },
      headline: /3 % under the 1\.65 stamped on it, and level with the 1\.6 it is sold as/,
      asksNot: ['lash-left-in'],
      never: [/lash of \.018 in be left/],
      next: 'stamp-against-sold',
    },
  },
  {
    // The card’s 1.5 makes .525: .036 over it, of which 1.6 makes .035.
    said: 'Five sixty-one, stamped one sixty-five, and it was the one six that I ordered',
    goal: 'verify-ratio',
    entries: [...START, carded(1.5), ...read('.561 in'), ORDERED],
    expected: {
      words: { [SOLD]: 'agrees', [MARK]: 'cannot-tell' },
      headline:
        /1\.603 .* agrees with the 1\.6 it is sold as\. The 1\.6 was ordered, and it reads as that: the 1\.65 stamped on it is the odd one/,
      says: [/\.036 in over the card’s; its ratio makes \.035 in of that: it is the card’s ratio/],
      never: [/another part was sent/, /left to be explained/, /[Ss]wap/, /cannot tell which/],
      next: 'said',
    },
  },
  {
    said: 'Five seventy-eight, stamped one sixty-five, and it was the one six that I ordered',
    goal: 'verify-ratio',
    entries: [...START, carded(1.5), ...read('.578 in'), ORDERED],
    expected: {
      words: { [MARK]: 'agrees', [SOLD]: 'differs' },
      headline: /agrees with the 1\.65 stamped on it\. The 1\.6 was ordered: another part was sent\.$/m,
      never: [/odd one/],
      next: 'said',
    },
  },
  {
    said: 'Five sixty-six, stamped one sixty-five, and it was the one six that I ordered',
    goal: 'verify-ratio',
    entries: [...START, carded(1.5), ...read('.566 in'), ORDERED],
    expected: {
      words: { [MARK]: 'cannot-tell', [SOLD]: 'cannot-tell' },
      headline: /The 1\.6 was ordered: by its stamp another part was sent\./,
      never: [/odd one/],
      next: 'rocker-on-another-valve',
    },
  },
];
