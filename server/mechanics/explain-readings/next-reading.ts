import { mistakesKey } from './accounts.ts';
import { type Belief, SQUARE } from './belief.ts';
import type { Case } from './case.ts';
import type { Hypothesis } from './hypotheses.ts';
import { bitsOfQuestion, bitsOfReading, type Forecast } from './information.ts';
import { type Offer, offersFor } from './offers.ts';
import { emptyPrediction, mirrored, predict, RATIO, SIZE, shapeOf } from './reading-model.ts';
import type { ExplainReading } from './types.ts';
import { chanceFound, renewZero, spreadThrough } from './update.ts';

/** Accounts lighter than this are not worth a forecast. */
const TOO_LIGHT = 5e-4;

/** The accounts that a forecast looks at, with the class of answer each stands for. */
interface Field {
  readonly indices: readonly number[];
  readonly weights: Float64Array;
  readonly classOf: Int32Array;
  readonly classes: number;
}

function fieldOf(belief: Belief, weights: Float64Array, classKey: (i: number) => string | number): Field {
  const indices = belief.alive.filter((i) => (weights[i] ?? 0) >= TOO_LIGHT);
  let total = 0;
  for (const i of indices) total += weights[i] ?? 0;
  const keys = new Map<string | number, number>();
  const classOf = Int32Array.from(indices, (i) => {
    const key = classKey(i);
    const known = keys.get(key);
    if (known !== undefined) return known;
    keys.set(key, keys.size);
    return keys.size - 1;
  });
  const kept = Float64Array.from(indices, (i) => (weights[i] ?? 0) / total);
  return { indices, weights: kept, classOf, classes: keys.size };
}

export interface Weighed {
  readonly offer: Offer;
  readonly bits: number;
  readonly forecast?: Forecast;
  readonly indices: readonly number[];
  readonly weights: Float64Array;
}

function onTheDial(h: Hypothesis, mean: number, shape: ReturnType<typeof shapeOf>): number {
  return h.set.backwards && shape.isValve && !shape.counted ? mirrored(mean, shape.perTurn) : mean;
}

/**
 * Forecast of an offered reading over the field, and the bits it tells about the ratio inside the
 * accounts: -1/2 sum w log2(1 - (Sh)_R^2 / (s (S_RR + (floor R)^2))).
 */
function forecastOf(
  given: Case,
  belief: Belief,
  field: Field,
  offer: Offer & { readonly reading: ExplainReading },
) {
  const a = given.assumed;
  const shape = shapeOf(offer.reading, a);
  const plainZero = a.dialHalfWidth / Math.sqrt(3);
  const state = new Float64Array(SIZE);
  const covariance = new Float64Array(SQUARE);
  const k = new Float64Array(SIZE);
  const scratch = emptyPrediction();
  const means = new Float64Array(field.indices.length);
  const spreads = new Float64Array(field.indices.length);
  let inside = 0;
  field.indices.forEach((i, at) => {
    const h = belief.hypotheses[i];
    if (h === undefined) return;
    state.set(belief.means.subarray(i * SIZE, (i + 1) * SIZE));
    covariance.set(belief.covariances.subarray(i * SQUARE, (i + 1) * SQUARE));
    if (offer.renewed && h.set.zeroRenewed) renewZero(state, covariance, 0, plainZero);
    predict(h, shape, a, state, 0, belief.cards[i] ?? 0, scratch);
    const s = spreadThrough(covariance, 0, scratch.gradient, k) + scratch.variance;
    means[at] = onTheDial(h, scratch.mean, shape);
    spreads[at] = Math.sqrt(s);
    const ratio = state[RATIO] ?? 0;
    const known = (k[RATIO] ?? 0) ** 2 / (s * ((covariance[0] ?? 0) + (a.ratioFloorShare * ratio) ** 2));
    inside -= ((field.weights[at] ?? 0) * Math.log2(1 - known)) / 2;
  });
  const forecast: Forecast = {
    weights: field.weights,
    means,
    spreads,
    classOf: field.classOf,
    classes: field.classes,
  };
  return { forecast, inside };
}

function weigh(given: Case, belief: Belief, field: Field, offer: Offer, ratioCounts: boolean): Weighed {
  const { reading } = offer;
  if (reading === undefined) {
    const found = Float64Array.from(field.indices, (i) => {
      const h = belief.hypotheses[i];
      return h === undefined ? 0 : chanceFound(h, 'read-back', given);
    });
    const bits = bitsOfQuestion(field.weights, found, field.classOf, field.classes);
    return { offer, bits, indices: field.indices, weights: field.weights };
  }
  const { forecast, inside } = forecastOf(given, belief, field, { ...offer, reading });
  const bits = bitsOfReading(forecast) + (ratioCounts ? inside : 0);
  return { offer, bits, forecast, indices: field.indices, weights: field.weights };
}

/** All offers, each with the bits it would tell. `mistakeOnly`: name and ratio are settled already. */
export function weighOffers(
  given: Case,
  belief: Belief,
  weights: Float64Array,
  somethingElse: number,
  mistakeOnly: boolean,
): Weighed[] {
  const step = given.assumed.ratioStep;
  const ratioClass = (i: number) => Math.round(Math.log(belief.means[i * SIZE + RATIO] ?? 1) / step);
  const mistakeSet = (i: number) => {
    const h = belief.hypotheses[i];
    return h === undefined ? '' : mistakesKey(h);
  };
  const field = fieldOf(belief, weights, mistakeOnly ? mistakeSet : ratioClass);
  return offersFor(given, somethingElse).map((offer) => weigh(given, belief, field, offer, !mistakeOnly));
}

/** The offer that tells most per minute, of those that tell enough at all. */
export function bestOffer(weighed: readonly Weighed[], leastBits: number): Weighed | undefined {
  let best: Weighed | undefined;
  for (const one of weighed) {
    if (one.bits <= leastBits) continue;
    if (best === undefined || one.bits / one.offer.minutes > best.bits / best.offer.minutes) best = one;
  }
  return best;
}
