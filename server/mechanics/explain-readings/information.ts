/** A reading predicted by several accounts, each of which belongs to a class of answers. */
export interface Forecast {
  readonly weights: Float64Array;
  /** Predicted reading and its standard deviation under each account. */
  readonly means: Float64Array;
  readonly spreads: Float64Array;
  /** Class of each account, 0 to `classes` - 1. */
  readonly classOf: Int32Array;
  readonly classes: number;
}

/** Steps of the integration per smallest spread, and how many spreads it reaches out. */
const STEPS_PER_SPREAD = 2;
const REACH = 6;
const MOST_STEPS = 4000;

interface Grid {
  readonly from: number;
  readonly step: number;
  readonly count: number;
}

function grid(forecast: Forecast): Grid {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < forecast.weights.length; i++) {
    const spread = forecast.spreads[i] ?? 0;
    low = Math.min(low, (forecast.means[i] ?? 0) - REACH * spread);
    high = Math.max(high, (forecast.means[i] ?? 0) + REACH * spread);
    least = Math.min(least, spread);
  }
  const step = Math.max(least / STEPS_PER_SPREAD, (high - low) / MOST_STEPS);
  return { from: low, step, count: Math.ceil((high - low) / step) + 1 };
}

/** Adds one account's weighted density to its class on the grid, by a recurrence instead of exponentials. */
function addDensity(densities: Float64Array, forecast: Forecast, i: number, g: Grid): void {
  const offset = (forecast.classOf[i] ?? 0) * g.count;
  const mean = forecast.means[i] ?? 0;
  const spread = forecast.spreads[i] ?? 1;
  const first = Math.max(0, Math.floor((mean - REACH * spread - g.from) / g.step));
  const last = Math.min(g.count - 1, Math.ceil((mean + REACH * spread - g.from) / g.step));
  const stride = g.step / spread;
  const z = (g.from + first * g.step - mean) / spread;
  let density = ((forecast.weights[i] ?? 0) / (spread * Math.sqrt(2 * Math.PI))) * Math.exp(-(z * z) / 2);
  let factor = Math.exp(-stride * z - (stride * stride) / 2);
  const shrink = Math.exp(-stride * stride);
  for (let k = first; k <= last; k++) {
    densities[offset + k] = (densities[offset + k] ?? 0) + density;
    density *= factor;
    factor *= shrink;
  }
}

function classWeights(weights: Float64Array, classOf: Int32Array, classes: number): Float64Array {
  const sums = new Float64Array(classes);
  weights.forEach((weight, i) => {
    const c = classOf[i] ?? 0;
    sums[c] = (sums[c] ?? 0) + weight;
  });
  return sums;
}

/** x log2 x, 0 at 0. */
function xLog(x: number): number {
  return x > 0 ? x * Math.log2(x) : 0;
}

/**
 * Bits that a reading tells about the class: sum over c of the integral of
 * p_c log2(p_c / (w_c p)), by the trapezoid rule. Source: information theory (mutual information).
 */
export function bitsOfReading(forecast: Forecast): number {
  const g = grid(forecast);
  const densities = new Float64Array(forecast.classes * g.count);
  for (let i = 0; i < forecast.weights.length; i++) {
    addDensity(densities, forecast, i, g);
  }
  let sum = 0;
  for (let k = 0; k < g.count; k++) {
    let all = 0;
    for (let c = 0; c < forecast.classes; c++) {
      const density = densities[c * g.count + k] ?? 0;
      if (density === 0) continue;
      sum += xLog(density);
      all += density;
    }
    sum -= xLog(all);
  }
  let bits = sum * g.step;
  for (const weight of classWeights(forecast.weights, forecast.classOf, forecast.classes))
    bits -= xLog(weight);
  return Math.max(0, bits);
}

/** Bits that a question with two outcomes tells about the class; `found` is each account's chance. */
export function bitsOfQuestion(
  weights: Float64Array,
  found: Float64Array,
  classOf: Int32Array,
  classes: number,
): number {
  const yes = new Float64Array(classes);
  const sums = classWeights(weights, classOf, classes);
  weights.forEach((weight, i) => {
    const c = classOf[i] ?? 0;
    yes[c] = (yes[c] ?? 0) + weight * (found[i] ?? 0);
  });
  let bits = 0;
  let allYes = 0;
  let total = 0;
  sums.forEach((weight, c) => {
    const hit = yes[c] ?? 0;
    bits += xLog(hit) + xLog(weight - hit) - xLog(weight);
    allYes += hit;
    total += weight;
  });
  return Math.max(0, bits - xLog(allYes) - xLog(total - allYes));
}
