import type {
  AnswerEvidence,
  ArmEvidence,
  Evidence,
  SetUpEvidence,
} from '../../server/mechanics/assessment/evidence.ts';
import type { RatioWord } from '../../server/mechanics/assessment/words.ts';
import { buildOf, cleanSetUp, IN, lobe, passesOf, stamped } from '../mechanics/assessment/plain.ts';

/** One call as it was told, and what the desk should hear. Lengths in inches; invented figures. */
export interface RatioCall {
  readonly said: string;
  readonly build: Evidence;
  /** Against the mark; left out where none may stand. */
  readonly word?: RatioWord;
  /** Parts of the headline of 1 intake. */
  readonly headline: readonly string[];
  /** Parts of what is said beside it. */
  readonly told?: readonly string[];
  /** Somewhere in all that is said of the ratio and calculated from it. */
  readonly also?: RegExp;
  /** Nowhere in it. */
  readonly never?: RegExp;
  /** Codes of questions that are asked, each in a part of its words. */
  readonly asked?: readonly (readonly [string, string])[];
  readonly notAsked?: readonly string[];
  /** The action that is next. */
  readonly next: string | RegExp;
}

const CARD = {
  assumedRatio: 1.6,
  intake: { ...lobe(0.35, { lash: 0.016 }), centreline: 1.85 },
  exhaust: { ...lobe(0.362, { lash: 0.016 }), centreline: 1.95 },
};

/** The arm with a label on its box: the number that could tell is on record. */
const BOXED: ArmEvidence = { ...stamped('1.6'), boxLabel: 'invented label 12' };

const call = (lifts: readonly number[], more: Partial<Evidence> = {}): Evidence =>
  buildOf(lifts, { card: CARD, arms: [BOXED], ...more });

const onSetUp = (lifts: readonly number[], change: Partial<SetUpEvidence>, more: Partial<Evidence> = {}) =>
  call(lifts, { setUps: [{ ...cleanSetUp, ...change }], ...more });

/** Lobe read three times at the lifter, every small hand read, every zero looked at. */
const readWell = (lifts: readonly number[], more: Partial<Evidence> = {}): Evidence =>
  call([], {
    setUps: [{ ...cleanSetUp, lobeSource: 'indicator' }],
    passes: [
      ...passesOf('lobe-lift', [0.35, 0.3505, 0.35]),
      ...passesOf('valve-lift', lifts, { counted: true, zeroReturn: 0 }),
    ],
    ...more,
  });

const answered = (code: string, found: boolean): AnswerEvidence => ({
  id: `answer-${code}`,
  line: 90,
  code,
  question: code,
  answer: found ? 'found' : 'not found',
  found,
  setUpId: cleanSetUp.id,
});

const NOT_READ_WRONG = [answered('read-back', false)];
const RUNNING = { ...cleanSetUp, id: 'set-up-2', number: 2, spring: 'running' as const };
/** Names off the trade’s list by a long way: what a shop’s catalogue may hold. */
const CATALOGUE = [1.1, 1.2, 1.25, 1.3, 1.4, 1.56, 1.625, 1.72, 1.73, 1.76, 1.82, 1.85, 1.9, 2];

const CANNOT = /cannot be told|can’t be told/;
const PART_NUMBER = /part number can/;

/*
 * Bands on the light spring, within 2 %, to 4.5 % over, to 4.5 % under, beyond: common practice, no published source.
 * Each ratio is valve lift over lobe lift, by hand; the ± is checked against JCGM 100 where it is calculated.
 */
