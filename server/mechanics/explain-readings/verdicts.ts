import type { Assumptions } from './assumptions.ts';
import { type Mixture, mixtureCdf } from './mixture.ts';
import type { ExplainResult } from './types.ts';

type Names = ExplainResult['nominals'];

/** The fewest names that together reach the settled chance, likeliest first; all if they never do. */
export function remainingNames(nominals: Names, reach: number): number[] {
  const ranked = [...nominals].sort((a, b) => b.probability - a.probability);
  const names: number[] = [];
  let sum = 0;
  for (const { ratio, probability } of ranked) {
    if (sum >= reach) break;
    names.push(ratio);
    sum += probability;
  }
  return names;
}

/**
 * Half the interval's width is within the settled share of the median. (Taken as a half-width, since
 * only so is the last worked case of the design note unsettled in its mistake alone.)
 */
export function intervalIsTight(ratio: ExplainResult['ratio'], share: number): boolean {
  const [low, high] = ratio.interval95;
  return (high - low) / 2 <= share * ratio.median;
}

/** How the ratio stands to the mark: within 2 % of it almost certainly, almost certainly not, or open. */
export function againstMark(
  mixture: Mixture,
  mark: number,
  noMistake: number,
  a: Assumptions,
): 'agrees' | 'differs' | 'cannot-tell' {
  const inside = mixtureCdf(mixture, mark * (1 + a.markBand)) - mixtureCdf(mixture, mark * (1 - a.markBand));
  if (inside >= a.markAgrees) return 'agrees';
  return inside <= a.markDiffers && noMistake >= a.noMistakeSettled ? 'differs' : 'cannot-tell';
}
