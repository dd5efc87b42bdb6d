import { NOMINAL_RATIOS } from '../../../../../shared/schemas/method.ts';
import { MOST_NAMES } from '../../../explain-readings/limits.ts';
import type { Evidence } from '../../evidence.ts';
import { stampOf } from './stamp.ts';

const rising = (a: number, b: number): number => a - b;

/**
 * Nominal ratios that a reading is set against: what this call named, the trade's list and the shop's catalogue. The
 * inference weighs forty at the most; a longer catalogue gives its lowest.
 */
export function nominalsOf(evidence: Evidence): number[] {
  const { soldAs, planned } = evidence.rockers;
  const stamps = evidence.arms.flatMap(({ id }) => stampOf(evidence, id)?.ratio ?? []).sort(rising);
  const then = evidence.setUps.flatMap(({ soldAsThen }) => soldAsThen ?? []).sort(rising);
  const named = [soldAs, planned, ...then, evidence.card.assumedRatio, ...stamps].filter(
    (ratio) => ratio !== undefined,
  );
  const catalogue = evidence.catalogueRatios.toSorted(rising);
  const all = new Set([...named, ...NOMINAL_RATIOS, ...catalogue]);
  return [...all].slice(0, MOST_NAMES).sort(rising);
}

/** Rocker arms on pushrods are made in ratios with names; other valve gear has whatever its lengths give. */
export const madeIn = (evidence: Evidence): number[] | undefined =>
  (evidence.engine.gear ?? 'pushrod') === 'pushrod' ? nominalsOf(evidence) : undefined;
