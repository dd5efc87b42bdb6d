import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cheapestPairs } from '../../../server/mechanics/lash/cheapest-pairs.ts';

type Costs = readonly (readonly number[])[];

const totalOf = (costs: Costs, columns: readonly number[]) =>
  columns.reduce((sum, column, row) => sum + (costs[row]?.[column] ?? Number.NaN), 0);

/** The least of all ways there are, one by one: the second route. */
function leastOf([row, ...rest]: Costs, taken: ReadonlySet<number> = new Set()): number {
  if (row === undefined) return 0;
  return Math.min(
    ...row.flatMap((cost, column) =>
      taken.has(column) ? [] : [cost + leastOf(rest, new Set([...taken, column]))],
    ),
  );
}

const costsOf = (rows: number, columns: number, cost: fc.Arbitrary<number>) =>
  fc.array(fc.array(cost, { minLength: columns, maxLength: columns }), { minLength: rows, maxLength: rows });

test('Kuhn’s method is as cheap as the best of all ways, each column once', () => {
  const sizes = fc
    .tuple(fc.integer({ min: 1, max: 5 }), fc.integer({ min: 0, max: 2 }))
    .chain(([rows, more]) => costsOf(rows, rows + more, fc.integer({ min: -20, max: 20 })));
  fc.assert(
    fc.property(sizes, (costs) => {
      const columns = cheapestPairs(costs);
      expect(columns).toHaveLength(costs.length);
      expect(new Set(columns).size).toBe(columns.length);
      expect(totalOf(costs, columns)).toBe(leastOf(costs));
    }),
    { numRuns: 200 },
  );
});

test.each([
  // Worked by hand: the cheapest cell of the first row is worth giving up.
  [
    [
      [1, 2],
      [1, 9],
    ],
    [1, 0],
  ],
  [
    [
      [4, 1, 3],
      [2, 0, 5],
      [3, 2, 2],
    ],
    [1, 0, 2],
  ],
  [[[7]], [0]],
  [[[3, 1, 2]], [1]],
  [[], []],
] as const)('%j takes %j', (costs, wanted) => {
  expect(cheapestPairs(costs)).toEqual(wanted);
});
