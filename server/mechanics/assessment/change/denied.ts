import { toRead } from '../common/lack.ts';
import { byPlace, placeOf } from '../common/said.ts';
import { isRatio } from '../common/stamp-read.ts';
import type { AsRead, ValveRatio, WithheldRatio } from '../common/valve-ratio.ts';
import type { Evidence } from '../evidence.ts';
import type { ChangeRatio } from './detail.ts';
import { notMeasured, soldRatio, statedOnNow } from './stated-ratios.ts';
import { isOfAfter } from './whose-arms.ts';

/** What was read may be more than all that the interval holds; or less, where nothing that reads low is in it. */
const isOutside = ({ low, high, orMore }: AsRead, ratio: Pick<ChangeRatio, 'low' | 'high'>): boolean =>
  high > ratio.high || (!orMore && low < ratio.low);

/** What the sheet has of a valve, though nothing is worked out from it, is not what the arm is held to be. */
export function deniesStated({ cylinder, valve, asRead }: WithheldRatio, evidence: Evidence): boolean {
  const stated = statedOnNow(evidence, { cylinder, valve }) ?? soldRatio(evidence);
  return stated !== undefined && asRead !== undefined && isOutside(asRead, notMeasured(stated));
}

/** On a loaded train, or with the lash in, an arm reads less than it has. */
const asReadOf = ({ value, low, high, spring, lashIn }: ValveRatio): AsRead => ({
  value,
  low,
  high,
  orMore: spring !== 'light' || lashIn !== 'none',
});

const APART = toRead('ratio', 'another reading: two readings of this arm do not go together');

/** Another reading of these arms is more than all that the best of them may be. */
const alsoRead = (ratio: ChangeRatio, ratios: readonly ValveRatio[]): WithheldRatio[] =>
  ratios
    .filter(({ value }) => value > ratio.high)
    .map((each) => ({ ...each, lacks: [APART], asRead: asReadOf(each) }));

/** What was read of one valve: to calculate with, and not yet. */
interface ReadThere {
  readonly withheld: readonly WithheldRatio[];
  readonly ratios: readonly ValveRatio[];
}

/**
 * The reading of these very arms that a ratio does not hold, though nothing is calculated with that reading: no gap has a
 * word by the ratio before it is known which of the two is so.
 */
export function deniedBy(
  ratio: ChangeRatio | undefined,
  { withheld, ratios }: ReadThere,
  plan: number | undefined,
  evidence: Evidence,
): WithheldRatio | undefined {
  if (ratio === undefined) return undefined;
  const outside = withheld.filter(({ asRead }) => asRead !== undefined && isOutside(asRead, ratio));
  return [...outside, ...alsoRead(ratio, ratios)].find((each) => isOfAfter(each, plan, evidence));
}

/** Fewer valves than this say nothing of their side. */
const FEWEST = 3;

/**
 * The same of valves that nobody read, where every one of their side that was read denies it: no one arm makes that, and
 * what they are held to be is no ground for a word.
 */
export function deniedBySiblings(
  ratio: ChangeRatio | undefined,
  siblings: readonly ValveRatio[],
  plan: number | undefined,
  evidence: Evidence,
): WithheldRatio | undefined {
  const own = siblings
    .filter((each) => isOfAfter(each, plan, evidence))
    .toSorted((a, b) => b.value - a.value || byPlace(a, b));
  const [highest] = own;
  const isSide = new Set(own.map(placeOf)).size >= FEWEST;
  if (ratio === undefined || highest === undefined || !isSide) return undefined;
  if (!own.every((each) => isOutside(asReadOf(each), ratio))) return undefined;
  const { cylinder, valve } = highest;
  return {
    cylinder,
    valve,
    asRead: asReadOf(highest),
    lacks: [toRead('ratio', 'these valves read too: none of their side that was read is within that ratio')],
  };
}

/** The ratio as it was read, to say what it would leave; nothing where no arm has such a one. */
export function ratioAsRead({ asRead, lacks }: WithheldRatio, ratio: ChangeRatio): ChangeRatio | undefined {
  if (asRead === undefined || !isRatio(asRead.value)) return undefined;
  const { value, low, high } = asRead;
  return { ...ratio, from: 'measured', value, low, high, lacks };
}
