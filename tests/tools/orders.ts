/** The same entries as they were made, backwards, and every second one first: whatever came first, the same is said. */
export const inThreeOrders = <T>(entries: readonly T[]): readonly (readonly T[])[] => [
  entries,
  entries.toReversed(),
  [...entries.filter((_, at) => at % 2 === 1), ...entries.filter((_, at) => at % 2 === 0)],
];
