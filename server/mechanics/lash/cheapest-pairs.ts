/**
 * Which column each row takes, each column once at the most, so that the costs together are least.
 *
 * Equation: least Σ cost(row, column(row)); by shortest augmenting paths with potentials
 *
 * @param costs one row for each that wants a column, all of one length, not fewer columns than rows; finite
 * @returns the index of its column for each row
 *
 * Validity: rows ≤ columns. The time grows with rows² × columns.
 * Source: the assignment problem; the method of H. W. Kuhn, Naval Research Logistics Quarterly 2 (1955), 83-97.
 */
export function cheapestPairs(costs: readonly (readonly number[])[]): number[] {
  const rows = costs.length;
  const columns = costs[0]?.length ?? 0;
  const ofRow = new Float64Array(rows + 1);
  const ofColumn = new Float64Array(columns + 1);
  /** Row that has each column, from 1; 0 for none. */
  const taken = new Int32Array(columns + 1);
  const before = new Int32Array(columns + 1);
  for (let row = 1; row <= rows; row += 1) {
    taken[0] = row;
    let at = 0;
    const least = new Float64Array(columns + 1).fill(Number.POSITIVE_INFINITY);
    const done = new Uint8Array(columns + 1);
    do {
      done[at] = 1;
      const from = taken[at] ?? 0;
      let step = Number.POSITIVE_INFINITY;
      let next = 0;
      for (let column = 1; column <= columns; column += 1) {
        if (done[column] === 1) continue;
        const cost = costs[from - 1]?.[column - 1] ?? 0;
        const reduced = cost - (ofRow[from] ?? 0) - (ofColumn[column] ?? 0);
        if (reduced < (least[column] ?? 0)) {
          least[column] = reduced;
          before[column] = at;
        }
        if ((least[column] ?? 0) < step) {
          step = least[column] ?? 0;
          next = column;
        }
      }
      for (let column = 0; column <= columns; column += 1) {
        if (done[column] === 1) {
          const owner = taken[column] ?? 0;
          ofRow[owner] = (ofRow[owner] ?? 0) + step;
          ofColumn[column] = (ofColumn[column] ?? 0) - step;
        } else least[column] = (least[column] ?? 0) - step;
      }
      at = next;
    } while (taken[at] !== 0);
    while (at !== 0) {
      const last = before[at] ?? 0;
      taken[at] = taken[last] ?? 0;
      at = last;
    }
  }
  const found = new Array<number>(rows).fill(0);
  taken.forEach((row, column) => {
    if (row > 0 && column > 0) found[row - 1] = column - 1;
  });
  return found;
}
