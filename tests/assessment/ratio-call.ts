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

export const CARD = {
  assumedRatio: 1.6,
  intake: { ...lobe(0.35, { lash: 0.016 }), centreline: 1.85 },
  exhaust: { ...lobe(0.362, { lash: 0.016 }), centreline: 1.95 },
};

/** The arm with a label on its box: the number that could tell is on record. */
const BOXED: ArmEvidence = { ...stamped('1.6'), boxLabel: 'invented label 12' };

export const call = (lifts: readonly number[], more: Partial<Evidence> = {}): Evidence =>
  buildOf(lifts, { card: CARD, arms: [BOXED], ...more });

export const onSetUp = (
  lifts: readonly number[],
  change: Partial<SetUpEvidence>,
  more: Partial<Evidence> = {},
) => call(lifts, { setUps: [{ ...cleanSetUp, ...change }], ...more });

/** Lobe read three times at the lifter, every small hand read, every zero looked at. */
export const readWell = (lifts: readonly number[], more: Partial<Evidence> = {}): Evidence =>
  call([], {
    setUps: [{ ...cleanSetUp, lobeSource: 'indicator' }],
    passes: [
      ...passesOf('lobe-lift', [0.35, 0.3505, 0.35]),
      ...passesOf('valve-lift', lifts, { counted: true, zeroReturn: 0 }),
    ],
    ...more,
  });

export const answered = (code: string, found: boolean): AnswerEvidence => ({
  id: `answer-${code}`,
  line: 90,
  code,
  question: code,
  answer: found ? 'found' : 'not found',
  found,
  setUpId: cleanSetUp.id,
});

/** Both lengths of an arm in the hand, each between centres. */
export const armLengths = (toTip: number, toCup: number): Evidence['part'] =>
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
export const logged = (inches: number): Evidence['lash'][number] => ({
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

export const NOT_READ_WRONG = [answered('read-back', false)];
/** Three per cent under is .016 of this lift, the lash on the card: whether it was out is asked first. */
export const LASH_WAS_OUT: AnswerEvidence = {
  ...answered('lash-left-in', false),
  question: 'lash-left-in',
  answer: 'zero',
};
export const RUNNING = { ...cleanSetUp, id: 'set-up-2', number: 2, spring: 'running' as const };
/** Names off the trade’s list by a long way: what a shop’s catalogue may hold. */
export const CATALOGUE = [1.1, 1.2, 1.25, 1.3, 1.4, 1.56, 1.625, 1.72, 1.73, 1.76, 1.82, 1.85, 1.9, 2];

export const CANNOT = /cannot be told|can’t be told/;
export const PART_NUMBER = /part number can/;
