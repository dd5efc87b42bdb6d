import { allowance } from '../kit/allowances.ts';

/** A valve lift with one arm on one valve [m], brought to the same lobe lift as the others. */
export interface ArmOnValve {
  readonly arm: string;
  readonly place: string;
  readonly lift: number;
}

export type SwapVerdict = 'part' | 'position' | 'both' | 'gone';

export interface SwapOutcome {
  readonly arms: readonly [string, string];
  readonly places: readonly [string, string];
  /** First arm less second, the mean over both places [m]. */
  readonly part: number;
  /** First place less second, the mean over both arms [m]. */
  readonly position: number;
  readonly verdict: SwapVerdict;
}

/**
 * What a swap of two arms between two valves decides: a difference that follows the arm is the part, one that stays
 * is the position or the way it was measured, and one that is gone came from the fitting.
 *
 * Equation: part = ½[(A on P − B on P) + (A on Q − B on Q)]; position = ½[(A on P − A on Q) + (B on P − B on Q)];
 * each counts when it is over .008 in
 *
 * @param readings [m] the newest lift of each arm on each valve
 * @returns an outcome for each pair of arms that was read on the same two valves
 *
 * Validity: same method, lifter, spring and lash throughout; lifts brought to one lobe lift.
 * Source: swap test, common practice, no published source; the two means are those of a 2 × 2 factorial design, G. E. P.
 * Box, J. S. Hunter, W. G. Hunter, Statistics for Experimenters, 2nd ed. (2005), chapter 5, from memory.
 */
export function swapTests(readings: readonly ArmOnValve[]): SwapOutcome[] {
  const lifts = new Map(readings.map(({ arm, place, lift }) => [`${arm}\n${place}`, lift] as const));
  const at = (arm: string, place: string) => lifts.get(`${arm}\n${place}`);
  const arms = [...new Set(readings.map(({ arm }) => arm))];
  const places = [...new Set(readings.map(({ place }) => place))];
  const found: SwapOutcome[] = [];
  for (const [one, two] of pairs(arms)) {
    for (const [here, there] of pairs(places)) {
      const [a, b, c, d] = [at(one, here), at(two, here), at(one, there), at(two, there)];
      if (a === undefined || b === undefined || c === undefined || d === undefined) continue;
      const part = (a - b + c - d) / 2;
      const position = (a - c + b - d) / 2;
      found.push({
        arms: [one, two],
        places: [here, there],
        part,
        position,
        verdict: verdictOf(part, position),
      });
    }
  }
  return found;
}

function verdictOf(part: number, position: number): SwapVerdict {
  const odd = allowance('odd-beyond') + 1e-12;
  const [partCounts, positionCounts] = [Math.abs(part) > odd, Math.abs(position) > odd];
  if (partCounts) return positionCounts ? 'both' : 'part';
  return positionCounts ? 'position' : 'gone';
}

function pairs(items: readonly string[]): [string, string][] {
  return items.flatMap((one, index) => items.slice(index + 1).map((two): [string, string] => [one, two]));
}
