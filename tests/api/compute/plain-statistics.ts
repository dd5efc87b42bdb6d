/** Statistics by the book, apart from the service: sums, elimination and integrals. */
export const mean = (values: readonly number[]): number =>
  values.reduce((sum, each) => sum + each, 0) / values.length;

/** Standard deviation with n − 1. */
export function spread(values: readonly number[]): number {
  const middle = mean(values);
  return Math.sqrt(values.reduce((sum, each) => sum + (each - middle) ** 2, 0) / (values.length - 1));
}

/** Simpson's rule. */
function integral(f: (x: number) => number, from: number, to: number): number {
  const steps = 2000;
  const h = (to - from) / steps;
  let sum = f(from) + f(to);
  for (let index = 1; index < steps; index += 1) sum += (index % 2 === 1 ? 4 : 2) * f(from + index * h);
  return (sum * h) / 3;
}

/** Student's t with `inside` within ± of it: with t = √ν·tanθ the density is cos^(ν−1)θ, integrated and halved. */
export function studentFactor(inside: number, freedom: number): number {
  const density = (angle: number) => Math.cos(angle) ** (freedom - 1);
  // Nothing is left of the density beyond ten of its widths.
  const end = Math.min(Math.PI / 2, 10 / Math.sqrt(freedom));
  const whole = integral(density, 0, end);
  let [low, high] = [0, end];
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (integral(density, 0, middle) < inside * whole) low = middle;
    else high = middle;
  }
  return Math.sqrt(freedom) * Math.tan((low + high) / 2);
}

type Row = { readonly x: readonly number[]; readonly valve: number };

/** Least squares by the normal equations: estimates and the inverse of the normal matrix. */
export function solved(rows: readonly Row[]): { estimates: number[]; inverse: number[][] } {
  const size = rows[0]?.x.length ?? 0;
  const sum = (f: (row: Row) => number) => rows.reduce((total, row) => total + f(row), 0);
  const indices = Array.from({ length: size }, (_, index) => index);
  const matrix = indices.map((i) => [
    ...indices.map((j) => sum(({ x }) => (x[i] ?? 0) * (x[j] ?? 0))),
    ...indices.map((j) => (i === j ? 1 : 0)),
  ]);
  for (const i of indices) {
    const pivot = matrix[i]?.[i] ?? 1;
    matrix[i] = (matrix[i] ?? []).map((part) => part / pivot);
    for (const other of indices.filter((each) => each !== i)) {
      const times = matrix[other]?.[i] ?? 0;
      matrix[other] = (matrix[other] ?? []).map((part, k) => part - times * (matrix[i]?.[k] ?? 0));
    }
  }
  const inverse = matrix.map((row) => row.slice(size));
  const right = indices.map((i) => sum(({ x, valve }) => (x[i] ?? 0) * valve));
  const estimates = inverse.map((row) => row.reduce((total, part, j) => total + part * (right[j] ?? 0), 0));
  return { estimates, inverse };
}
