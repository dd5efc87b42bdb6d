import { allowance } from '../../kit/allowances.ts';
import { changeBetween, isOneHeat, isWithin } from '../../lash/growth.ts';
import type { Bounds, Evidence, LashEvidence, ValvePlace } from '../evidence.ts';
import { lashLogOf } from './lash-log-of.ts';
import { lashWanted } from './lash-wanted.ts';
import { limitNamed } from './limits.ts';
import { usableLash } from './usable-lash.ts';

/**
 * Why a valve waits for no turn: it was set and has held since, it was found as the card asks, or it has changed since it was
 * set by no more than is ordinary.
 */
export type LashDone = 'held' | 'as-asked' | 'ordinary';

const isNear = (a: Bounds, b: Bounds): boolean => isWithin(changeBetween(a, b), allowance('lash-as-set'));

/** Locking shifts a gap by about as much as is left as it is; at another heat nothing is known of it. */
export const hasHeld = (set: LashEvidence, found: LashEvidence): boolean =>
  isOneHeat(set, found) && isNear(set.gap, found.gap);

/** What is asked for at the heat that it was read at: by the card, or by the metals from the card. */
const asAsked = (line: LashEvidence, evidence: Evidence): boolean => {
  const wanted = lashWanted(evidence, line);
  return wanted !== undefined && isNear(line.gap, { value: wanted.gap });
};

/** Read at one heat with a lock that did not move, and whatever its gauges leave open, not changed past what is ordinary. */
function isOrdinary(set: LashEvidence, found: LashEvidence, limit: number): boolean {
  return isOneHeat(set, found) && found.nut !== 'moved' && isWithin(changeBetween(found.gap, set.gap), limit);
}

/** Whether nothing is left to be turned on a valve of the log. */
export function lashDone(evidence: Evidence, place: ValvePlace): LashDone | undefined {
  const now = usableLash(evidence, place);
  if (now?.moment !== 'found') return undefined;
  const set = lashLogOf(evidence, place).findLast(({ moment }) => moment === 'set');
  if (set !== undefined && hasHeld(set, now)) return 'held';
  if (asAsked(now, evidence)) return 'as-asked';
  return set !== undefined && isOrdinary(set, now, limitNamed(evidence, 'lash-growth').value)
    ? 'ordinary'
    : undefined;
}
