import { EQUAL } from '../kit/nearest.ts';
import { cheapestPairs } from './cheapest-pairs.ts';

/** A valve whose lash a shim sets: what is in it, and the gap found with that. */
export interface ShimWanted {
  readonly fitted: number;
  readonly found: number;
  readonly wanted: number;
}

export interface ShimChosen {
  readonly shim: number;
  /** The lash that it gives. */
  readonly lash: number;
  /** Its own shim stays, it comes out of stock, or from the valve of that index. */
  readonly from: 'own' | 'stock' | number;
}

interface Candidate {
  readonly shim: number;
  readonly owner: number | undefined;
}

/** No valve goes without a shim while another may have one: more than all gaps of an engine together [m]. */
const WITHOUT = 10;
/** As many valves as can be come near enough before any other comes nearer without: more than all gaps together [m]. */
const MISSES = 0.1;
/**
 * Of ways as good the one with the least work: a shim that stays costs nothing, one from another valve one move, one out
 * of stock two. All of it together is less than any tool reads [m].
 */
const FROM_ANOTHER_VALVE = 1e-6;
const OUT_OF_STOCK = 2 * FROM_ANOTHER_VALVE;
const OF_THE_REST = 1e-3;

const lashWith = ({ fitted, found }: ShimWanted, shim: number): number => fitted + found - shim;

function costOf(valve: ShimWanted, index: number, { shim, owner }: Candidate, within: number): number {
  const lash = lashWith(valve, shim);
  // A shim that takes up all of the gap holds the valve off its seat.
  if (lash <= EQUAL && Math.abs(lash - valve.wanted) > EQUAL) return WITHOUT;
  const off = Math.abs(lash - valve.wanted);
  const work = owner === undefined ? OUT_OF_STOCK : owner === index ? 0 : FROM_ANOTHER_VALVE;
  const misses = off > within + EQUAL ? MISSES : 0;
  return misses + Math.max(0, off - within) + OF_THE_REST * off + work;
}

/**
 * A shim for each valve out of those in the engine and those in stock, each used once, so that the lashes come as near
 * to what is wanted as the shims allow together: first as many as can be within what is left as it is, then the rest.
 *
 * Equation: lash with shim s = fitted + found − s; fewest with |lash − wanted| > within, then
 * least Σ max(0, |lash − wanted| − within), then least work: moves from valve to valve + 2 · shims out of stock
 *
 * @param valves [m] fitted, found and wanted of each
 * @param stock [m] shims in stock, each there once; twice in the list for two
 * @param within [m] a lash this near to what is wanted is left as it is
 * @returns for each valve shim [m], lash [m] and where the shim comes from; undefined where none leaves a gap
 *
 * Validity: shims whose whole thickness stands in the gap, as `lash-shim` has it.
 * Source: derived here; moving shims between valves is common practice, no published source.
 */
export function chooseShims(
  valves: readonly ShimWanted[],
  stock: readonly number[],
  within: number,
): (ShimChosen | undefined)[] {
  const pool: Candidate[] = [
    ...valves.map(({ fitted }, owner) => ({ shim: fitted, owner })),
    ...stock.toSorted((a, b) => a - b).map((shim) => ({ shim, owner: undefined })),
  ];
  // One place more for each valve: to go without.
  const costs = valves.map((valve, index) => [
    ...pool.map((candidate) => costOf(valve, index, candidate, within)),
    ...valves.map(() => WITHOUT),
  ]);
  return cheapestPairs(costs).map((column, index): ShimChosen | undefined => {
    const [valve, candidate] = [valves[index], pool[column]];
    if (valve === undefined || candidate === undefined || (costs[index]?.[column] ?? WITHOUT) >= WITHOUT)
      return undefined;
    const { shim, owner } = candidate;
    const from = owner === undefined ? 'stock' : owner === index ? 'own' : owner;
    return { shim, lash: Math.max(0, lashWith(valve, shim)), from };
  });
}
