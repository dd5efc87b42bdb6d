/**
 * The angle less its sine, without losing figures where both are nearly equal.
 *
 * Equation: x − sin x; for |x| < ½ the series x³/3! − x⁵/5! + x⁷/7! − …, whose first term left out is below 1e-17
 * of the whole
 *
 * @param x [rad] any
 * @returns [1] x − sin x
 *
 * Source: Taylor's series of the sine; M. Abramowitz and I. A. Stegun, Handbook of Mathematical Functions (1964), 4.3.65.
 */
export function angleLessSine(x: number): number {
  if (Math.abs(x) >= 0.5) return x - Math.sin(x);
  let term = x ** 3 / 6;
  let sum = term;
  for (let n = 4; n <= 16; n += 2) {
    term *= (-x * x) / (n * (n + 1));
    sum += term;
  }
  return sum;
}
