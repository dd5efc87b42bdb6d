import { EQUAL } from '../../kit/nearest.ts';
import { EFFECTIVE_SHORTER } from '../../setting/setting-table.ts';
import { INK } from '../../tip-mark/advice.ts';
import { alongRocker } from '../../tip-mark/next-length.ts';
import type { Mark } from '../../tip-mark/types.ts';
import { byId } from '../common/said.ts';
import type { TipMarkEvidence } from '../evidence.ts';

export const markOf = ({ width, side, off, pushrod, shims }: TipMarkEvidence): Mark => ({
  width,
  side,
  off,
  pushrod,
  shims,
});

/** How far from the middle along the rocker; one of which only the side was told goes behind those with a figure. */
const away = ({ side, off }: TipMarkEvidence): number =>
  side === 'sideways' ? (off ?? 0) : Math.abs(alongRocker({ side, off }) ?? Number.MAX_VALUE);

/**
 * The marks of a valve with the one to judge last: width comes first, then place, as the trade looks at them. Which was
 * entered first says nothing.
 */
export function worstToBest(marks: readonly TipMarkEvidence[]): TipMarkEvidence[] {
  const narrowest = Math.min(...marks.map(({ width }) => width));
  const wide = (mark: TipMarkEvidence) => (mark.width <= narrowest + INK + EQUAL ? 0 : mark.width);
  return marks.toSorted((a, b) => wide(b) - wide(a) || away(b) - away(a) || b.width - a.width || byId(a, b));
}

/** Lengths told over the ends and to a gauge are set against each other over the ends; told in one way they stay so. */
export function inOneConvention(marks: readonly TipMarkEvidence[]): TipMarkEvidence[] {
  const mixed = new Set(marks.flatMap(({ pushrodOver }) => pushrodOver ?? [])).size > 1;
  return marks.map((mark) =>
    mixed && mark.pushrodOver === 'gauge' && mark.pushrod !== undefined
      ? { ...mark, pushrod: mark.pushrod + EFFECTIVE_SHORTER.by }
      : mark,
  );
}
