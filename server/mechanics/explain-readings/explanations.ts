import { type Account, gatherAccounts, mistakesKey } from './accounts.ts';
import type { Belief } from './belief.ts';
import type { Case } from './case.ts';
import { isFelt, isRuledOut } from './felt.ts';
import type { Hypothesis } from './hypotheses.ts';
import { keyOf, type MistakeSet } from './mistake-sets.ts';
import { needOf, needsSentence } from './needs.ts';
import { sizesOf } from './sizes.ts';
import type { Entry, Explanation } from './types.ts';

/** The first entry that an account's mistakes are about. */
function entryOf(belief: Belief, account: Account): Entry | undefined {
  return belief.hypotheses[account.representative]?.set.mistakes.find((m) => m.entry !== undefined)?.entry;
}

function explain(given: Case, belief: Belief, account: Account): Explanation {
  const nominal = account.name < 0 ? undefined : given.nominals[account.name];
  const entry = entryOf(belief, account);
  const sizes = sizesOf(given, belief, account.representative);
  const causes = account.causes.filter((cause) => isFelt(given, cause));
  const needs = causes.map((cause) => needOf(cause, sizes, entry));
  return {
    ...(nominal === undefined ? {} : { nominal }),
    causes,
    ...(entry === undefined ? {} : { entry }),
    probability: account.probability,
    ratio: account.ratio,
    needs: needsSentence(nominal, account.ratio, needs),
  };
}

/** Names what a hypothesis changes: a mistake that was put right for every reading changes none of them. */
function changesKeys(given: Case): (h: Hypothesis) => string {
  // The same sets of mistakes are made with every name.
  const known = new Map<MistakeSet, string>();
  return (h) => {
    if (h.name < 0) return mistakesKey(h);
    const felt = () => h.set.mistakes.filter(({ cause }) => isFelt(given, cause));
    const key = known.get(h.set) ?? felt().map(keyOf).join('+');
    known.set(h.set, key);
    return key;
  };
}

/** Every account by name and by the mistakes that change a reading, likeliest first. */
export function rankAccounts(given: Case, belief: Belief, weights: Float64Array): Account[] {
  const changes = changesKeys(given);
  return gatherAccounts(belief, weights, (h) => `${h.name}:${changes(h)}`);
}

/** A thousandth of lift on a usual lobe: what a mistake changes by less, no dial tells. */
const TELLS = 0.003;

/** One mistake so small that the name gives the same ratio without it; of two, each may undo the other. */
function changesNothing({ name, causes, ratio }: Account, ranked: readonly Account[]): boolean {
  if (causes.length !== 1 || name < 0) return false;
  const plain = ranked.find((each) => each.name === name && each.causes.length === 0);
  return plain !== undefined && Math.abs(plain.ratio - ratio) < TELLS;
}

/** The explanations worth listing, and the chance of all that are not listed; together 1. */
export function listExplanations(
  given: Case,
  belief: Belief,
  ranked: readonly Account[],
): { explanations: Explanation[]; rest: number } {
  const isListed = (account: Account) =>
    account.probability >= given.assumed.listFrom &&
    !account.causes.some((cause) => isRuledOut(given, cause)) &&
    !changesNothing(account, ranked);
  const listed = ranked.filter(isListed);
  const rest = ranked
    .filter((account) => !isListed(account))
    .reduce((sum, account) => sum + account.probability, 0);
  return { explanations: listed.map((account) => explain(given, belief, account)), rest };
}
