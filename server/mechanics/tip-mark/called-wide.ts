import { EQUAL } from '../kit/nearest.ts';
import { AS_NARROW } from './tried.ts';
import type { Mark, MarkContext } from './types.ts';

/** Two things that were said of both and differ; what was not said of one parts nothing. */
const differ = (a: string | undefined, b: string | undefined): boolean =>
  a !== undefined && b !== undefined && a !== b;

/**
 * Whether the widths of two marks may be set against each other: both of ink or both worn in by running, on the same
 * spring and by arms marked alike, as far as that was said.
 *
 * Source: common practice, no published source: a mark that has run holds all that the tip did under load.
 */
export const isLike = (mark: Mark, other: Mark): boolean =>
  mark.worn === other.worn && !differ(mark.spring, other.spring) && !differ(mark.arms, other.arms);

/** Wider than the least sweep and what is allowed over it: looked at again, and not called wide by that alone. */
export const isOver = ({ width }: Mark, { leastSweep, overLeast }: MarkContext): boolean =>
  leastSweep !== undefined && width > leastSweep + overLeast + EQUAL;

/** The narrowest mark made as this one was: of this valve at another setting, or of a neighbour. */
export function narrowestLike(mark: Mark, others: readonly Mark[]): number | undefined {
  const widths = others.filter((other) => other !== mark && isLike(mark, other)).map(({ width }) => width);
  return widths.length === 0 ? undefined : Math.min(...widths);
}

/**
 * What a mark that is over the ordinary is called wide by: the band of the trade, or a mark made alike that is narrower by
 * more than ink is read to. Nothing where neither says so: an ink mark holds the contact line's own width as well.
 */
export function wideBy(
  mark: Mark,
  others: readonly Mark[],
  context: MarkContext,
): 'band' | 'beside' | undefined {
  if (!isOver(mark, context)) return undefined;
  const narrowest = narrowestLike(mark, others);
  if (narrowest !== undefined && narrowest < mark.width - AS_NARROW - EQUAL) return 'beside';
  return context.ordinaryTo !== undefined && mark.width > context.ordinaryTo + EQUAL ? 'band' : undefined;
}
