import { defined } from '../../../../shared/defined.ts';
import { isHydraulicLifter } from '../../../../shared/lifters.ts';
import { planOf } from '../../../../shared/schemas/goals.ts';
import { allowance } from '../../kit/allowances.ts';
import { EQUAL } from '../../kit/nearest.ts';
import { changeBetween } from '../../lash/growth.ts';
import type { Headline } from '../assessment.ts';
import { lashSaid } from '../common/gap-said.ts';
import { lashDone } from '../common/lash-done.ts';
import { type LashWanted, lashWanted } from '../common/lash-wanted.ts';
import { bareFeeler, feeler, inches, keyOf, placeOf, upperFirst, valveSubject } from '../common/said.ts';
import { hasShims } from '../common/shimmed.ts';
import { usableLash } from '../common/usable-lash.ts';
import type { Bounds, Evidence, ValvePlace } from '../evidence.ts';

type Way = 'wide' | 'tight';

/** A gap that was found other than it is asked for at that heat. */
interface OffCard {
  readonly found: Bounds;
  readonly wanted: LashWanted;
  /** The least and the most that it is over; negative where it is tight. An end that no gauge gave is left out. */
  readonly low?: number;
  readonly high?: number;
  /** On which side it is, where its gauges tell. */
  readonly way?: Way;
}

/** What was found last against what the card, or the metals from the card, ask for at that heat; nothing where it is that. */
function offCard(evidence: Evidence, place: ValvePlace): OffCard | undefined {
  if (isHydraulicLifter(evidence.engine.lifter) || lashDone(evidence, place) !== undefined) return undefined;
  const line = usableLash(evidence, place);
  const wanted = line?.moment === 'found' ? lashWanted(evidence, line) : undefined;
  if (line === undefined || wanted === undefined) return undefined;
  const { low, high } = changeBetween(line.gap, { value: wanted.gap });
  // Without a gap nothing is told by how much: it is told that there is none.
  if (high !== undefined && high + wanted.gap <= EQUAL) return undefined;
  const step = allowance('lash-as-set') + EQUAL;
  const way: Way | undefined =
    low !== undefined && low > step ? 'wide' : high !== undefined && high < -step ? 'tight' : undefined;
  return { found: line.gap, wanted, ...defined({ low, high, way }) };
}

/** `.010 in tight`, `.004 to .006 in wide`, `at least .022 in wide` */
function bySaid({ low, high }: OffCard, way: Way): string {
  const [least, most] = way === 'wide' ? [low, high] : [negated(high), negated(low)];
  if (least === undefined) return way;
  if (most === undefined) return `at least ${feeler(least)} ${way}`;
  return `${most - least > EQUAL ? `${bareFeeler(least)} to ${feeler(most)}` : feeler(least)} ${way}`;
}

const negated = (si: number | undefined): number | undefined => (si === undefined ? undefined : -si);

/** Gauges leave open on which side of what is asked for it is: a leaf between them is tried before anything is turned. */
export const isUntold = (evidence: Evidence, place: ValvePlace): boolean => {
  const off = offCard(evidence, place);
  return off !== undefined && off.way === undefined;
};

const askedFor = ({ wanted: { gap, heat, from } }: OffCard): string =>
  from === 'card'
    ? `the card asks for ${inches(gap)}`
    : `by the metals about ${inches(gap)} is asked for ${heat}`;

const UNTOLD = 'whether it is tight or wide can’t be told by these gauges, a leaf between them tells';

/** A call about lash, or about a valve that is not like the others. */
const isAbout = ({ call: { goal } }: Evidence): boolean => {
  const { asks, waitsFor } = planOf(goal);
  return asks.includes('adjuster') || waitsFor.includes('sheet');
};

/** Of a follower no sum tells what sets it: how it is set all the same. */
const setBySaid = (evidence: Evidence): string =>
  evidence.engine.gear === 'finger-follower' && !hasShims(evidence)
    ? ' It is set by the screw at its pivot, in small steps with a feeler in the gap after each, or by the pad or shim over the stem: the engine maker’s way goes first.'
    : '';

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
      sentence: `${upperFirst(placeOf(place))}: found at ${lashSaid(off.found)} ${off.wanted.heat}, ${askedFor(off)}: ${off.way === undefined ? UNTOLD : bySaid(off, off.way)}.${off.way === undefined ? '' : setBySaid(evidence)}`,
      quantityId: `lash:${keyOf(about)}`,
    },
  ];
}

/** The same after what else is told of it: ` The card asks for .008 in: .004 to .006 in wide.` */
export function besideCard(evidence: Evidence, place: ValvePlace): string {
  const off = isAbout(evidence) ? offCard(evidence, place) : undefined;
  return off?.way === undefined ? '' : ` ${upperFirst(askedFor(off))}: ${bySaid(off, off.way)}.`;
}
