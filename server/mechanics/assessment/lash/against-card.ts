import { isHydraulicLifter } from '../../../../shared/lifters.ts';
import { planOf } from '../../../../shared/schemas/goals.ts';
import { allowance } from '../../kit/allowances.ts';
import { EQUAL } from '../../kit/nearest.ts';
import { changeBetween } from '../../lash/growth.ts';
import type { Headline } from '../assessment.ts';
import { gapSaid } from '../common/gap-said.ts';
import { lashDone } from '../common/lash-done.ts';
import { type LashWanted, lashWanted } from '../common/lash-wanted.ts';
import { bareInches, inches, keyOf, placeOf, upperFirst, valveSubject } from '../common/said.ts';
import { usableLash } from '../common/usable-lash.ts';
import type { Bounds, Evidence, ValvePlace } from '../evidence.ts';

/** A gap that was found other than it is asked for at that heat. */
interface OffCard {
  readonly found: Bounds;
  readonly wanted: LashWanted;
  /** The least and the most that it is over; negative where it is tight. */
  readonly low: number;
  readonly high: number;
}

/** What was found last against what the card, or the metals from the card, ask for at that heat; nothing where it is that. */
function offCard(evidence: Evidence, place: ValvePlace): OffCard | undefined {
  if (isHydraulicLifter(evidence.engine.lifter) || lashDone(evidence, place) !== undefined) return undefined;
  const line = usableLash(evidence, place);
  const wanted = line?.moment === 'found' ? lashWanted(evidence, line) : undefined;
  if (line === undefined || wanted === undefined) return undefined;
  const { low, high } = changeBetween(line.gap, { value: wanted.gap });
  if (low === undefined || high === undefined || high + wanted.gap <= EQUAL) return undefined;
  const step = allowance('lash-as-set') + EQUAL;
  return low > step || high < -step ? { found: line.gap, wanted, low, high } : undefined;
}

/** `.010 in tight`, `.004 to .006 in wide` */
function bySaid({ low, high }: OffCard): string {
  const [least, most] = low > 0 ? [low, high] : [-high, -low];
  const by = most - least > EQUAL ? `${bareInches(least)} to ${inches(most)}` : inches(least);
  return `${by} ${low > 0 ? 'wide' : 'tight'}`;
}

const askedFor = ({ wanted: { gap, heat, from } }: OffCard): string =>
  from === 'card'
    ? `the card asks for ${inches(gap)}`
    : `by the metals about ${inches(gap)} is asked for ${heat}`;

/** A call about lash, or about a valve that is not like the others. */
const isAbout = ({ call: { goal } }: Evidence): boolean => {
  const { asks, waitsFor } = planOf(goal);
  return asks.includes('adjuster') || waitsFor.includes('sheet');
};

/** What is told of a valve whose gap nothing else is told of. */
export function offCardHeadline(evidence: Evidence, place: ValvePlace): Headline[] {
  const off = isAbout(evidence) ? offCard(evidence, place) : undefined;
  if (off === undefined) return [];
  const about = valveSubject(place);
  return [
    {
      id: `headline:lash:${keyOf(about)}`,
      about,
      step: 'adjuster',
      sentence: `${upperFirst(placeOf(place))}: found at ${gapSaid(off.found)} ${off.wanted.heat}, ${askedFor(off)}: ${bySaid(off)}.`,
      quantityId: `lash:${keyOf(about)}`,
    },
  ];
}
