import type { AnswerEvidence, Evidence } from '../../../../server/mechanics/assessment/evidence.ts';
import { type Chance, chanceFrom } from '../../explain-readings/random.ts';
import { numbered } from './builds.ts';

function shuffled<T>(chance: Chance, items: readonly T[]): T[] {
  return items
    .map((item) => ({ item, key: chance.between(0, 1) }))
    .sort((a, b) => a.key - b.key)
    .map(({ item }) => item);
}

const subjectOf = ({ setUpId, questionId, code }: AnswerEvidence): string =>
  `${setUpId ?? questionId ?? ''} ${code}`;

/** Answers in any order, but for those to one question: one that is given again puts the one before it right. */
function answers(chance: Chance, given: readonly AnswerEvidence[]): AnswerEvidence[] {
  const waiting = new Map<string, AnswerEvidence[]>();
  for (const answer of given)
    waiting.set(subjectOf(answer), [...(waiting.get(subjectOf(answer)) ?? []), answer]);
  return shuffled(chance, given).flatMap((place) => waiting.get(subjectOf(place))?.shift() ?? []);
}

/**
 * The same entries, entered in another order: lists and line numbers change, while the numbers of passes and set-ups
 * say in which order it was read on the engine, and days when a lash was.
 */
export function permuted(evidence: Evidence, seed: number): Evidence {
  const chance = chanceFrom(seed ^ 0x5bd1e995);
  return numbered({
    ...evidence,
    arms: shuffled(chance, evidence.arms),
    seats: shuffled(chance, evidence.seats),
    setUps: shuffled(chance, evidence.setUps),
    passes: shuffled(chance, evidence.passes),
    sheet: shuffled(chance, evidence.sheet),
    lash: shuffled(chance, evidence.lash),
    tipMarks: shuffled(chance, evidence.tipMarks),
    part: shuffled(chance, evidence.part),
    answers: answers(chance, evidence.answers),
    catalogueRatios: shuffled(chance, evidence.catalogueRatios),
  });
}
