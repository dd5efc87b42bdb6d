/** A fit of columns to observations. */
export interface Fit {
  readonly estimates: readonly number[];
  /** Covariance of the estimates where every observation has variance one over its weight. */
  readonly covariance: readonly (readonly number[])[];
  /** Observation less fit. */
  readonly residuals: readonly number[];
  /** Sum of weighted squares of the residuals. */
  readonly residualSquares: number;
}

/** Columns that share all but this part of their length can't be told apart. */
const DEPENDENT = 1e-10;

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, index) => sum + value * (b[index] ?? 0), 0);

const lessTimes = (a: readonly number[], factor: number, b: readonly number[]): number[] =>
  a.map((value, index) => value - factor * (b[index] ?? 0));

interface Triangle {
  readonly q: number[][];
  /** Upper triangle by rows: r[i][j] is the part of column j along q[i]. */
  readonly r: number[][];
}

/** Splits columns into square directions, each column cleaned twice; undefined where one depends on the others. */
function orthogonal(columns: readonly (readonly number[])[]): Triangle | undefined {
  const q: number[][] = [];
  const r: number[][] = columns.map(() => columns.map(() => 0));
  for (const [j, column] of columns.entries()) {
    let left = [...column];
    for (const _pass of [1, 2]) {
      for (const [i, direction] of q.entries()) {
        const part = dot(direction, left);
        left = lessTimes(left, part, direction);
        const row = r[i];
        if (row !== undefined) row[j] = (row[j] ?? 0) + part;
      }
    }
    const size = Math.sqrt(dot(left, left));
    const whole = Math.sqrt(dot(column, column));
    if (!(size > DEPENDENT * whole)) return undefined;
    const row = r[j];
    if (row !== undefined) row[j] = size;
    q.push(left.map((value) => value / size));
  }
  return { q, r };
}

/** Inverse of an upper triangle. */
function inverse(r: readonly (readonly number[])[]): number[][] {
  const size = r.length;
  const found: number[][] = r.map(() => new Array<number>(size).fill(0));
  for (let j = 0; j < size; j += 1) {
    for (let i = j; i >= 0; i -= 1) {
      const row = r[i] ?? [];
      let sum = i === j ? 1 : 0;
      for (let k = i + 1; k <= j; k += 1) sum -= (row[k] ?? 0) * (found[k]?.[j] ?? 0);
      const target = found[i];
      if (target !== undefined) target[j] = sum / (row[i] ?? 1);
    }
  }
  return found;
}

/**
 * Least squares of any number of columns.
 *
 * Equation: minimise Σ w_k (y_k − Σ_j b_j x_jk)²; covariance (XᵀWX)⁻¹
 *
 * @param columns [any] one list per estimate, each as long as the observations
 * @param observations [any] at least as many as columns
 * @param weights [any] one over the variance of each observation, above zero; left out, all one
 * @returns estimates, covariance, residuals, residualSquares; undefined where the columns can't be told apart
 *
 * Validity: the columns are taken for exact; orthogonal columns, so that no digits go in forming XᵀX.
 * Source: Å. Björck, Numerical Methods for Least Squares Problems, 1996, 2.4 (from memory).
 */
export function leastSquares(
  columns: readonly (readonly number[])[],
  observations: readonly number[],
  weights?: readonly number[],
): Fit | undefined {
  const roots = observations.map((_, index) => Math.sqrt(weights?.[index] ?? 1));
  const weighed = (list: readonly number[]) => list.map((value, index) => value * (roots[index] ?? 1));
  const triangle = orthogonal(columns.map(weighed));
  if (triangle === undefined) return undefined;
  let left = weighed(observations);
  const along = triangle.q.map((direction) => {
    const part = dot(direction, left);
    left = lessTimes(left, part, direction);
    return part;
  });
  const back = inverse(triangle.r);
  const estimates = back.map((row) => dot(row, along));
  return {
    estimates,
    covariance: back.map((row) => back.map((other) => dot(row, other))),
    residuals: observations.map(
      (y, index) => y - estimates.reduce((sum, b, j) => sum + b * (columns[j]?.[index] ?? 0), 0),
    ),
    residualSquares: dot(left, left),
  };
}

/** Correlations of estimates from their covariance; one on the diagonal. */
export function correlationsOf(covariance: readonly (readonly number[])[]): number[][] {
  const sizes = covariance.map((row, index) => Math.sqrt(row[index] ?? 0));
  return covariance.map((row, i) =>
    row.map((value, j) => (i === j ? 1 : value / ((sizes[i] ?? 1) * (sizes[j] ?? 1)))),
  );
}
