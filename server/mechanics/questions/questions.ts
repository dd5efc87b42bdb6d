import { caliperOnLobe } from './caliper-on-lobe.ts';
import { cardRatio } from './card-ratio.ts';
import { checkInput } from './check-input.ts';
import { copiedReading } from './copied-reading.ts';
import { decimalSlip } from './decimal-slip.ts';
import { driftingPasses, fallingPasses } from './falling-passes.ts';
import { grossLiftAsLobe } from './gross-lift-as-lobe.ts';
import { handReadBackwards } from './hand-read-backwards.ts';
import { lashFormula } from './lash-formula.ts';
import { lashLeftIn } from './lash-left-in.ts';
import { lifterOfEngine } from './lifter-of-engine.ts';
import { lifterSunk } from './lifter-sunk.ts';
import { liftsExchanged, passOfOtherLift } from './lifts-exchanged.ts';
import { notSaid } from './not-said.ts';
import { outOfTravel } from './out-of-travel.ts';
import { plungerTilted } from './plunger-tilted.ts';
import { shortAtTop } from './short-at-top.ts';
import { springMixed } from './spring-mixed.ts';
import { statedNotRead } from './stated-not-read.ts';
import { defaultTolerances, MINUTES, type Tolerances } from './tolerances.ts';
import { turnMiscounted } from './turn-miscounted.ts';
import type { Question, QuestionInput } from './types.ts';
import { unitMixed } from './unit-mixed.ts';
import { valveSwapped } from './valve-swapped.ts';
import { zeroNotReturned } from './zero-not-returned.ts';

/** Every doubt there is a test for; among equals this is the order they are asked in. */
const DOUBTS = [
  statedNotRead,
  unitMixed,
  decimalSlip,
  liftsExchanged,
  passOfOtherLift,
  grossLiftAsLobe,
  zeroNotReturned,
  turnMiscounted,
  handReadBackwards,
  valveSwapped,
  lashLeftIn,
  lashFormula,
  fallingPasses,
  driftingPasses,
  lifterSunk,
  shortAtTop,
  outOfTravel,
  plungerTilted,
  caliperOnLobe,
  copiedReading,
  cardRatio,
  springMixed,
  lifterOfEngine,
  notSaid,
] as const;

const minutesOf = (question: Question) => MINUTES.get(question.code) ?? Number.POSITIVE_INFINITY;
const rank = (question: Question) => (question.weight === 'strong' ? 0 : 1);

function byWeightThenMinutes(a: Question, b: Question): number {
  return rank(a) - rank(b) || minutesOf(a) - minutesOf(b) || 0;
}

/** One of each: the same question of the same code is put once, at its strongest. */
function onceEach(questions: readonly Question[]): Question[] {
  const seen = new Set<string>();
  return questions.filter((question) => {
    const key = `${question.code} ${question.ask}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

/** Weak doubts that a strong one stands for: the same hands of the dial, the same lash. */
const STANDS_FOR: Readonly<Record<string, string>> = {
  'hand-read-backwards': 'turn-miscounted',
  'turn-miscounted': 'hand-read-backwards',
  'lash-left-in': 'lash-not-said',
};

/** One slip is asked about once: what fits well, and not what fits badly beside it. */
function besidesStronger(questions: readonly Question[]): Question[] {
  const stood = questions
    .filter(({ weight }) => weight === 'strong')
    .map(({ code, restsOn }) => ({ code: STANDS_FOR[code], restsOn }));
  const isStoodFor = ({ code, restsOn }: Question) =>
    stood.some((each) => each.code === code && restsOn.every((id) => each.restsOn.includes(id)));
  return questions.filter((question) => question.weight === 'strong' || !isStoodFor(question));
}

/**
 * What a person should be asked before these readings are believed: strong doubts first, and of those the one
 * that is settled soonest. All matches are listed; no entry is changed.
 */
export function questionsFor(input: QuestionInput, tolerances: Tolerances = defaultTolerances): Question[] {
  checkInput(input, tolerances);
  const questions = DOUBTS.flatMap((doubt) => doubt(input, tolerances));
  return onceEach(besidesStronger(questions).sort(byWeightThenMinutes));
}
