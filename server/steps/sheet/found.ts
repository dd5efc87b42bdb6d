import type { Sheet } from '../../assessment/sheet/sheet.ts';

/** What the swaps decide, and which valves are odd. */
export const foundOnSheet = ({ springs }: Sheet): string[] =>
  springs.flatMap((on) => [
    ...on.swaps.map(({ places, words }) => `Swap of ${places.join(' and ')}: ${words}`),
    ...on.sides.flatMap(({ odd }) =>
      odd.map(({ cylinder, valve, words }) => `${cylinder} ${valve} is the odd one. ${words}`),
    ),
  ]);

/** The swap that would tell part from position, where one is still to be done. */
export const swapToDo = ({ springs }: Sheet): string[] =>
  springs
    .flatMap(({ sides }) => sides.flatMap(({ odd }) => odd.map(({ swap }) => swap)))
    .filter((swap) => swap !== undefined)
    .slice(0, 1);
