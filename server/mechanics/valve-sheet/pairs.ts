/** Every two of these, each pair once. */
export const pairsOf = <Item>(items: readonly Item[]): [Item, Item][] =>
  items.flatMap((one, index) => items.slice(index + 1).map((two): [Item, Item] => [one, two]));
