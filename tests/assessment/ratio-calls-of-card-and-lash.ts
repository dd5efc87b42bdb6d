import { cleanSetUp, IN, passesOf, stamped } from '../mechanics/assessment/plain.ts';
import {
  armLengths,
  CARD,
  call,
  LASH_WAS_OUT,
  logged,
  onSetUp,
  type RatioCall,
  readWell,
} from './ratio-call.ts';

/*
 * What the card says, what one pass or no mark leaves open, and lash in the reading.
 * Bands on the light spring, within 2 %, to 4.5 % over, to 4.5 % under, beyond: common practice, no published source.
 * Each ratio is valve lift over lobe lift, by hand; the ± is checked against JCGM 100 where it is calculated.
 */
export const OF_CARD_AND_LASH: readonly RatioCall[] = [
  {
    said: 'the lift is .036 over the card: the card works with 1.5, .350 × .1 = .035',
    build: call([0.561, 0.5605, 0.561], {
      card: { ...CARD, assumedRatio: 1.5, intake: { ...CARD.intake, valveLift: 0.525 * IN } },
    }),
    word: 'agrees',
    headline: ['agrees with the 1.6 stamped on it'],
    told: [
      'The lift as read is .036 in over the card’s; its ratio makes .035 in of that: it is the card’s ratio, not the part.',
    ],
    asked: [['card-ratio', 'It works with 1.5']],
    next: 'said',
  },
  {
    said: 'the card prints the net lift, .350 × 1.6 − .016 = .544: its ratio is no other',
    build: call([0.561, 0.5605, 0.561], {
      card: { intake: { ...CARD.intake, valveLift: 0.544 * IN }, exhaust: CARD.exhaust },
    }),
    word: 'agrees',
    headline: ['agrees with the 1.6 stamped on it'],
    never: /The card works with/,
    notAsked: ['card-ratio'],
    next: 'assumed-ratio',
  },
  {
    said: 'the lobe reads .012 under the .362 on its card: which lobe, which card, or wear',
    build: readWell([0.561, 0.5605, 0.561], {
      card: {
        ...CARD,
        intake: { ...CARD.intake, lobeLift: 0.362 * IN },
        exhaust: { ...CARD.exhaust, lobeLift: 0.362 * IN },
      },
    }),
    word: 'agrees',
    headline: ['1.602 ± .014 as read: agrees with the 1.6 stamped on it.'],
    told: [
      'The lobe reads .350 in, .012 in under the .362 in on the card: which lobe, which card, or wear? That takes .019 in off the valve lift.',
    ],
    next: 'lobe-siblings',
  },
  {
    said: 'one pass alone agrees so far as one pass can, and says what it lacks',
    build: call([0.561]),
    word: 'agrees',
    headline: [
      '1.603 ± .017 as read from one pass: agrees with the 1.6 stamped on it. Two more passes of the valve lift show whether it repeats.',
    ],
    next: 'valve-passes',
  },
  {
    said: 'no mark, three passes: the one name that is likelier than all others together, with its chance',
    build: call([0.561, 0.5605, 0.561], { arms: [stamped('')], rockers: {} }),
    headline: ['1.602 ± .016 as read: a 1.6, about 65 %.'],
    never: /1 intake: .*or a 1\.\d/,
    next: 'sold-as',
  },
  {
    said: 'no mark and one pass: the ratio alone',
    build: call([0.575], { arms: [stamped('')] }),
    headline: [
      '1.643 ± .017 as read from one pass. No name is given from so little. Two more passes of the valve lift show',
    ],
    next: 'valve-passes',
  },
  {
    said: 'no mark, and the arm itself was measured as a 1.5: the reading names no 1.6',
    build: call([0.561, 0.5605, 0.561], {
      arms: [stamped('')],
      handParts: [{ name: 'the arm', armId: 'arm-a' }],
      part: armLengths(1.365, 0.91),
    }),
    headline: ['1.602 ± .016 as read. No name is given: the lengths of the arm itself make it about 1.50, '],
    next: 'sold-as',
  },
  {
    said: 'short by the card’s lash to the thousandth, and said to be at zero: whether it was out is asked first',
    build: call([0.544, 0.5445, 0.544]),
    headline: ['First: the answer to “Could the lash of .016 in be left in the lift?”'],
    asked: [['lash-left-in', 'the lash of .016 in']],
    next: 'lash-left-in',
  },
  {
    said: 'short by the card’s lash, and nobody said how it was: one question, not two',
    build: onSetUp([0.544, 0.5445, 0.544], { lash: 'not-said' }),
    headline: ['stamped on it. First: the answer to “Could the lash of .016 in be left in the lift?”'],
    next: 'lash-left-in',
  },
  {
    said: 'short by what the log has, .022, and not by the card’s .016: the log’s is asked about',
    build: call([0.538, 0.538, 0.538], { lash: [logged(0.022)] }),
    headline: ['“Could the lash of .022 in be left in the lift?”'],
    next: 'lash-left-in',
  },
  {
    said: 'the lash was out, as was answered: it is not asked again',
    build: call([0.544, 0.5445, 0.544], { answers: [LASH_WAS_OUT] }),
    word: 'cannot-tell',
    headline: ['1.555 ± .015 as read, 3 % under the 1.6 stamped on it'],
    never: /lash of .016 in was left in/,
    next: 'one-more-pass',
  },
  {
    said: 'left in by .016, then put right and read again: it is not asked again',
    build: call([], {
      setUps: [
        { ...cleanSetUp, lash: 'set', lashSetting: 0.016 * IN },
        { ...cleanSetUp, id: 'set-up-2', number: 2 },
      ],
      passes: [
        ...passesOf('valve-lift', [0.544, 0.5445, 0.544]),
        ...passesOf('valve-lift', [0.561, 0.5605, 0.561], { setUpId: 'set-up-2' }),
      ],
    }),
    word: 'agrees',
    headline: ['agrees with the 1.6 stamped on it'],
    notAsked: ['lash-left-in', 'lash-not-said', 'lash-setting-not-said'],
    next: 'said',
  },
];
