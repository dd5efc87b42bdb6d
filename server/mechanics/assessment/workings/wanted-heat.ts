import { IN } from '../../kit/si.ts';
import type { Evidence } from '../evidence.ts';
import { allKept } from './kept.ts';

export type Heat = 'cold' | 'hot';

/** One feeler. */
const LASH = 0.001 * IN;

export const isNearLash = (a: number, b: number): boolean => Math.abs(a - b) <= LASH + 1e-9;

/** The lashes of the card, each once. */
export const printedLashes = ({ card }: Evidence): number[] => [
  ...new Set([card.intake.lash, card.exhaust.lash].flatMap((each) => each ?? [])),
];

/**
 * The heats at which this lash is the one that is wanted: that of the card, or the other by a sum of the metals that
 * starts from the card. Empty where neither asks for it, or nobody said what the card’s is for.
 */
export function heatsWanting(lash: number, evidence: Evidence): Heat[] {
  const { lashAt } = evidence.card;
  const isPrinted = (gap: number) => printedLashes(evidence).some((each) => isNearLash(each, gap));
  const sums = allKept(evidence, 'heat').map(({ set }) => set);
  const byMetals = (['cold', 'hot'] as const).filter((heat) => {
    const other = heat === 'cold' ? 'hot' : 'cold';
    return lashAt === other && sums.some((sum) => isPrinted(sum[other]) && isNearLash(sum[heat], lash));
  });
  return lashAt !== undefined && isPrinted(lash) ? [lashAt, ...byMetals] : byMetals;
}
