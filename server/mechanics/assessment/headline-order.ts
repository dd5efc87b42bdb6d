import { type Goal, planOf } from '../../../shared/schemas/goals.ts';
import type { Headline } from './assessment.ts';
import { decidedOf, type SwapTold } from './common/swap-told.ts';

/** What a swap decided goes before every reading that it was made of. */
const BY_SWAP = -1;

/** What the call is about is told first; the rest follows in the order of the parts. */
export function inOrderOf(
  goal: Goal,
  headlines: readonly Headline[],
  swaps: readonly (SwapTold & { readonly judgementId: string })[] = [],
): Headline[] {
  // The last step of a plan is the one that gives the answer; those before it are asked for it.
  const about = planOf(goal).asks.toReversed();
  const decided = new Set(
    swaps.filter((swap) => decidedOf(swap) !== undefined).map(({ judgementId }) => judgementId),
  );
  const rank = ({ step, judgementId }: Headline): number => {
    if (judgementId !== undefined && decided.has(judgementId) && about.some((each) => BY_STEPS.has(each)))
      return BY_SWAP;
    return about.includes(step) ? about.indexOf(step) : about.length;
  };
  return headlines.toSorted((a, b) => rank(a) - rank(b));
}

/** A call about these is answered by a swap. */
const BY_STEPS: ReadonlySet<string> = new Set(['ratio', 'sheet']);
