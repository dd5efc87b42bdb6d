import { answered, cardOf, type Row, readBoth } from './row.ts';

const LOBE = [0.35, 0.35, 0.351];
const MARK = 'ratio:1-intake:arm-a:mark';
const SOLD_AS = 'ratio:1-intake:arm-a:sold-as';

/** Marks, box and card beside a reading: common practice, no published source. Ratios by hand. */
export const STAMPS: readonly Row[] = [
  {
    // .560 / .350 = 1.599 over the mean of the lobe; the card says .350 × 1.6 = .560.
    said: 'stamped 1.5, sold as 1.6, box and card 1.6, and it reads 1.6: the mark is the odd one',
    build: readBoth(LOBE, [0.56, 0.561, 0.56], { stamp: '1.5', box: 'box says 1.6', soldAs: 1.6 }),
    headline:
      /7 % over the 1\.5 stamped on it, and level with the 1\.6 it is sold as\. Is the 1\.5 on it the ratio\?/,
    asks: { 'stamp-is-ratio': /^Is the 1\.5 stamped on it the ratio, or another number\?$/ },
    asksNot: ['card-ratio'],
    says: [/The lift as read is the card’s, and not what the 1\.5 stamped on it would make/],
    never: [/left to be explained/, /More readings won’t tell/, /doubted before the part/],
    next: 'stamp-is-ratio',
    nextSays: /Read the mark on the arm again/,
  },
  {
    said: 'and it was another number: it is set against what it is sold as',
    build: readBoth(LOBE, [0.56, 0.561, 0.56], {
      stamp: '1.5',
      soldAs: 1.6,
      more: { answers: [answered('stamp-is-ratio', 'other-number: a casting number')] },
    }),
    headline: /agrees with the 1\.6 it is sold as/,
    words: { [SOLD_AS]: 'agrees' },
    next: 'said',
  },
  {
    // .5775 / .350 = 1.65; nothing sold, the box alone says 1.65.
    said: 'stamped 1.5, the box says 1.65, and it reads 1.65',
    build: readBoth([0.35, 0.35, 0.35], [0.5775, 0.578, 0.5775], { stamp: '1.5', box: 'kit 1.65' }),
    headline: /level with the 1\.65 on its box\. Is the 1\.5 on it the ratio\?/,
    next: 'stamp-is-ratio',
  },
  {
    // .532 / .350 = 1.520.
    said: '“152” on it, sold as 1.5, and it reads 1.52: the mark is asked about',
    build: readBoth([0.35, 0.35, 0.35], [0.532, 0.532, 0.532], {
      stamp: '152',
      soldAs: 1.5,
      card: cardOf(0.35, 0.362, { assumedRatio: 1.5 }),
    }),
    headline: /Use 1\.520 for every clearance\. Is the “152” on it a 1\.52\?/,
    asks: { 'stamp-is-ratio': /^Is the “152” on it the ratio 1\.52, or another number\?$/ },
    never: [/about \d+ %/, /at the edge between/],
    next: 'stamp-is-ratio',
  },
  {
    said: 'and it is the ratio: it is set against that first',
    build: readBoth([0.35, 0.35, 0.35], [0.532, 0.532, 0.532], {
      stamp: '152',
      soldAs: 1.5,
      card: cardOf(0.35, 0.362, { assumedRatio: 1.5 }),
      more: { answers: [answered('stamp-is-ratio', 'ratio')] },
    }),
    headline: /agrees with the 1\.52 stamped on it/,
    words: { [MARK]: 'agrees' },
    next: 'said',
  },
  {
    said: '“16” on it, and nobody knows what it is sold as',
    build: readBoth([0.35, 0.35, 0.35], [0.56, 0.56, 0.56], { stamp: '16' }),
    asks: { 'stamp-is-ratio': /^Is the “16” on it the ratio 1\.6/, 'sold-as-known': /./ },
    says: [/The ratio the rockers are sold as/, /whether the “16” on it is its ratio is not said/],
    next: 'stamp-is-ratio',
  },
  {
    said: 'no mark, and nobody knows what they are sold as: that is an answer',
    build: readBoth([0.35, 0.35, 0.35], [0.56, 0.56, 0.56], {
      stamp: '',
      more: { answers: [{ ...answered('sold-as-known', 'not-known'), setUpId: '' }] },
    }),
    headline: /a 1\.6, about \d+ %/,
    says: [
      /The card works with 1\.6, and nothing is there to set against it: what the arm is sold as is not known, and its mark is not said/,
    ],
    next: /^(?!sold-as)/,
  },
  {
    said: 'the stamp was read on the part in the hand, and that part is this arm',
    build: readBoth([0.35, 0.35, 0.35], [0.56, 0.56, 0.56], {
      stamp: '',
      more: {
        handParts: [{ name: 'the arm', armId: 'arm-a' }],
        part: [
          {
            id: 'p1',
            line: 95,
            standing: true,
            kind: 'ratio-stamp',
            typed: '1.6',
            word: '1.6',
            readAs: '1.6',
          },
        ],
      },
    }),
    headline: /agrees with the 1\.6 stamped on it/,
    words: { [MARK]: 'agrees' },
    next: 'said',
  },
  {
    // 10.31 / 6.80 = 1.516 on a finger follower.
    said: 'a finger follower sold as 1.5: one reading at full lift is held to nothing',
    build: readBoth([6.8 / 25.4, 6.8 / 25.4, 6.8 / 25.4], [10.31 / 25.4, 10.3 / 25.4, 10.31 / 25.4], {
      stamp: '',
      soldAs: 1.5,
      card: cardOf(6.8 / 25.4, 0.27, { assumedRatio: 1.5 }),
      more: { engine: { gear: 'finger-follower' } },
    }),
    headline:
      /1\.516 ± \.0\d\d as read, at full lift\. The ratio of this valve gear changes through the lift: it is not held to the 1\.5/,
    words: { [SOLD_AS]: 'cannot-tell' },
    chances: 'open',
    never: [/room for flex/, /for every clearance/],
    next: 'said',
  },
];
