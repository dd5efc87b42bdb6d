/** Density and lower tail of the normal distribution by a fine table: the tail by Simpson's rule from the density. */
const STEP = 0.01;
const REACH = 9;
const POINTS = Math.round((2 * REACH) / STEP) + 1;
const density = (x: number): number => Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);

function tails(): number[] {
  const found = [0];
  for (let index = 1; index < POINTS; index += 1) {
    const from = -REACH + (index - 1) * STEP;
    const area = (STEP / 6) * (density(from) + 4 * density(from + STEP / 2) + density(from + STEP));
    found.push((found[index - 1] ?? 0) + area);
  }
  return found;
}

const TAIL = tails();
const tailAt = (index: number): number => (index >= POINTS ? 1 : (TAIL[index] ?? 0));

/** Chance that n normal values lie within w of each other: n∫φ(x)[Φ(x + w) − Φ(x)]ⁿ⁻¹dx, w in whole steps. */
function within(n: number, steps: number): number {
  let sum = 0;
  for (let index = 0; index < POINTS; index += 1) {
    sum += density(-REACH + index * STEP) * (tailAt(index + steps) - tailAt(index)) ** (n - 1);
  }
  return n * sum * STEP;
}

/**
 * Mean and standard deviation of the range of n normal values, by Simpson's rule over w of 1 − P(range ≤ w) and of
 * 2w times that.
 */
export function rangeOfNormal(n: number): { d2: number; d3: number } {
  const panel = 8;
  const width = panel * STEP;
  const panels = 150;
  let [mean, square] = [0, 0];
  for (let index = 0; index <= panels; index += 1) {
    const weight = index === 0 || index === panels ? 1 : index % 2 === 1 ? 4 : 2;
    const beyond = 1 - within(n, index * panel);
    mean += (weight * width * beyond) / 3;
    square += (weight * width * 2 * index * width * beyond) / 3;
  }
  return { d2: mean, d3: Math.sqrt(square - mean ** 2) };
}
