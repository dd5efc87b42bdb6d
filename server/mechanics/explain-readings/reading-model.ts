import type { Assumptions } from './assumptions.ts';
import { isHydraulic, isRunning } from './case.ts';
import type { Hypothesis } from './hypotheses.ts';
import type { ExplainReading } from './types.ts';

/** Places in the state: ratio, lobe lift, lash, flex, tilt, first sink, sink per pass, zero error. */
export const RATIO = 0;
export const LOBE = 1;
export const LASH = 2;
export const FLEX = 3;
export const TILT = 4;
export const SINK = 5;
export const SINK_PER_PASS = 6;
export const ZERO = 7;
export const SIZE = 8;

/** A predicted reading: its mean, the variance of the reading itself, the gradient in the state. */
export interface Prediction {
  mean: number;
  variance: number;
  readonly gradient: Float64Array;
}

/** Room for one prediction, to be filled again and again. */
export function emptyPrediction(): Prediction {
  return { mean: 0, variance: 0, gradient: new Float64Array(SIZE) };
}

/** What the valve-lift model needs of one reading, worked out once for all hypotheses. */
export interface ReadingShape {
  readonly isValve: boolean;
  readonly caliper: boolean;
  /** Lobe lift of the station, inches; NaN at full lift. */
  readonly station: number;
  readonly flexShare: number;
  readonly sinkShare: number;
  readonly earlierPasses: number;
  readonly lashShare: 0 | 1;
  readonly tiltShare: 0 | 1;
  readonly otherValve: boolean;
  readonly counted: boolean;
  readonly perTurn: number;
  readonly setUp: number;
  /** Variance of its tool, where that is no dial. */
  readonly ofTheTool: number | undefined;
}

/** Travel per turn of the usual .001 in dial, inches. Common practice. */
const ORDINARY_TURN = 0.1;

function sinkShare(reading: ExplainReading, assumed: Assumptions): number {
  if (!isHydraulic(reading)) return 0;
  return isRunning(reading) ? 1 : assumed.sinkLightShare;
}

/** Works out the shares of lash, flex, tilt and sink (0 to 1) that a reading carries. */
export function shapeOf(reading: ExplainReading, assumed: Assumptions): ReadingShape {
  return {
    isValve: reading.of === 'valve-lift',
    caliper: reading.method === 'caliper',
    station: reading.atLobeLift ?? Number.NaN,
    flexShare: isRunning(reading) ? 1 : assumed.flexLightShare,
    sinkShare: sinkShare(reading, assumed),
    earlierPasses: reading.pass - 1,
    lashShare: reading.lashSet || reading.otherValve ? 0 : 1,
    tiltShare: reading.aligned ? 0 : 1,
    otherValve: reading.otherValve ?? false,
    counted: reading.counted ?? false,
    perTurn: reading.perTurn ?? ORDINARY_TURN,
    setUp: reading.setUp,
    ofTheTool:
      reading.errorLimit === undefined ? undefined : (reading.errorLimit ** 2 / 3) * (reading.sharing ?? 1),
  };
}

/** A lobe lift read directly. `card`: the card's lobe lift as the hypothesis has it, inches. */
function predictLobe(
  h: Hypothesis,
  shape: ReadingShape,
  a: Assumptions,
  state: Float64Array,
  at: number,
  card: number,
  out: Prediction,
): void {
  const onCard = h.set.lobe === 'other-valve';
  const lobe = onCard ? card : (state[at + LOBE] ?? 0);
  const share = shape.caliper ? a.caliperShare : 1;
  const ofTheTool = shape.caliper
    ? a.readingHalfWidth ** 2 / 3 + (a.caliperSpreadShare * lobe) ** 2
    : (shape.ofTheTool ?? (a.readingHalfWidth ** 2 + a.dialHalfWidth ** 2) / 3);
  out.mean = share * lobe;
  out.variance = h.set.readingSpread ** 2 + ofTheTool + (onCard ? a.cardHalfWidth ** 2 / 3 : 0);
  out.gradient.fill(0);
  if (!onCard) out.gradient[LOBE] = share;
}

/**
 * A valve lift, inches: mean = (1 + T tilt) f + zero + turns, f = R L - G lash - q flex - B sink.
 * Source: design note, judgement; spreads marked in the assumptions.
 */
function predictValve(
  h: Hypothesis,
  shape: ReadingShape,
  a: Assumptions,
  state: Float64Array,
  at: number,
  out: Prediction,
): void {
  const { gradient } = out;
  const lobe = state[at + LOBE] ?? 0;
  const ratio = state[at + RATIO] ?? 0;
  const station = shape.station;
  const atStation = !Number.isNaN(station);
  const lift = atStation ? station : lobe;
  const atSeat = a.flexAtSeatShare;
  const flexShare = shape.flexShare * (atStation ? atSeat + (1 - atSeat) * Math.min(1, station / lobe) : 1);
  const sink = atStation
    ? a.sinkMean
    : (state[at + SINK] ?? 0) + shape.earlierPasses * (state[at + SINK_PER_PASS] ?? 0);
  const f =
    ratio * lift -
    shape.lashShare * (state[at + LASH] ?? 0) -
    flexShare * (state[at + FLEX] ?? 0) -
    shape.sinkShare * sink;
  const tilted = 1 + shape.tiltShare * (state[at + TILT] ?? 0);
  const zeroShare = atStation && !h.set.zeroAtStations ? 0 : 1;
  const turns = shape.counted ? 0 : h.set.turns * shape.perTurn;
  out.mean = tilted * f + zeroShare * (state[at + ZERO] ?? 0) + turns;

  let variance = h.set.readingSpread ** 2 + (shape.ofTheTool ?? a.readingHalfWidth ** 2 / 3);
  if (shape.lashShare === 0) variance += a.lashResetSpread ** 2;
  if (shape.tiltShare === 0) variance += (a.alignedSpread * f) ** 2;
  if (shape.otherValve) variance += (2 * (a.cardHalfWidth * ratio) ** 2) / 3;
  if (atStation) {
    variance +=
      ratio ** 2 * (h.set.readingSpread ** 2 + (a.readingHalfWidth ** 2 + a.dialHalfWidth ** 2) / 3) +
      (a.ratioChangePerInch * station * (station - lobe)) ** 2 +
      (a.sinkSpread * shape.sinkShare) ** 2;
  }
  out.variance = variance;

  gradient[RATIO] = tilted * lift;
  gradient[LOBE] = atStation ? 0 : tilted * ratio;
  gradient[LASH] = -tilted * shape.lashShare;
  gradient[FLEX] = -tilted * flexShare;
  gradient[TILT] = shape.tiltShare * f;
  gradient[SINK] = atStation ? 0 : -tilted * shape.sinkShare;
  gradient[SINK_PER_PASS] = atStation ? 0 : -tilted * shape.sinkShare * shape.earlierPasses;
  gradient[ZERO] = zeroShare;
}

/** Predicts one reading under a hypothesis from the state at offset `at`; lengths in inches. */
export function predict(
  h: Hypothesis,
  shape: ReadingShape,
  a: Assumptions,
  state: Float64Array,
  at: number,
  card: number,
  out: Prediction,
): void {
  if (shape.isValve) predictValve(h, shape, a, state, at, out);
  else predictLobe(h, shape, a, state, at, card, out);
}

/** What a hand read the wrong way shows instead of `lift`, and the other way round; inches. */
export function mirrored(lift: number, perTurn: number): number {
  const turns = Math.floor(lift / perTurn + 1e-9);
  return 2 * perTurn * turns + perTurn - lift;
}
