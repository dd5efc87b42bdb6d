import { type Belief, SQUARE } from './belief.ts';
import type { Mixture } from './mixture.ts';
import { RATIO, SIZE } from './reading-model.ts';

/** Accounts lighter than this are left out of percentiles; together they can't move one by 1e-6. */
const NEGLIGIBLE = 1e-9;

/** Weights of all accounts after the readings (0 for the dropped), summing to 1. */
export function normalisedWeights(belief: Belief): Float64Array {
  const weights = new Float64Array(belief.hypotheses.length);
  let best = Number.NEGATIVE_INFINITY;
  for (const i of belief.alive) best = Math.max(best, belief.logWeights[i] ?? best);
  let total = 0;
  for (const i of belief.alive) {
    const weight = Math.exp((belief.logWeights[i] ?? best) - best);
    weights[i] = weight;
    total += weight;
  }
  for (const i of belief.alive) weights[i] = (weights[i] ?? 0) / total;
  return weights;
}

/** The ratio at full lift on the light spring, as a sum of normals over the accounts. */
export function ratioMixture(belief: Belief, weights: Float64Array): Mixture {
  const kept = belief.alive.filter((i) => (weights[i] ?? 0) > NEGLIGIBLE);
  let total = 0;
  for (const i of kept) total += weights[i] ?? 0;
  return {
    weights: Float64Array.from(kept, (i) => (weights[i] ?? 0) / total),
    means: Float64Array.from(kept, (i) => belief.means[i * SIZE + RATIO] ?? 0),
    spreads: Float64Array.from(kept, (i) => Math.sqrt(belief.covariances[i * SQUARE + RATIO] ?? 0)),
  };
}

/** Sum of the weights of those accounts for which the test holds. */
export function chanceThat(belief: Belief, weights: Float64Array, test: (index: number) => boolean): number {
  let sum = 0;
  for (const i of belief.alive) if (test(i)) sum += weights[i] ?? 0;
  return sum;
}
