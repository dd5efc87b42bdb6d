import { mistakesKey } from './accounts.ts';
import type { Belief } from './belief.ts';
import { type Case, openCase } from './case.ts';
import { checkInput } from './check-input.ts';
import { listExplanations, rankAccounts } from './explanations.ts';
import { enumerateHypotheses } from './hypotheses.ts';
import { mistakesPossible } from './mistakes.ts';
import { mixturePercentile } from './mixture.ts';
import { bestOffer, weighOffers } from './next-reading.ts';
import { describeNext } from './outcomes.ts';
import { chanceThat, normalisedWeights, ratioMixture } from './posterior.ts';
import { questionsFor } from './questions.ts';
import { summarise } from './summary.ts';
import type { ExplainInput, ExplainResult, NextReading } from './types.ts';
import { believe } from './update.ts';
import { againstMark, intervalIsTight, remainingNames } from './verdicts.ts';

const SOMETHING_ELSE: ReadonlySet<string> = new Set(['unlisted-fault', 'passes-scatter', 'ratio-not-listed']);

function namesOf(given: Case, belief: Belief, weights: Float64Array): ExplainResult['nominals'] {
  const sums = given.nominals.map(() => 0);
  for (const i of belief.alive) {
    const name = belief.hypotheses[i]?.name ?? -1;
    if (name >= 0) sums[name] = (sums[name] ?? 0) + (weights[i] ?? 0);
  }
  return given.nominals.map((ratio, name) => ({ ratio, probability: sums[name] ?? 0 }));
}

/** Names, "something else" and "no mistake", each as a chance. */
function chancesOf(given: Case, belief: Belief, weights: Float64Array) {
  const at = (i: number) => belief.hypotheses[i];
  return {
    nominals: namesOf(given, belief, weights),
    notListed: chanceThat(belief, weights, (i) => at(i)?.name === -1),
    somethingElse: chanceThat(belief, weights, (i) => {
      const h = at(i);
      return h !== undefined && SOMETHING_ELSE.has(mistakesKey(h));
    }),
    noMistake: chanceThat(belief, weights, (i) => at(i)?.name !== -1 && at(i)?.set.mistakes.length === 0),
  };
}

function nextOf(
  given: Case,
  belief: Belief,
  weights: Float64Array,
  somethingElse: number,
  mistakeOnly: boolean,
): NextReading | undefined {
  const weighed = weighOffers(given, belief, weights, somethingElse, mistakeOnly);
  const best = bestOffer(weighed, given.assumed.leastBits);
  return best === undefined ? undefined : describeNext(given, belief, best);
}

/**
 * Explains the readings of one valve: which listed ratio the arm has, what it gives at full lift on
 * the light spring, which mistakes could have been made, and the next reading worth taking.
 *
 * Every hypothesis is a name with up to two mistakes and carries a normal state of eight quantities
 * (ratio, lobe lift, lash, flex, tilt, two of lifter sink, zero), updated reading by reading:
 * s = h'Sh + r, ln w -= (ln 2 pi s + e^2/s)/2, x += Sh e/s, S -= (Sh)(Sh)'/s. Percentiles are those of
 * the weighted sum of normals; the next reading is the one with most bits per minute.
 *
 * Lengths in inches, ratios bare, chances 0 to 1. Holds for single valves with ratios of about 1.2 to
 * 2.05 and lobe lifts of about .26 to .42 in, the range it was simulated over. Source: design note,
 * judgement; spreads marked "common practice" in the assumptions have no published source.
 * Throws InputFaults on bad input.
 */
export function explainReadings(input: ExplainInput): ExplainResult {
  checkInput(input);
  const given = openCase(input);
  const a = given.assumed;
  const belief = believe(given, enumerateHypotheses(given, mistakesPossible(given)));
  const weights = normalisedWeights(belief);
  const mixture = ratioMixture(belief, weights);
  const ratio = {
    median: mixturePercentile(mixture, 0.5),
    interval95: [mixturePercentile(mixture, 0.025), mixturePercentile(mixture, 0.975)],
  } as const;
  const chances = chancesOf(given, belief, weights);
  const nameSettled = chances.nominals.some(({ probability }) => probability >= a.nameSettled);
  const ratioSettled = nameSettled && intervalIsTight(ratio, a.intervalSettled);
  const settled = ratioSettled && chances.noMistake >= a.noMistakeSettled;
  const next = settled ? undefined : nextOf(given, belief, weights, chances.somethingElse, ratioSettled);
  const judged = {
    ratio,
    ...chances,
    ...listExplanations(given, belief, rankAccounts(given, belief, weights)),
    remaining: remainingNames(chances.nominals, a.nameSettled),
    ...(input.mark === undefined
      ? {}
      : { againstMark: againstMark(mixture, input.mark, chances.noMistake, a) }),
    ...(next === undefined ? {} : { nextReading: next }),
    settled,
  };
  return { ...judged, summary: summarise(given, judged), questions: questionsFor(given, belief, weights) };
}
