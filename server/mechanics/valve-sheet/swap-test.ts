import { allowance } from '../kit/allowances.ts';
import { EQUAL } from '../kit/nearest.ts';
import { pairsOf } from './pairs.ts';

/** A valve lift with one arm on one valve [m], brought to the same lobe lift as the others. */
export interface ArmOnValve {
  readonly arm: string;
  readonly place: string;
  readonly lift: number;
  /** 95 % half-width of that lift [m]; left out, as such readings repeat. */
  readonly half?: number;
  /** 95 % half-width of what everything read on that place has in common, such as its lobe [m]. */
  readonly placeHalf?: number;
}

export type SwapVerdict = 'part' | 'position' | 'both' | 'cannot-tell';

export interface SwapOutcome {
  readonly arms: readonly [string, string];
  readonly places: readonly [string, string];
  /** First arm less second, the mean over both places [m]. */
  readonly part: number;
  /** First place less second, the mean over both arms [m]. */
  readonly position: number;
  /** What neither arm nor place accounts for: half of what the difference of the arms changed between the places [m]. */
  readonly rest: number;
  /** 95 % half-width of part and rest [m]. */
  readonly half: number;
  /** The same of position, which carries the error of the lobes as well [m]. */
  readonly positionHalf: number;
  readonly verdict: SwapVerdict;
  /** Why it cannot be told: `gone` it showed on one fitting alone, `small` nothing differs by what counts. */
  readonly because?: 'gone' | 'small';
}

/** An effect counts when it is more than its own uncertainty, and may be what makes a valve odd. */
function counts(effect: number, half: number): boolean {
  const size = Math.abs(effect);
  return size > half + EQUAL && size + half > allowance('odd-beyond') + EQUAL;
}

type Effects = Pick<SwapOutcome, 'part' | 'position' | 'rest' | 'half' | 'positionHalf'>;

/** A difference may be half the part's and half the position's, each too small to make a valve odd by itself. */
function split({ part, position, half, positionHalf }: Effects): boolean {
  const both = Math.abs(part) + Math.abs(position);
  const seen = Math.abs(part) > half + EQUAL && Math.abs(position) > positionHalf + EQUAL;
  return seen && both > allowance('odd-beyond') + EQUAL;
}

function verdictOf(effects: Effects): Pick<SwapOutcome, 'verdict' | 'because'> {
  const { part, position, rest, half, positionHalf } = effects;
  if (counts(rest, half)) return { verdict: 'cannot-tell', because: 'gone' };
  const [ofPart, ofPosition] = [counts(part, half), counts(position, positionHalf)];
  if (ofPart && ofPosition) return { verdict: 'both' };
  if (ofPart) return { verdict: 'part' };
  if (ofPosition) return { verdict: 'position' };
  return split(effects) ? { verdict: 'both' } : { verdict: 'cannot-tell', because: 'small' };
}

/**
 * What a swap of two arms between two valves decides: a difference that follows the arm is the part, one that stays is
 * the position or the way it was measured, one that does both is both, and one that showed on one fitting alone tells
 * nothing.
 *
 * Equation: part = ½[(A on P − B on P) + (A on Q − B on Q)]; position = ½[(A on P − A on Q) + (B on P − B on Q)];
 * rest = ½[(A on P − B on P) − (A on Q − B on Q)]; each ± ½√(Σu²), position beside it ± what each place has in
 * common; it counts when it is over its ± and, with it, over .008 in
 *
 * @param readings [m] the lift of each arm on each valve
 * @returns an outcome for each pair of arms that was read on the same two valves
 *
 * Validity: same method, lifter, spring and lash throughout; lifts brought to one lobe lift.
 * Source: swap test, common practice, no published source; the three contrasts are main effects and interaction of a
 * 2 × 2 factorial design, G. E. P. Box, J. S. Hunter, W. G. Hunter, Statistics for Experimenters, 2nd ed. (2005),
 * chapter 5, from memory.
 */
export function swapTests(readings: readonly ArmOnValve[]): SwapOutcome[] {
  const found = new Map(readings.map((each) => [`${each.arm}\n${each.place}`, each] as const));
  const at = (arm: string, place: string) => found.get(`${arm}\n${place}`);
  const arms = [...new Set(readings.map(({ arm }) => arm))];
  const places = [...new Set(readings.map(({ place }) => place))];
  return pairsOf(arms).flatMap(([one, two]) =>
    pairsOf(places).flatMap(([here, there]): SwapOutcome[] => {
      const [a, b, c, d] = [at(one, here), at(two, here), at(one, there), at(two, there)];
      if (a === undefined || b === undefined || c === undefined || d === undefined) return [];
      const half = Math.hypot(...[a, b, c, d].map((each) => each.half ?? allowance('repeat'))) / 2;
      const common = Math.hypot(a.placeHalf ?? 0, c.placeHalf ?? 0);
      const part = (a.lift - b.lift + c.lift - d.lift) / 2;
      const position = (a.lift - c.lift + b.lift - d.lift) / 2;
      const rest = (a.lift - b.lift - c.lift + d.lift) / 2;
      const effects = { part, position, rest, half, positionHalf: Math.hypot(half, common) };
      return [{ arms: [one, two], places: [here, there], ...effects, ...verdictOf(effects) }];
    }),
  );
}
