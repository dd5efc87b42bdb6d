/** Coefficients of a Chebyshev fit to the complementary error function, relative error below 1.2e-7. */
const ERFC_FIT = [
  -1.26551223, 1.00002368, 0.37409196, 0.09678418, -0.18628806, 0.27886807, -1.13520398, 1.48851587,
  -0.82215223, 0.17087277,
] as const;

function erfc(x: number): number {
  const t = 1 / (1 + Math.abs(x) / 2);
  let sum = 0;
  for (let i = ERFC_FIT.length - 1; i >= 0; i--) sum = sum * t + (ERFC_FIT[i] ?? 0);
  const tail = t * Math.exp(-x * x + sum);
  return x >= 0 ? tail : 2 - tail;
}

/** Chance that a standard normal value is at most z (dimensionless). */
export function normalCdf(z: number): number {
  return erfc(-z / Math.SQRT2) / 2;
}

/** Density of a normal value at a distance from its mean, per unit of `spread`. */
export function normalDensity(distance: number, spread: number): number {
  const z = distance / spread;
  return Math.exp(-(z * z) / 2) / (spread * Math.sqrt(2 * Math.PI));
}
