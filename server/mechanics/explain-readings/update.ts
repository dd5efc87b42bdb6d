import { causesOf } from './accounts.ts';
import { type Belief, priorBelief, readAs, SQUARE } from './belief.ts';
import type { Case } from './case.ts';
import type { Hypothesis } from './hypotheses.ts';
import {
  emptyPrediction,
  type Prediction,
  predict,
  type ReadingShape,
  SIZE,
  shapeOf,
  ZERO,
} from './reading-model.ts';

/** Taken once into this file: the update runs them thousands of times a call. */
const places = SIZE;
const square = SQUARE;
const zeroPlace = ZERO;

/** Accounts this far below the best one (natural logarithm) are dropped before the next reading. */
const DROP_BELOW = 30;
const gain = new Float64Array(places);

/** k = S h into `gain`; answers the variance h'Sh of the predicted reading. */
export function spreadThrough(
  covariances: Float64Array,
  at: number,
  gradient: Float64Array,
  k: Float64Array,
): number {
  let variance = 0;
  for (let row = 0; row < places; row++) {
    let sum = 0;
    const from = at + row * places;
    for (let column = 0; column < places; column++) {
      sum += (covariances[from + column] ?? 0) * (gradient[column] ?? 0);
    }
    k[row] = sum;
    variance += sum * (gradient[row] ?? 0);
  }
  return variance;
}

/** A new set-up puts the zero back to its plain spread, uncorrelated with all else. */
export function renewZero(means: Float64Array, covariances: Float64Array, i: number, spread: number): void {
  means[i * places + zeroPlace] = 0;
  const at = i * square;
  for (let place = 0; place < places; place++) {
    covariances[at + place * places + zeroPlace] = 0;
    covariances[at + zeroPlace * places + place] = 0;
  }
  covariances[at + zeroPlace * (places + 1)] = spread * spread;
}

function learn(belief: Belief, i: number, error: number, prediction: Prediction): void {
  const { means, covariances, logWeights } = belief;
  const at = i * square;
  const s = spreadThrough(covariances, at, prediction.gradient, gain) + prediction.variance;
  logWeights[i] = (logWeights[i] ?? 0) - (Math.log(2 * Math.PI * s) + (error * error) / s) / 2;
  for (let row = 0; row < places; row++) {
    const share = (gain[row] ?? 0) / s;
    if (share === 0) continue;
    means[i * places + row] = (means[i * places + row] ?? 0) + share * error;
    const from = at + row * places;
    for (let column = 0; column < places; column++) {
      covariances[from + column] = (covariances[from + column] ?? 0) - share * (gain[column] ?? 0);
    }
  }
}

/** Leaves out the accounts that no later reading can bring back. */
function dropUnlikely(belief: Belief): void {
  let best = Number.NEGATIVE_INFINITY;
  for (const i of belief.alive) best = Math.max(best, belief.logWeights[i] ?? best);
  belief.alive = belief.alive.filter((i) => (belief.logWeights[i] ?? best) >= best - DROP_BELOW);
}

function take(belief: Belief, given: Case, index: number, shape: ReadingShape, renewed: boolean): void {
  const scratch = emptyPrediction();
  const plainZero = given.assumed.dialHalfWidth / Math.sqrt(3);
  for (const i of belief.alive) {
    const h: Hypothesis | undefined = belief.hypotheses[i];
    if (h === undefined) continue;
    if (renewed && h.set.zeroRenewed) renewZero(belief.means, belief.covariances, i, plainZero);
    predict(h, shape, given.assumed, belief.means, i * places, belief.cards[i] ?? 0, scratch);
    const value = readAs(h, given, index, shape, scratch.mean);
    if (h.set.slippedReading === index) belief.unslipped[i] = value;
    learn(belief, i, value - scratch.mean, scratch);
  }
}

function answered(belief: Belief, given: Case): void {
  for (const answer of given.input.answers ?? []) {
    for (const i of belief.alive) {
      const h = belief.hypotheses[i];
      if (h === undefined) continue;
      const chance = chanceFound(h, answer.ask, given);
      belief.logWeights[i] = (belief.logWeights[i] ?? 0) + Math.log(answer.found ? chance : 1 - chance);
    }
  }
}

/** Looking for a mistake finds it as often as reading back does; where it was not found it is that much less likely. */
function lookedFor(belief: Belief, given: Case): void {
  const notFound = Math.log(1 - given.assumed.readBackFound);
  for (const cause of given.input.ruledOut ?? []) {
    for (const i of belief.alive) {
      const h = belief.hypotheses[i];
      if (h === undefined || !causesOf(h).includes(cause)) continue;
      belief.logWeights[i] = (belief.logWeights[i] ?? 0) + notFound;
    }
  }
}

/** Chance that asking finds something wrong, under a hypothesis. */
export function chanceFound(h: Hypothesis, ask: 'read-back' | 'zero-return', given: Case): number {
  const a = given.assumed;
  if (ask === 'zero-return') {
    const moved = h.set.mistakes.some((mistake) => mistake.cause === 'zero-moved');
    return moved ? a.zeroReturnFound : a.zeroReturnFoundElse;
  }
  const heard =
    h.set.lobe === 'other-row' ||
    h.set.lobe === 'other-valve' ||
    h.set.lobe === 'valve-lift' ||
    h.set.slippedCard;
  return heard ? a.readBackFound : a.readBackFoundElse;
}

/** The belief after all readings in their order, and after the answers. */
export function believe(given: Case, hypotheses: readonly Hypothesis[]): Belief {
  const belief = priorBelief(given, hypotheses);
  let setUp = given.input.readings[0]?.setUp ?? 0;
  given.input.readings.forEach((reading, index) => {
    if (index > 0) dropUnlikely(belief);
    const shape = shapeOf(reading, given.assumed);
    take(belief, given, index, shape, shape.setUp !== setUp);
    setUp = shape.setUp;
  });
  answered(belief, given);
  lookedFor(belief, given);
  return belief;
}
