import { sideOfValve } from '../../../../shared/schemas/words.ts';
import type { Evidence, LashEvidence } from '../evidence.ts';
import { allKept } from './kept.ts';
import { type Heat, isNearLash } from './wanted-heat.ts';

/** The lash that is asked for at the heat of a line. */
export interface LashWanted {
  readonly gap: number;
  readonly heat: Heat;
  /** The card is for that heat, or the metals say what its figure becomes there. */
  readonly from: 'card' | 'metals';
  /** By the metals: what the gap of the line is at the heat of the card, less what it is now. */
  readonly toCard?: number;
}

/**
 * What is asked for of a valve at the heat it was read at: the card's own figure, or what the last sum of the metals that
 * starts from the card makes of it at the other heat; nothing where either heat is not known, or nothing tells.
 */
export function lashWanted(
  evidence: Pick<Evidence, 'card' | 'workings'>,
  { valve, engine }: Pick<LashEvidence, 'valve' | 'engine'>,
): LashWanted | undefined {
  const { lashAt } = evidence.card;
  const printed = evidence.card[sideOfValve(valve)].lash;
  if (printed === undefined || lashAt === undefined || engine === 'not-said') return undefined;
  if (engine === lashAt) return { gap: printed, heat: engine, from: 'card' };
  const sum = allKept(evidence, 'heat').findLast(({ set }) => isNearLash(set[lashAt], printed))?.set;
  return sum === undefined
    ? undefined
    : { gap: sum[engine], heat: engine, from: 'metals', toCard: sum[lashAt] - sum[engine] };
}
