import table from '../../../../seeds/setting.json' with { type: 'json' };
import { formatNumber, formatRatioInterval } from '../../../../shared/quantities/format.ts';
import { EQUAL } from '../../kit/nearest.ts';
import { saidLength } from '../../kit/said.ts';
import { IN } from '../../kit/si.ts';
import { seatPerAdvance } from '../../threads/adjuster-screw.ts';
import { bareInches, inches } from '../common/said.ts';
import type {
  FollowerEvidence,
  HeatEvidence,
  PreloadEvidence,
  PushrodEvidence,
  SetEvidence,
  StandEvidence,
  ThreadEvidence,
  TurnsEvidence,
} from '../evidence/kept-sums.ts';

/** A turn is counted to this: a sixteenth of one, common practice, no published source. */
const COUNTED = 1 / 16;

/** How far the preload may be off by the count of its turns. */
export function preloadWithin({ pitch, mount, ratio }: ThreadEvidence): number {
  return COUNTED * pitch * seatPerAdvance(mount, ratio);
}

/** How far the plunger would go past its bottom, zero where it just meets it; nothing while travel is left. */
export function pastBottom({ preload, travel }: PreloadEvidence): number | undefined {
  return travel === undefined || preload < travel - EQUAL ? undefined : Math.max(0, preload - travel);
}

/** How far that holds the valve off its seat: the lever makes more of it. */
export const offSeat = ({ ratio }: PreloadEvidence, past: number): number => past * ratio;

/** Nearer to an end of the band than the turns are counted, nobody can say on which side of it. */
export function placeSaid(
  set: ThreadEvidence & Pick<PreloadEvidence, 'preload' | 'from' | 'to' | 'wanted'>,
): string {
  const { from, to, wanted } = set;
  const band = `the ${wanted ? 'wanted' : 'usual'} ${from === 0 ? '0' : bareInches(from)} to ${inches(to)}`;
  return `${endSaid(set)} ${band}`;
}

function endSaid(set: ThreadEvidence & Pick<PreloadEvidence, 'preload' | 'from' | 'to'>): string {
  const { preload, from, to } = set;
  const inBand = preload < from - EQUAL ? 'under' : preload > to + EQUAL ? 'over' : 'within';
  const close = preloadWithin(set);
  if (preload > to + EQUAL && preload < to + close) return 'just over';
  if (preload > to - close && preload <= to + EQUAL) return 'about at the top of';
  return from > 0 && Math.abs(preload - from) < close ? 'about at the bottom of' : inBand;
}

const BY_SPIN = ' Zero was found by spinning the pushrod, so it may be past.';
const BY_FEELER =
  ' Zero was found with a feeler, and the plunger gives way under it: there is no gap to feel, so this counts from no zero.';
const NOT_SAID = ' How zero was found was not said.';
/** What waits while nobody turns it. */
export const LOOKED_FOR_AGAIN = ' Look for it again by up-and-down play.';

/** Zero that was found by spinning may be past where it was called, and with a feeler nobody finds it at all. */
export function zeroSaid({ zeroFoundBy }: Pick<PreloadEvidence, 'zeroFoundBy'>): string {
  switch (zeroFoundBy) {
    case 'spin':
      return `${BY_SPIN}${LOOKED_FOR_AGAIN}`;
    case 'feeler':
      return `${BY_FEELER}${LOOKED_FOR_AGAIN}`;
    case 'up-and-down':
      return '';
    default:
      return NOT_SAID;
  }
}

function preloadSaid(set: PreloadEvidence): string {
  const { preload, travel } = set;
  const past = pastBottom(set);
  if (set.solid)
    return `The build has solid lifters, with no plunger to press: these turns hold the valve open by up to ${inches(offSeat(set, preload))}. Back off before the engine is turned.`;
  if (set.travelUnsaid)
    return `These turns press the plunger ${inches(preload)}, further than plungers usually go: it may stand on its bottom and hold the valve open. Back off before the engine is turned.`;
  if (past !== undefined)
    return past > EQUAL
      ? `These turns go ${inches(past)} past the bottom of the plunger, and hold the valve off its seat by up to ${inches(offSeat(set, past))}. Back off before the engine is turned.`
      : 'These turns put the plunger on its bottom: nothing is left for wear or heat. Back off before the engine is turned.';
  if (preload <= EQUAL)
    return `No turn past zero lash: the plunger is not pressed at all, and stands against its clip.${zeroSaid(set)}`;
  const left = travel === undefined ? '' : `; ${inches(travel - preload)} of its travel is left`;
  return `These turns press the plunger ${inches(preload)}, ${placeSaid(set)}${left}.${zeroSaid(set)}`;
}

