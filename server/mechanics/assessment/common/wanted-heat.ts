import { SIDES } from '../../../../shared/sides.ts';
import { allowance } from '../../kit/allowances.ts';
import { isWithin } from '../../kit/within.ts';
import type { Evidence, Side } from '../evidence.ts';
import { allKept } from './kept.ts';

export type Heat = 'cold' | 'hot';

/** Nearer two lashes are one: a feeler tells no finer. */
export const isNearLash = (a: number, b: number): boolean => isWithin(a - b, allowance('lash-as-set'));

/** The lashes of the card, of these sides, each once. */
export const printedLashes = ({ card }: Evidence, sides: readonly Side[] = SIDES): number[] => [
  ...new Set(sides.flatMap((side) => card[side].lash ?? [])),
];

/**
 * The heats at which this lash is the one that is wanted: that of the card, or the other by a sum of the metals that
 * starts from the card. Empty where neither asks for it, or nobody said what the card’s is for.
 */
export function heatsWanting(lash: number, evidence: Evidence, sides: readonly Side[] = SIDES): Heat[] {
  const { lashAt } = evidence.card;
  const isPrinted = (gap: number) => printedLashes(evidence, sides).some((each) => isNearLash(each, gap));
  const sums = allKept(evidence, 'heat').map(({ set }) => set);
  const byMetals = (['cold', 'hot'] as const).filter((heat) => {
    const other = heat === 'cold' ? 'hot' : 'cold';
    return lashAt === other && sums.some((sum) => isPrinted(sum[other]) && isNearLash(sum[heat], lash));
  });
  return lashAt !== undefined && isPrinted(lash) ? [lashAt, ...byMetals] : byMetals;
}
