import type { Account } from './accounts.ts';
import { FEATURE_KINDS, SIZE_KINDS } from './kinds.ts';
import { featureChance, sizeLikelihood } from './likelihood.ts';
import type { IdentificationModel } from './model.ts';
import type { PartReadings } from './types.ts';

/** A function of what a part is made like, worked out once for each size or word. */
function once<Value>(work: (value: Value | undefined) => number): (value: Value | undefined) => number {
  const known = new Map<Value | undefined, number>();
  return (value) => {
    const before = known.get(value);
    if (before !== undefined) return before;
    const now = work(value);
    known.set(value, now);
    return now;
  };
}

type Factor = (account: Account) => number;

/** One factor of the likelihood for each kind that was read: as made, or unknown, by the account's chances. */
function factorsOf(model: IdentificationModel, readings: PartReadings): Factor[] {
  const factor = <Value>(
    chanceOf: (value: Value | undefined) => number,
    valueIn: (account: Account) => Value | undefined,
  ): Factor => {
    const chance = once(chanceOf);
    return (account) =>
      account.same * chance(valueIn(account)) +
      (account.same === 1 ? 0 : (1 - account.same) * chance(undefined));
  };
  const sizes = SIZE_KINDS.flatMap((kind) => {
    const read = readings.sizes[kind] ?? [];
    if (read.length === 0) return [];
    return [factor<number>(sizeLikelihood(model.sizes[kind], kind, read), ({ made }) => made.sizes[kind])];
  });
  const features = FEATURE_KINDS.flatMap((kind) => {
    const said = readings.features[kind] ?? [];
    if (said.length === 0) return [];
    return [
      factor<string>(
        (word) =>
          said.reduce((product, each) => product * featureChance(model.features[kind], word, each), 1),
        ({ made }) => made.features[kind],
      ),
    ];
  });
  return [...sizes, ...features];
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
  const factors = factorsOf(model, readings);
  const logs = Float64Array.from(accounts, (account) =>
    factors.reduce((sum, factor) => sum + Math.log(factor(account)), Math.log(account.prior)),
  );
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
