import type { Account } from './accounts.ts';
import { FEATURE_KINDS, SIZE_KINDS } from './kinds.ts';
import { featureChance, sizeLikelihood } from './likelihood.ts';
import type { IdentificationModel } from './model.ts';
import type { PartReadings } from './types.ts';

/** What is the same of an account's size, mixed with what is unknown of it. */
export function mixed(account: Account, asMade: number, unknown: number): number {
  return account.same * asMade + (1 - account.same) * unknown;
}

function logLikelihood(model: IdentificationModel, account: Account, readings: PartReadings): number {
  let sum = 0;
  for (const kind of SIZE_KINDS) {
    const read = readings.sizes[kind] ?? [];
    if (read.length === 0) continue;
    const chanceOf = (size: number | undefined) => sizeLikelihood(model.sizes[kind], size, read);
    sum += Math.log(
      mixed(account, chanceOf(account.made.sizes[kind]), account.same === 1 ? 0 : chanceOf(undefined)),
    );
  }
  for (const kind of FEATURE_KINDS) {
    const said = readings.features[kind] ?? [];
    if (said.length === 0) continue;
    const chanceOf = (word: string | undefined) =>
      said.reduce((product, each) => product * featureChance(model.features[kind], word, each), 1);
    sum += Math.log(mixed(account, chanceOf(account.made.features[kind]), chanceOf(undefined)));
  }
  return sum;
}

/**
 * The probability of each account, given what was read.
 *
 * Equation: p_a = prior_a L_a / sum prior L, with L_a the product over the kinds of reading of
 * same L(made) + (1 - same) L(unknown); L from `sizeLikelihood` and `featureChance`, the kinds of reading being
 * independent once the part is given. Worked in logarithms.
 *
 * @param model [in] the measurement model
 * @param accounts [1] as from `accountsOf`
 * @param readings [in] what was read; empty gives the priors
 * @returns [1] one probability per account, in their order; they sum to 1
 * Validity: errors of different kinds of reading independent; a stranger's sizes independent of each other.
 * Source: Bayes' theorem.
 */
export function beliefs(
  model: IdentificationModel,
  accounts: readonly Account[],
  readings: PartReadings,
): Float64Array {
  const logs = Float64Array.from(accounts, (account) => {
    return Math.log(account.prior) + logLikelihood(model, account, readings);
  });
  const most = logs.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  // A reading so far out that no density is left to compare fits no family: strangers keep their prior.
  const shares =
    most === Number.NEGATIVE_INFINITY
      ? Float64Array.from(accounts, ({ made, same, prior }) =>
          same === 1 && Object.keys(made.sizes).length === 0 ? prior : 0,
        )
      : logs.map((log) => Math.exp(log - most));
  const total = shares.reduce((sum, share) => sum + share, 0);
  return shares.map((share) => share / total);
}

/** Probabilities of the families and, last, of none of them. */
export function byFamily(accounts: readonly Account[], p: Float64Array, families: number): Float64Array {
  const sums = new Float64Array(families + 1);
  accounts.forEach((account, index) => {
    sums[account.of] = (sums[account.of] ?? 0) + (p[index] ?? 0);
  });
  return sums;
}
