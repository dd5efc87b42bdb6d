import { allowance, share } from '../kit/allowances.ts';
import { IN } from '../kit/si.ts';
import { digitsAround } from './digits-swapped.ts';

/** A gap as it was read, with what it is set against. SI. */
interface GapRead {
  readonly value: number;
  readonly inMillimetres: boolean;
  /** Two digits are looked at in a figure, not in what lies between gauges. */
  readonly isFigure: boolean;
  /** The middle of the same gap on the other valves of its side. */
  readonly siblings?: number;
  /** More than this there cannot be: what there is with the valve shut. */
  readonly most?: number;
  /** Nothing of its kind is as large as that; left out where some are. */
  readonly usual?: number;
}

/** What speaks for the slip. */
export type SlipFrom = 'siblings' | 'most' | 'usual';

/** A gap that was likely said or written wrong, and what it becomes put right. */
export interface GapSlip {
  readonly code: 'decimal-slip' | 'digits-swapped';
  readonly weight: 'strong' | 'weak';
  readonly becomes: number;
  readonly from: SlipFrom;
}

const TEN = 10;

/** How many times one is as large as the other. */
const timesOf = (one: number, other: number): number => Math.max(one / other, other / one);

const isLike = (value: number, siblings: number): boolean => timesOf(value, siblings) <= share('gaps-alike');

/** A gap that belongs among its siblings, or to what can be, once its point is moved one place. */
function pointMoved({ value, siblings, most, usual }: GapRead): GapSlip[] {
  const slip = (becomes: number, from: SlipFrom): GapSlip[] => [
    { code: 'decimal-slip', weight: 'strong', becomes, from },
  ];
  const less = value / TEN;
  if (siblings !== undefined && siblings > 0 && timesOf(value, siblings) >= share('gaps-unlike')) {
    const fits = [less, value * TEN].find((each) => isLike(each, siblings));
    if (fits !== undefined) return slip(fits, 'siblings');
  }
  if (most !== undefined && value > most) return slip(less, 'most');
  return usual !== undefined && value > usual ? slip(less, 'usual') : [];
}

/** Two digits the other way round, where that is what the others of its side read. */
function digitsTurned({ value, siblings, inMillimetres, isFigure }: GapRead): GapSlip[] {
  if (!isFigure || siblings === undefined) return [];
  const fits = allowance('odd-beyond');
  const off = Math.abs(value - siblings);
  if (off <= 2 * fits) return [];
  const becomes = digitsAround(value / IN, inMillimetres)
    .map((inch) => inch * IN)
    .find((each) => Math.abs(each - siblings) <= fits);
  if (becomes === undefined) return [];
  const weight = off >= allowance('digits-far') - 1e-9 ? 'strong' : 'weak';
  return [{ code: 'digits-swapped', weight, becomes, from: 'siblings' }];
}

/**
 * How a gap was likely said or written wrong: its point by one place, or two of its digits the other way round.
 *
 * Validity: one gap of one valve; nothing is said of one that is no more than nothing. The slip that explains it first
 * is told alone.
 * Source: judgement, no published source; the bounds are those of the seed table.
 */
export function gapSlip(gap: GapRead): GapSlip | undefined {
  if (gap.value <= 0) return undefined;
  return [...pointMoved(gap), ...digitsTurned(gap)][0];
}
