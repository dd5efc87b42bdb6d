import { cleanSetUp, passesOf } from '../mechanics/assessment/plain.ts';
import { answered, call, onSetUp, type RatioCall } from './ratio-call.ts';

/*
 * Passes that cannot all be right, and entries that were looked at.
 * Bands on the light spring, within 2 %, to 4.5 % over, to 4.5 % under, beyond: common practice, no published source.
 * Each ratio is valve lift over lobe lift, by hand; the ± is checked against JCGM 100 where it is calculated.
 */
export const OF_PASSES: readonly RatioCall[] = [
  {
    said: 'the second of three passes is a turn short',
    build: call([0.561, 0.461, 0.5615]),
    headline: [
      'First: pass 2 entered again or struck out: it reads .461 in, one turn of the dial under the others.',
    ],
    asked: [['turn-miscounted', 'from pass 2, .461 in?']],
    notAsked: ['slip', 'zero-not-returned'],
    next: /^enter-again-pass-/,
  },
  {
    said: 'and it was found to be so',
    build: call([0.561, 0.461, 0.5615], { answers: [answered('turn-miscounted', true)] }),
    headline: ['under the others, and that was found to be so.'],
    next: /^enter-again-pass-/,
  },
  {
    said: 'a metric dial, one pass 1 mm short',
    build: onSetUp([14.25 / 25.4, 13.25 / 25.4, 14.26 / 25.4], { perTurn: 0.001, graduation: 0.00001 }),
    headline: ['pass 2 entered again or struck out', 'one turn of the dial under the others'],
    next: /^enter-again-pass-/,
  },
  {
    said: 'two passes a turn apart, and no third',
    build: call([0.561, 0.461]),
    headline: ['small hand first: pass 1, .561 in, and pass 2, .461 in, are one turn of the dial apart'],
    asked: [['turn-miscounted', 'from pass 2, .461 in?']],
    notAsked: ['slip'],
    next: 'one-more-pass',
  },
  {
    said: 'all three a turn short, and the count was found wrong',
    build: call([0.461, 0.461, 0.4615], { answers: [answered('turn-miscounted', true)] }),
    headline: ['First: passes 1, 2 and 3 entered again or struck out', 'the answer was yes.'],
    never: /It was so:/,
    next: 'enter-again-passes-1-2-and-3',
  },
  {
    said: 'all three a turn short, and the count was looked at and is right',
    build: call([0.461, 0.461, 0.4615], { answers: [answered('turn-miscounted', false)] }),
    word: 'cannot-tell',
    headline: [
      'so far off that the readings are doubted before the part is. What would tell: turn to .200 in of lobe lift by a second dial',
    ],
    asked: [['count-does-not-fit', 'the count still does not fit']],
    next: 'valve-lift-at-.200',
  },
  {
    said: 'two digits the other way round in the first pass',
    build: call([0.516, 0.561, 0.561]),
    headline: ['pass 1 entered again or struck out: it reads .516 in, .045 in under the others'],
    asked: [['digits-swapped', 'Could two digits of pass 1, .516 in, be the wrong way round?']],
    next: /^enter-again-pass-/,
  },
  {
    said: 'millimetres taken for inches',
    build: call([14.23, 14.24, 14.23]),
    headline: ['First: the answer to “Could the valve lift of 14.23 be millimetres?”'],
    asked: [['unit-mixed', 'be millimetres?']],
    notAsked: ['slip', 'unit-or-decimal'],
    next: 'unit-mixed',
  },
  {
    said: 'the plunger was not spoken of, then looked at, and it does not lean',
    build: onSetUp(
      [0.577, 0.5765, 0.577],
      { alignment: 'not-said' },
      { answers: [answered('plunger-tilted', false)] },
    ),
    word: 'cannot-tell',
    headline: ['Use 1.648 for every clearance.'],
    never: /plunger leaned|plunger lean/,
    next: 'read-back',
  },
  {
    said: 'the entries were read back, and one was wrong',
    build: call([0.577, 0.5765, 0.577], { answers: [answered('read-back', true)] }),
    headline: ['First: the entry that was wrong put right, and the entries read back once more.'],
    next: 'read-back',
  },
  {
    said: 'all three a turn short, the count is right, and nothing else was found: the same reading is asked for',
    build: call([0.461, 0.461, 0.4615], {
      answers: [answered('turn-miscounted', false), answered('count-does-not-fit', false)],
    }),
    word: 'cannot-tell',
    headline: ['What would tell: turn to .200 in of lobe lift'],
    next: 'valve-lift-at-.200',
  },
  {
    said: 'a valve lift read as the lobe: nothing is said of the lobe before that is answered',
    build: call([], {
      setUps: [{ ...cleanSetUp, lobeSource: 'indicator' }],
      passes: [...passesOf('lobe-lift', [0.56, 0.5605]), ...passesOf('valve-lift', [0.561, 0.5605])],
    }),
    headline: ['First: the answer to “Could the lobe lift, .560 in, be a valve lift?”'],
    told: ['The lobe is not set against the card yet. First: the answer to “Could the lobe lift'],
    never: /differs/,
    next: 'gross-lift-as-lobe',
  },
  {
    said: 'pass 2 a turn short though its count was looked at: one more pass says which are right',
    build: call([0.561, 0.461, 0.5615], { answers: [answered('turn-miscounted', false)] }),
    headline: ['First: one more pass of the valve lift, small hand first: pass 2 reads .461 in, one turn'],
    never: /pass 1|pass 3/,
    next: 'one-more-pass',
  },
];
