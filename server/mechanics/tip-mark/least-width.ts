import { allowance } from '../kit/allowances.ts';
import type { Advice } from './advice-types.ts';
import { STEP } from './next-length.ts';
import { AS_NARROW, type Changed, type Tried } from './tried.ts';

/** One width is good to this, either way. */
export const INK = AS_NARROW / 2;
/** What an ink mark may hold beside the sweep: the contact line's own width; common practice, no published source. */
const INK_LINE = AS_NARROW;
/** A line or a curve through marks is told no finer. */
export const FINEST = allowance('mark-told');

const rounded = (length: number): number => Math.round(length / FINEST) * FINEST;

interface Least {
  readonly at: number;
  readonly width: number;
}

/** Where a parabola through three widths is least, between the outer two, and how wide it is there. */
function leastBetween([a, b, c]: Three): Least {
  const [left, right] = [(b.width - a.width) / (b.at - a.at), (c.width - b.width) / (c.at - b.at)];
  if (right <= left) return b;
  const curve = (right - left) / (c.at - a.at);
  const at = Math.min(c.at, Math.max(a.at, (a.at + b.at) / 2 - left / 2 / curve));
  return { at, width: a.width + left * (at - a.at) + curve * (at - a.at) * (at - b.at) };
}

type Three = readonly [Tried, Tried, Tried];

/** How far that place moves when each width is read as much wrong as ink is, root of the sum of squares. */
function leastWithin(three: Three): number {
  const { at } = leastBetween(three);
  const [a, b, c] = three;
  const wider = (tried: Tried): Tried => ({ ...tried, width: tried.width + INK });
  const moved: readonly Three[] = [
    [wider(a), b, c],
    [a, wider(b), c],
    [a, b, wider(c)],
  ];
  return Math.hypot(...moved.map((each) => leastBetween(each).at - at));
}

export function change(from: number | undefined, way: 'up' | 'down', by: number) {
  return { way, by, ...(from === undefined ? {} : { to: from + (way === 'up' ? by : -by) }) } as const;
}

/** No other setting is narrower. */
export const staysAt = ({ at, width }: Tried, limit: number): Advice =>
  width > limit + INK_LINE ? { how: 'still-wide', at, width } : { how: 'keep', at, best: true };

/** From one setting to where the curve is least, unless it is too wide there too. */
function toLeast(here: Tried, curve: Least, limit: number): Advice {
  const to = rounded(curve.at);
  if (curve.width > limit + INK_LINE) return { how: 'still-wide', at: to, width: curve.width };
  return {
    how: 'change',
    way: to > here.at ? 'up' : 'down',
    by: Math.abs(to - here.at),
    to,
    found: 'least',
    from: 'width',
    placeAgainst: false,
  };
}

/** The narrowest lies between two others: it is the one to keep, or the curve says where a narrower one is. */
function between(three: Three, limit: number): Advice {
  const [, here] = three;
  const curve = leastBetween(three);
  // Nearer than the widths themselves bear is no other length, and nor is one that no ink shows to be narrower.
  const near = Math.abs(curve.at - here.at) <= Math.max(FINEST / 2, leastWithin(three));
  const stays = near || here.width - curve.width <= INK;
  if (stays) return staysAt(here, limit);
  return toLeast(here, curve, limit);
}

/**
 * The narrowest is the last that was tried, and hardly narrower than the one beside it: where the curve through the three
 * there is least between them, a step further on would go past it.
 */
function leastInside(tried: readonly Tried[], least: number, limit: number): Advice | undefined {
  const [a, b, c] = least === 0 ? tried : tried.slice(-3);
  const here = tried[least];
  if (a === undefined || b === undefined || c === undefined || here === undefined) return undefined;
  if (Math.abs(b.width - here.width) > AS_NARROW) return undefined;
  const curve = leastBetween([a, b, c]);
  const beyond = Math.abs(curve.at - here.at) >= Math.abs(b.at - here.at);
  if (beyond || Math.abs(rounded(curve.at) - here.at) < FINEST / 2) return undefined;
  return toLeast(here, curve, limit);
}

/** Past the narrowest: a turn of the checker, or the same shim once more, since nobody has one of every thickness. */
const stepFrom = (here: Tried, beside: Tried | undefined, changed: Changed): number =>
  changed === 'pushrod' || beside === undefined ? STEP : Math.abs(here.at - beside.at);

/** By widths at two settings or more: on from the narrowest, or between its neighbours. */
export function byWidth(
  tried: readonly Tried[],
  least: number,
  limit: number,
  changed: Changed,
): Advice | undefined {
  const [before, here, after] = [tried[least - 1], tried[least], tried[least + 1]];
  if (here === undefined) return undefined;
  if (before !== undefined && after !== undefined) return between([before, here, after], limit);
  const inside = leastInside(tried, least, limit);
  if (inside !== undefined) return inside;
  return {
    how: 'change',
    ...change(here.at, before === undefined ? 'down' : 'up', stepFrom(here, before ?? after, changed)),
    found: 'step',
    from: 'width',
    placeAgainst: false,
  };
}
