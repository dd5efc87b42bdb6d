import { normalCdf, normalDensity } from './normal.ts';

/** A weighted sum of normal distributions; weights sum to 1. */
export interface Mixture {
  readonly weights: Float64Array;
  readonly means: Float64Array;
  readonly spreads: Float64Array;
}

/** Chance that the value is at most x. */
export function mixtureCdf(mixture: Mixture, x: number): number {
  let sum = 0;
  for (let i = 0; i < mixture.weights.length; i++) {
    const z = (x - (mixture.means[i] ?? 0)) / (mixture.spreads[i] ?? 1);
    sum += (mixture.weights[i] ?? 0) * normalCdf(z);
  }
  return sum;
}

function mixtureDensity(mixture: Mixture, x: number): number {
  let sum = 0;
  for (let i = 0; i < mixture.weights.length; i++) {
    sum += (mixture.weights[i] ?? 0) * normalDensity(x - (mixture.means[i] ?? 0), mixture.spreads[i] ?? 1);
  }
  return sum;
}

function bounds(mixture: Mixture): [number, number] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < mixture.weights.length; i++) {
    const reach = 9 * (mixture.spreads[i] ?? 0);
    low = Math.min(low, (mixture.means[i] ?? 0) - reach);
    high = Math.max(high, (mixture.means[i] ?? 0) + reach);
  }
  return [low, high];
}

/** The value below which the share p (0 to 1) lies: Newton's steps, halving where they would leave. */
export function mixturePercentile(mixture: Mixture, p: number): number {
  let [low, high] = bounds(mixture);
  let x = (low + high) / 2;
  for (let step = 0; step < 100 && high - low > 1e-9; step++) {
    const above = mixtureCdf(mixture, x) - p;
    if (above > 0) high = x;
    else low = x;
    const next = x - above / mixtureDensity(mixture, x);
    const inside = next > low && next < high;
    if (inside && Math.abs(next - x) < 1e-9) return next;
    x = inside ? next : (low + high) / 2;
  }
  return x;
}