export const RATIO_CALLS: readonly RatioCall[] = [
  {
    said: 'stamped 1.6, three passes of .561 on a .350 lobe: 1.602',
    build: call([0.561, 0.5605, 0.561]),
    word: 'agrees',
    headline: ['1.602 ± .015 as read: agrees with the 1.6 stamped on it.'],
    next: 'valves',
  },
  {
    said: '3 % over on three clean passes, the lobe off the card: 1.648',
    build: call([0.577, 0.5765, 0.577]),
    word: 'differs',
    headline: [
      '1.648 ± .016 as read, 3 % over the 1.6 stamped on it: ordinary for an arm made with room for flex.',
      'Use 1.648 for every clearance.',
    ],
    never: new RegExp(`${CANNOT.source}|${PART_NUMBER.source}`),
    notAsked: ['plunger-tilted'],
    next: 'read-back',
  },
  {
    said: '3 % over, lobe at the lifter, counted, zero looked at, and read back: 1.647',
    build: readWell([0.577, 0.5765, 0.577], { answers: NOT_READ_WRONG }),
    word: 'differs',
    headline: ['3 % over the 1.6 stamped on it: ordinary', 'Use 1.647 for every clearance.'],
    never: new RegExp(`${CANNOT.source}|${PART_NUMBER.source}`),
    notAsked: ['plunger-tilted'],
    next: 'valves',
  },
  {
    said: '3 % under, lobe at the lifter: 1.551',
    build: readWell([0.543, 0.5435, 0.543]),
    word: 'differs',
    headline: ['3 % under the 1.6 stamped on it, which no spring explains. Read again; then the swap test'],
    never: PART_NUMBER,
    next: 'valve-lift-at-.200',
  },
  {
    said: '3 % under, read again at .200 and read back: the swap test is next',
    build: readWell([0.543, 0.5435, 0.543], {
      setUps: [{ ...cleanSetUp, lobeSource: 'indicator' }],
      passes: [
        ...passesOf('lobe-lift', [0.35, 0.3505, 0.35]),
        ...passesOf('valve-lift', [0.543, 0.5435, 0.543], { counted: true, zeroReturn: 0 }),
        ...passesOf('valve-lift-at', [0.31], { atLobeLift: 0.2 * IN, counted: true }),
      ],
      answers: NOT_READ_WRONG,
    }),
    word: 'differs',
    headline: ['then the swap test'],
    next: 'rocker-on-another-valve',
  },
  {
    said: 'stamped 1.6 and sold as 1.65, read 1.648: two names for one arm',
    build: readWell([0.577, 0.5765, 0.577], { rockers: { soldAs: 1.65 }, answers: NOT_READ_WRONG }),
    word: 'differs',
    headline: ['3 % over the 1.6 stamped on it: ordinary'],
    told: [
      'level with the 1.65 it is sold as and 3 % over the 1.6 stamped on it: a reading cannot tell which',
    ],
    never: /agrees with the 1\.65|part number can/,
    next: 'valves',
  },
  {
    said: '2 % over, across the edge of 2 %: either way it is used as read',
    build: readWell([0.571, 0.5715, 0.571]),
    word: 'cannot-tell',
    headline: [
      'at the edge between agreeing and over. Either way it is ordinary',
      'use 1.631 for every clearance',
    ],
    never: PART_NUMBER,
    next: 'valves',
  },
  {
    said: '10 % under: the reading is doubted first, and calculated with nowhere',
    build: call([0.504, 0.5045, 0.504]),
    word: 'cannot-tell',
    headline: [
      '10 % under the 1.6 stamped on it, so far off that the readings are doubted before the part is.',
    ],
    also: /not calculated with yet\. First: why the lift is so far off/,
    never: /running \d+ % (over|under)|the measured 1\.44/,
    next: 'valve-lift-at-.200',
  },
  {
    said: 'no mark, a catalogue of many names: near names, each with its chance',
    build: call([0.561, 0.5605, 0.561], { arms: [stamped('16')], catalogueRatios: CATALOGUE }),
    headline: ['1.602 ± .015 as read: a 1.6, about '],
    never: /a (1\.1|1\.2|1\.3|1\.45|1\.7|1\.8|2),|running (?:[5-9]|\d\d) %|agrees|differs/,
    next: 'sold-as',
  },
  {
    said: 'lash left in, how much is not said: no word, and no figure to calculate with',
    build: onSetUp([0.508, 0.508, 0.5085], { lash: 'set' }),
    headline: ['not set against the 1.6 stamped on it yet. First: a reading at zero lash'],
    also: /^The ratio read on 1 intake is not calculated with yet\. First: a reading at zero lash/m,
    never: /the (measured|calculated) 1\.45|1\.45\d ±/,
    next: 'lash-to-zero',
  },
  {
    said: 'the plunger leans',
    build: onSetUp([0.577, 0.5765, 0.577], { alignment: 'leaning' }),
    headline: ['First: a reading with the plunger parallel to the stem'],
    never: /the measured 1\.64/,
    next: 'align-plunger',
  },
  {
    said: 'a hydraulic lifter that sinks .005 a pass',
    build: onSetUp([0.549, 0.544, 0.539], { lifter: 'hydraulic' }),
    headline: ['First: passes that don’t sink'],
    never: /the measured 1\.5/,
    next: /sink/,
  },
  {
    said: 'three passes .009 apart from each other',
    build: call([0.561, 0.57, 0.552]),
    headline: ['First: one more pass of the valve lift'],
    never: /the measured/,
    next: 'one-more-pass',
  },
  {
    said: 'light, then running on the same valve: .016 of deflection',
    build: call([], {
      engine: { mounting: 'stud' },
      setUps: [cleanSetUp, RUNNING],
      passes: [
        ...passesOf('valve-lift', [0.561, 0.5605, 0.561]),
        ...passesOf('valve-lift', [0.545, 0.5455, 0.545], { setUpId: RUNNING.id }),
      ],
    }),
    word: 'agrees',
    headline: ['agrees with the 1.6 stamped on it'],
    // .561 − .545 = .0157; over .350 it is .045. .005 to .040 on studs: common practice, no published source.
    told: ['takes .016 in ± .003 off the lift, .045 of ratio; .005 to .040 in is usual on studs.'],
    notAsked: ['spring-mixed'],
    next: 'valves',
  },
  {
    said: 'the running spring alone: set against no mark',
    build: onSetUp([0.545, 0.5455, 0.545], { spring: 'running' }),
    headline: ['First: a reading on a light spring with a solid lifter, at zero lash.'],
    never: /agrees with|differs from/,
    next: 'light-spring-solid-lifter',
  },
  {
    said: 'the second of three passes is a turn short',
    build: call([0.561, 0.461, 0.5615]),
    headline: [
      'First: pass 2 entered again or struck out: it reads .461 in, one turn of the dial under its fellows.',
    ],
    asked: [['turn-miscounted', 'from pass 2, .461 in?']],
    notAsked: ['slip', 'zero-not-returned'],
    next: /^enter-again-pass-/,
  },
  {
    said: 'and it was found to be so',
    build: call([0.561, 0.461, 0.5615], { answers: [answered('turn-miscounted', true)] }),
    headline: ['under its fellows, and that was found to be so.'],
    next: /^enter-again-pass-/,
  },
  {
    said: 'a metric dial, one pass 1 mm short',
    build: onSetUp([14.25 / 25.4, 13.25 / 25.4, 14.26 / 25.4], { perTurn: 0.001, graduation: 0.00001 }),
    headline: ['pass 2 entered again or struck out', 'one turn of the dial under its fellows'],
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
    next: 'turn-miscounted',
  },
  {
    said: 'all three a turn short, and the count was looked at and is right',
    build: call([0.461, 0.461, 0.4615], { answers: [answered('turn-miscounted', false)] }),
    word: 'cannot-tell',
    headline: ['so far off that the readings are doubted before the part is'],
    asked: [['count-does-not-fit', 'the count still does not fit']],
    next: 'count-does-not-fit',
  },
  {
    said: 'two digits the other way round in the first pass',
    build: call([0.516, 0.561, 0.561]),
    headline: ['pass 1 entered again or struck out: it reads .516 in, .045 in under its fellows'],
    asked: [['slip', 'Could pass 1, .516 in, have been .561 in?']],
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
    word: 'differs',
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
    next: 'valves',
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
    headline: ['1.602 ± .012 as read: agrees with the 1.6 stamped on it.'],
    told: [
      'The lobe reads .350 in, differs from the .362 in on the card by .012 in: which lobe, which card, or wear?',
    ],
    next: 'valves',
  },
];
