import type { SwapOutcome } from './swap-test.ts';

interface Named {
  /** Which of the two arms differs from its siblings: 0 the first, 1 the second; left out where nothing tells. */
  readonly arm?: 0 | 1;
  /** The same of the two places. */
  readonly place?: 0 | 1;
}

interface Choice extends Named {
  /** How far the middle of the four lies from the siblings if this one is the odd one [m]. */
  readonly off: number;
}

const ARMS = [0, 1] as const;

/** What the middle of the four readings would be off by, for each arm and place that may be the odd one. */
function choices({ verdict, part, position }: SwapOutcome): Choice[] {
  const arms = ARMS.map((arm) => ({ arm, off: (arm === 0 ? part : -part) / 2 }));
  const places = ARMS.map((place) => ({ place, off: (place === 0 ? position : -position) / 2 }));
  if (verdict === 'part') return arms;
  if (verdict === 'position') return places;
  if (verdict !== 'both') return [];
  return arms.flatMap((one) => places.map((two) => ({ ...one, ...two, off: one.off + two.off })));
}

/**
 * Which arm, and which place, is the odd one of a swap: a swap tells that two arms differ, and only their siblings tell
 * which of them is unlike the rest.
 *
 * Equation: of the arms and places that may be odd, those for which ½(part or −part) + ½(position or −position) comes
 * nearest to the mean of the four readings less the siblings' median; none where two come as near within ±
 *
 * @param outcome [m] the swap
 * @param middle [m] mean of its four readings
 * @param siblings [m] median of the other valves of the side, read the same way; left out where none was
 *
 * Source: derived here from the additive model of the swap test; one odd arm and one odd place at the most.
 */
export function oddOfSwap(outcome: SwapOutcome, middle: number, siblings: number | undefined): Named {
  if (siblings === undefined) return {};
  const far = ({ off }: Choice) => Math.abs(middle - siblings - off);
  const [best, next] = choices(outcome).toSorted((one, two) => far(one) - far(two));
  if (best === undefined || next === undefined || far(next) - far(best) <= outcome.half) return {};
  const { off: _, ...named } = best;
  return named;
}
