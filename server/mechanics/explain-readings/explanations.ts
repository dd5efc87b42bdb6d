import { type Account, gatherAccounts, mistakesKey } from './accounts.ts';
import type { Belief } from './belief.ts';
import type { Case } from './case.ts';
import { needOf, needsSentence } from './needs.ts';
import { sizesOf } from './sizes.ts';
import type { Entry, Explanation } from './types.ts';

/** The first entry that an account's mistakes are about. */
export function entryOf(belief: Belief, account: Account): Entry | undefined {
  return belief.hypotheses[account.representative]?.set.mistakes.find((m) => m.entry !== undefined)?.entry;
}

function explain(given: Case, belief: Belief, account: Account): Explanation {
  const nominal = account.name < 0 ? undefined : given.nominals[account.name];
  const entry = entryOf(belief, account);
  const sizes = sizesOf(given, belief, account.representative);
  const needs = account.causes.map((cause) => needOf(cause, sizes, entry));
  return {
    ...(nominal === undefined ? {} : { nominal }),
    causes: account.causes,
    ...(entry === undefined ? {} : { entry }),
    probability: account.probability,
    ratio: account.ratio,
    needs: needsSentence(nominal, account.ratio, needs),
  };
}

/** Every account by name and mistakes, likeliest first. */
export function rankAccounts(belief: Belief, weights: Float64Array): Account[] {
  return gatherAccounts(belief, weights, (h) => `${h.name}:${mistakesKey(h)}`);
}

/** The explanations worth listing, and the chance of all that are not listed; together 1. */
export function listExplanations(
  given: Case,
  belief: Belief,
  ranked: readonly Account[],
): { explanations: Explanation[]; rest: number } {
  const listed = ranked.filter((account) => account.probability >= given.assumed.listFrom);
  const rest = ranked
    .filter((account) => account.probability < given.assumed.listFrom)
    .reduce((sum, account) => sum + account.probability, 0);
  return { explanations: listed.map((account) => explain(given, belief, account)), rest };
}
