import type { Case } from './case.ts';
import { nearest, slipsOf } from './entry-slip.ts';
import type { Hypothesis } from './hypotheses.ts';
import {
  emptyPrediction,
  FLEX,
  LASH,
  LOBE,
  mirrored,
  type Prediction,
  predict,
  RATIO,
  type ReadingShape,
  SINK,
  SINK_PER_PASS,
  SIZE,
  shapeOf,
  TILT,
  ZERO,
} from './reading-model.ts';

export const SQUARE = SIZE * SIZE;

/** What is believed after the readings: for each account still alive a mean, a covariance, a weight. */
export interface Belief {
  readonly hypotheses: readonly Hypothesis[];
  readonly means: Float64Array;
  readonly covariances: Float64Array;
  readonly logWeights: Float64Array;
  /** The card's lobe lift as each account has it, inches. */
  readonly cards: Float64Array;
  /** What the slipped reading was before it slipped, inches; NaN in accounts without one. */
  readonly unslipped: Float64Array;
  /** Indices of the accounts not dropped. */
  alive: number[];
}

/**
 * A reading as the hypothesis takes it, inches: unit put right, slip taken back, or hand turned round
 * (these three never meet in one hypothesis).
 */
export function readAs(
  h: Hypothesis,
  given: Case,
  index: number,
  shape: ReadingShape,
  predicted: number,
): number {
  const entered = given.input.readings[index]?.value ?? Number.NaN;
  if (h.set.slippedReading === index) return nearest(slipsOf(entered), predicted);
  if (h.set.backwards && shape.isValve && !shape.counted) return mirrored(entered, shape.perTurn);
  return given.oddReadings[index] ? entered / h.set.valveDivisor : entered;
}

/** Mean and spread of the lobe lift before any reading, inches. */
function lobePrior(h: Hypothesis, given: Case, card: number): { mean: number; spread: number } {
  const a = given.assumed;
  if (given.input.cardLobeLift === undefined) return { mean: a.lobeMean, spread: a.lobeSpread };
  const ofTheCard = a.cardHalfWidth / Math.sqrt(3);
  switch (h.set.lobe) {
    case 'card':
      return { mean: card, spread: ofTheCard };
    case 'other-row':
    case 'other-valve':
      return { mean: given.input.otherLobeLift ?? card, spread: ofTheCard };
    case 'valve-lift': {
      const lobe = card / h.ratioMean;
      return { mean: lobe, spread: a.valveLiftAsLobeSpreadShare * lobe };
    }
    case 'not-this-lobe':
      return { mean: card, spread: a.cardNotThisLobeSpread };
  }
}

function put(belief: Belief, i: number, place: number, mean: number, spread: number): void {
  belief.means[i * SIZE + place] = mean;
  belief.covariances[i * SQUARE + place * (SIZE + 1)] = spread * spread;
}

function setPrior(belief: Belief, i: number, h: Hypothesis, given: Case): void {
  const a = given.assumed;
  const lobe = lobePrior(h, given, belief.cards[i] ?? 0);
  put(belief, i, RATIO, h.ratioMean, h.ratioSpread);
  put(belief, i, LOBE, lobe.mean, lobe.spread);
  put(belief, i, LASH, h.set.lashMean, h.set.lashSpread);
  put(belief, i, FLEX, a.flexMean, a.flexSpread);
  put(belief, i, TILT, 0, h.set.tiltSpread);
  put(belief, i, SINK, a.sinkMean, a.sinkSpread);
  put(belief, i, SINK_PER_PASS, a.sinkPerPassMean, a.sinkPerPassSpread);
  put(belief, i, ZERO, h.set.zeroMean, h.set.zeroSpread);
}

/**
 * A card entry that slipped: the slip nearest to the first reading if that is a lobe, otherwise to
 * the lobe that the first valve reading asks for. (A caliper's reading is first brought up to the
 * lobe that it stands for.)
 */
function slippedCard(belief: Belief, i: number, h: Hypothesis, given: Case, scratch: Prediction): number {
  const card = belief.cards[i] ?? 0;
  const first = given.input.readings[0];
  if (first === undefined) return card;
  const shape = shapeOf(first, given.assumed);
  predict(h, shape, given.assumed, belief.means, i * SIZE, card, scratch);
  const seen = readAs(h, given, 0, shape, scratch.mean);
  const wanted = shape.isValve ? card + (seen - scratch.mean) / h.ratioMean : seen * (card / scratch.mean);
  return nearest(slipsOf(card), wanted);
}

/** The belief before any reading. */
export function priorBelief(given: Case, hypotheses: readonly Hypothesis[]): Belief {
  const count = hypotheses.length;
  const belief: Belief = {
    hypotheses,
    means: new Float64Array(count * SIZE),
    covariances: new Float64Array(count * SQUARE),
    logWeights: new Float64Array(count),
    cards: new Float64Array(count),
    unslipped: new Float64Array(count).fill(Number.NaN),
    alive: hypotheses.map((_, i) => i),
  };
  const scratch = emptyPrediction();
  hypotheses.forEach((h, i) => {
    belief.logWeights[i] = h.logWeight;
    belief.cards[i] = (given.input.cardLobeLift ?? 0) / h.set.cardDivisor;
    setPrior(belief, i, h, given);
    if (!h.set.slippedCard) return;
    belief.cards[i] = slippedCard(belief, i, h, given, scratch);
    setPrior(belief, i, h, given);
  });
  return belief;
}
