import { causesOf } from './accounts.ts';
import type { Belief } from './belief.ts';
import type { Case } from './case.ts';
import { isFelt } from './felt.ts';
import type { Weighed } from './next-reading.ts';
import type { NextReading, Outcome } from './types.ts';
import { chanceFound } from './update.ts';

/** Outcomes told: the heaviest accounts, up to this many, that carry at least this chance. */
const MOST_OUTCOMES = 5;
const LEAST_CHANCE = 0.02;
const COVER_95 = 1.959964;

function outcomeOf(given: Case, belief: Belief, weighed: Weighed, at: number): Outcome | undefined {
  const h = belief.hypotheses[weighed.indices[at] ?? -1];
  if (h === undefined) return undefined;
  const nominal = h.name < 0 ? undefined : given.nominals[h.name];
  const who = {
    cause: causesOf(h).find((each) => isFelt(given, each)) ?? ('no-mistake' as const),
    ...(nominal === undefined ? {} : { nominal }),
  };
  const { forecast } = weighed;
  if (forecast === undefined) return { ...who, chanceFound: chanceFound(h, 'read-back', given) };
  return { ...who, expected: forecast.means[at] ?? 0, plusMinus: COVER_95 * (forecast.spreads[at] ?? 0) };
}

/** The next reading as it is reported: what it is, what it tells, and what it would show. */
export function describeNext(given: Case, belief: Belief, weighed: Weighed): NextReading {
  const heaviest = [...weighed.weights.keys()]
    .filter((at) => (weighed.weights[at] ?? 0) >= LEAST_CHANCE)
    .sort((a, b) => (weighed.weights[b] ?? 0) - (weighed.weights[a] ?? 0))
    .slice(0, MOST_OUTCOMES);
  return {
    action: weighed.offer.action,
    bits: weighed.bits,
    minutes: weighed.offer.minutes,
    outcomes: heaviest.flatMap((at) => outcomeOf(given, belief, weighed, at) ?? []),
  };
}