/** A number as it is said at the bench: no zeros at its end. */
export const short = (value: number, places: number): string =>
  formatNumber(value, places)
    .replace(/(\.\d*?)0+$/, '$1')
    .replace(/\.$/, '') || '0';

/** `2 turns`, `.055 turn` */
export const countSaid = (turns: number): string =>
  `${short(Math.abs(turns), 3)} turn${Math.abs(turns) > 1 ? 's' : ''}`;

/** `Tighten .055 turn, 20°` */
export const turnSaid = (turns: number): string =>
  `${turns > 0 ? 'Tighten' : 'Loosen'} ${countSaid(turns)}, ${short(Math.abs(turns) * 360, 0)}°`;

/** How far the two ways of telling a length are apart. */
const APART = table.pushrodEffective.shorter * IN;

const TOLD = {
  'as-read': '',
  overall: ', end to end',
  effective: ', as a gauge with a .140 in hole reads it',
} as const;

const longer = (difference: number): string =>
  Math.abs(difference) <= EQUAL
    ? ', just that'
    : `, ${saidLength(Math.abs(difference))} ${difference > 0 ? 'longer' : 'shorter'}`;

function pushrodSaid({ length, told, nearest }: PushrodEvidence): string {
  const stock =
    nearest === undefined
      ? ''
      : ` The nearest in stock is ${saidLength(nearest.length)}${longer(nearest.difference)}.`;
  const unsaid =
    told === 'as-read'
      ? ` Whether that is end to end or as a gauge reads it is not said: the two are about ${inches(APART)} apart. Ask before it is ordered.`
      : '';
  return `The pushrod comes to ${saidLength(length)}${TOLD[told]}.${stock}${unsaid}`;
}

function standSaid({ shim, nearest }: StandEvidence): string {
  if (Math.abs(shim) <= EQUAL) return 'The stand is at the height of the least sweep.';
  if (shim < 0)
    return `The stand is ${inches(-shim)} too high for the least sweep, and no shim lowers it. A lower stand or a longer valve does.`;
  const said = `The stand is ${inches(shim)} too low for the least sweep`;
  if (nearest === undefined) return `${said}.`;
  const off = nearest.difference;
  const thicker =
    Math.abs(off) <= EQUAL ? ', just that' : `, ${inches(Math.abs(off))} ${off > 0 ? 'thicker' : 'thinner'}`;
  return `${said}. The nearest shim is ${inches(nearest.shim)}${thicker}.`;
}

/** No figure by a model of metals and heights is finer than a feeler: what is read hot counts. */
function heatSaid({ hot, cold, found }: HeatEvidence): string {
  const way = hot - cold < 0 ? 'closes' : 'grows';
  const model = `By the metals the gap ${way} by about ${inches(Math.abs(hot - cold))} with heat`;
  const told =
    cold > EQUAL
      ? `${model}: ${inches(hot)} hot is about ${inches(cold)} cold.`
      : `${model}: no cold gap is left that comes to ${inches(hot)} hot.`;
  if (found === undefined) return `${told} What is read hot counts.`;
  return `${told} Found at ${inches(found.cold)} cold, it becomes ${found.hot > EQUAL ? `about ${inches(found.hot)} hot` : 'none at all hot'}. What is read hot counts.`;
}

const ofArms = ({ ratio, high }: FollowerEvidence['shut']): string =>
  formatRatioInterval(ratio, high - ratio);

/** Lengths off a caliper say what to expect; lifts that are read on the engine say what it is. */
function followerSaid({ shut, open }: FollowerEvidence): string {
  const at =
    open === undefined
      ? `${ofArms(shut)} with the valve shut; it changes through the lift`
      : `${ofArms(shut)} with the valve shut and ${ofArms(open)} at full lift`;
  return `By its arms the follower’s ratio is ${at}. Both lifts, read on the engine, settle it.`;
}

/** What was worked out, in a sentence or two that can be read aloud; the same wherever it is told. */
export function setSaid(set: Exclude<SetEvidence, TurnsEvidence>): string {
  switch (set.of) {
    case 'preload':
      return preloadSaid(set);
    case 'pushrod':
      return pushrodSaid(set);
    case 'stand':
      return standSaid(set);
    case 'heat':
      return heatSaid(set);
    case 'follower':
      return followerSaid(set);
  }
}
