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

/** Both lengths of an arm in the hand, each between centres. */
const armLengths = (toTip: number, toCup: number): Evidence['part'] =>
  (
    [
      ['pivot-to-tip', toTip],
      ['pivot-to-cup', toCup],
    ] as const
  ).map(([kind, inches]) => ({
    id: `part-${kind}`,
    line: 95,
    standing: true,
    kind,
    size: inches * IN,
    typed: String(inches),
    readAs: `${inches} in`,
  }));

/** A line of the lash log of 1 intake, found before the readings. */
const logged = (inches: number): Evidence['lash'][number] => ({
  id: 'lash-1',
  line: 80,
  standing: true,
  cylinder: 1,
  valve: 'intake',
  moment: 'found',
  gap: { value: inches * IN },
  engine: 'cold',
  nut: 'held',
  readAs: `${inches} in`,
  day: '2026-01-05',
});

const NOT_READ_WRONG = [answered('read-back', false)];
/** Three per cent under is .016 of this lift, the lash on the card: whether it was out is asked first. */
const LASH_WAS_OUT: AnswerEvidence = {
  ...answered('lash-left-in', false),
  question: 'lash-left-in',
  answer: 'zero',
};
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
    headline: ['1.602 ± .016 as read: agrees with the 1.6 stamped on it.'],
    next: 'said',
  },
  {
    said: '3 % over on three clean passes, the lobe off the card: 1.648',
    build: call([0.577, 0.5765, 0.577]),
    word: 'cannot-tell',
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
    word: 'cannot-tell',
    headline: ['3 % over the 1.6 stamped on it: ordinary', 'Use 1.647 for every clearance.'],
    never: new RegExp(`${CANNOT.source}|${PART_NUMBER.source}`),
    notAsked: ['plunger-tilted'],
    next: 'said',
  },
  {
    said: '3 % under, lobe at the lifter: 1.551',
    build: readWell([0.543, 0.5435, 0.543], { answers: [LASH_WAS_OUT] }),
    word: 'cannot-tell',
    // The one step that is next, then the swap: not two steps under two headings.
    headline: [
      '3 % under the 1.6 stamped on it, which no spring explains. What would tell: turn to .200 in of lobe lift',
      'Then the swap test, this rocker on another valve',
    ],
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
      answers: [...NOT_READ_WRONG, LASH_WAS_OUT],
    }),
    word: 'cannot-tell',
    headline: ['What would tell: the swap test, this rocker on another valve'],
    next: 'rocker-on-another-valve',
  },
  {
    said: 'stamped 1.6 and sold as 1.65, read 1.648: two names for one arm',
    build: readWell([0.577, 0.5765, 0.577], { rockers: { soldAs: 1.65 }, answers: NOT_READ_WRONG }),
    word: 'cannot-tell',
    headline: ['3 % over the 1.6 stamped on it: ordinary'],
    told: [
      'level with the 1.65 it is sold as and 3 % over the 1.6 stamped on it: a reading cannot tell which',
    ],
    never: /agrees with the 1\.65|part number can/,
    // Stamp and order do not go together: common practice, no published source.
    next: 'stamp-against-sold',
  },
  {
    said: '2 % over, across the edge of 2 %: either way it is used as read',
    build: readWell([0.571, 0.5715, 0.571]),
    word: 'cannot-tell',
    headline: ['just inside 2 % or just past it. Either way it is ordinary', 'Use 1.631 for every clearance'],
    never: PART_NUMBER,
    next: 'said',
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
    said: 'no mark, a catalogue of many names: none is likelier than all others together, and the first two are told',
    build: call([0.561, 0.5605, 0.561], { arms: [stamped('16')], catalogueRatios: CATALOGUE }),
    headline: [
      '1.602 ± .016 as read: a 1.6, about 40 %, or a 1.625, about 25 %. The part number tells which.',
    ],
    never: /a (1\.1|1\.2|1\.3|1\.45|1\.7|1\.8|2),|running (?:[5-9]|\d\d) %|agrees|differs/,
    next: 'stamp-is-ratio',
  },
  {
    said: 'lash left in, how much is not said: no word, and no figure to calculate with',
    build: onSetUp([0.508, 0.508, 0.5085], { lash: 'set' }),
    headline: ['not yet set against the 1.6 stamped on it. First: a reading at zero lash'],
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
    next: 'said',
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
      'so far off that the readings are doubted before the part is. What would tell: turn to .200 in of lobe lift',
    ],
    asked: [['count-does-not-fit', 'the count still does not fit']],
    next: 'valve-lift-at-.200',
  },
  {
    said: 'two digits the other way round in the first pass',
    build: call([0.516, 0.561, 0.561]),
    headline: ['pass 1 entered again or struck out: it reads .516 in, .045 in under the others'],
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
    next: 'sold-as',
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
