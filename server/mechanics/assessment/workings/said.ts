import { formatNumber } from '../../../../shared/quantities/format.ts';
import { EQUAL } from '../../kit/nearest.ts';
import { saidLength } from '../../kit/said.ts';
import { bareInches, inches } from '../common/said.ts';
import type {
  PreloadEvidence,
  PushrodEvidence,
  SetEvidence,
  StandEvidence,
  TurnsEvidence,
} from './evidence.ts';

/** How far the plunger would go past its bottom, zero where it just meets it; nothing while travel is left. */
export function pastBottom({ preload, travel }: PreloadEvidence): number | undefined {
  return travel === undefined || preload < travel - EQUAL ? undefined : Math.max(0, preload - travel);
}

/** How far that holds the valve off its seat: the lever makes more of it. */
export const offSeat = ({ ratio }: PreloadEvidence, past: number): number => past * ratio;

const PLACE = { within: 'within', under: 'under', over: 'over' } as const;

/** Zero that was found by spinning may be past where it was called. */
const zeroSaid = ({ zeroFoundBy }: Pick<PreloadEvidence, 'zeroFoundBy'>): string =>
  zeroFoundBy === 'spin'
    ? ' Zero was found by spinning the pushrod, so it may be past: look for it again by up-and-down play.'
    : '';

function preloadSaid(set: PreloadEvidence): string {
  const { preload, from, to, wanted, inBand, travel } = set;
  const past = pastBottom(set);
  if (past !== undefined)
    return past > EQUAL
      ? `These turns go ${inches(past)} past the bottom of the plunger, and hold the valve off its seat by up to ${inches(offSeat(set, past))}. Back off before the engine is turned.`
      : 'These turns put the plunger on its bottom: nothing is left for wear or heat. Back off before the engine is turned.';
  const left = travel === undefined ? '' : `; ${inches(travel - preload)} of its travel is left`;
  const band = `${PLACE[inBand]} the ${wanted ? 'wanted' : 'usual'} ${from === 0 ? '0' : bareInches(from)} to ${inches(to)}`;
  return `These turns press the plunger ${inches(preload)}, ${band}${left}.${zeroSaid(set)}`;
}

/** A number as it is said at the bench: no zeros at its end. */
const short = (value: number, places: number): string =>
  formatNumber(value, places)
    .replace(/(\.\d*?)0+$/, '$1')
    .replace(/\.$/, '') || '0';

/** `Tighten .055 turn, 20°` */
function turnSaid(turns: number): string {
  const size = Math.abs(turns);
  return `${turns > 0 ? 'Tighten' : 'Loosen'} ${short(size, 3)} turn${size > 1 ? 's' : ''}, ${short(size * 360, 0)}°`;
}

function turnsSaid(set: TurnsEvidence): string {
  const { turns, lashFound, lashWanted, lashChange, preload } = set;
  const found = lashFound === undefined || lashWanted === undefined ? undefined : { lashFound, lashWanted };
  if (Math.abs(turns) * 360 < 0.05)
    return found === undefined ? 'No turn is needed.' : 'No turn is needed: the lash is as it is wanted.';
  if (found !== undefined)
    return `${turnSaid(turns)}: the lash goes from ${bareInches(found.lashFound)} to ${inches(found.lashWanted)}.`;
  if (preload !== undefined)
    return `${turnSaid(turns)} from zero lash: that moves the plunger ${inches(Math.abs(preload))} ${preload > 0 ? 'down' : 'up'}.${zeroSaid(set)}`;
  const change = lashChange ?? 0;
  return `${turnSaid(turns)}: that ${change < 0 ? 'closes' : 'opens'} the lash by ${inches(Math.abs(change))}.`;
}

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
  return `The pushrod comes to ${saidLength(length)}${TOLD[told]}.${stock}`;
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

/** What was worked out, in a sentence or two that can be read aloud; the same wherever it is told. */
export function setSaid(set: SetEvidence): string {
  switch (set.of) {
    case 'preload':
      return preloadSaid(set);
    case 'turns':
      return turnsSaid(set);
    case 'pushrod':
      return pushrodSaid(set);
    case 'stand':
      return standSaid(set);
  }
}
