import { defaultTolerances, type Tolerances } from '../../../server/mechanics/questions/tolerances.ts';
import type { Pass, Question, QuestionInput } from '../../../server/mechanics/questions/types.ts';

export function pass(lift: number, id: string, zeroReturn?: number): Pass {
  return zeroReturn === undefined ? { id, lift } : { id, lift, zeroReturn };
}

export const valve = (...lifts: number[]) => lifts.map((lift, i) => pass(lift, `valve${i + 1}`, 0));
export const lobe = (...lifts: number[]) => lifts.map((lift, i) => pass(lift, `lobe${i + 1}`, 0));

/** A 1.6 rocker on a .350 lobe that lifts its .560, everything said and nothing wrong. */
export const plain: QuestionInput = {
  valvePasses: valve(0.56, 0.56, 0.56),
  lobePasses: lobe(0.35, 0.35, 0.35),
  spring: 'light',
  lifter: 'solid',
  lash: 'zero',
  restsOn: 'retainer-flat',
  alignment: 'parallel',
  perTurn: 0.1,
  graduation: 0.001,
  travel: 1,
  pushedIn: 0.9,
  lobeSource: 'indicator',
  cardLobeLift: 0.35,
  otherCardLobeLift: 0.33,
  cardLash: 0.016,
  cardRatio: 1.6,
  nominalRatio: 1.6,
};

/** The plain readings, the lobe taken from the card. */
export const fromCard: QuestionInput = { ...plain, lobePasses: [], lobeSource: 'card' };

type Doubt = (input: QuestionInput, tolerances: Tolerances) => Question[];

/** `strong`, `weak` or `quiet`. */
export function weightOf(doubt: Doubt, input: QuestionInput): string {
  const weights = doubt(input, defaultTolerances).map((question) => question.weight);
  if (weights.length === 0) return 'quiet';
  return weights.includes('strong') ? 'strong' : 'weak';
}

/** The first question of a doubt; fails where none is asked. */
export function first(doubt: Doubt, input: QuestionInput): Question {
  const [question] = doubt(input, defaultTolerances);
  if (question === undefined) throw new Error('nothing was asked');
  return question;
}
