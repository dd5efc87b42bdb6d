import { IN } from '../../kit/si.ts';
import { alongRocker } from '../../tip-mark/next-length.ts';
import type { Mark } from '../../tip-mark/types.ts';
import { byId } from '../common/said.ts';
import type { TipMarkEvidence } from '../evidence.ts';

/** Widths that differ by less are as narrow: ink is not read finer. */
const AS_NARROW = 0.01 * IN;

export const markOf = ({ width, side, off = 0, pushrod }: TipMarkEvidence): Mark => ({
  width,
  side,
  off,
  pushrod,
});

const away = (mark: TipMarkEvidence): number => Math.abs(alongRocker(markOf(mark)) ?? mark.off ?? 0);

/**
 * The marks of a valve with the one to judge last: width comes first, then place, as the trade looks at them. Which was
 * entered first says nothing.
 */
export function worstToBest(marks: readonly TipMarkEvidence[]): TipMarkEvidence[] {
  const narrowest = Math.min(...marks.map(({ width }) => width));
  const wide = (mark: TipMarkEvidence) => (mark.width <= narrowest + AS_NARROW ? 0 : mark.width);
  return marks.toSorted((a, b) => wide(b) - wide(a) || away(b) - away(a) || b.width - a.width || byId(a, b));
}
