import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { allowance } from '../../kit/allowances.ts';
import { EQUAL } from '../../kit/nearest.ts';
import type { Evidence, LashEvidence, ValvePlace } from '../evidence.ts';
import { heatsWanting } from '../workings/wanted-heat.ts';
import { lashLogOf } from './lash-log-of.ts';
import { limitNamed } from './limits.ts';
import { usableLash } from './usable-lash.ts';

/**
 * Why a valve waits for no turn: it was set and has held since, it was found as the card asks, or it has changed since it was
 * set by no more than is ordinary.
 */
export type LashDone = 'held' | 'as-asked' | 'ordinary';

const isNear = (a: number | undefined, b: number | undefined): boolean =>
  a !== undefined && b !== undefined && Math.abs(a - b) <= allowance('lash-as-set') + EQUAL;

/** Locking shifts a gap by about as much as is left as it is; at another heat nothing is known of it. */
export const hasHeld = (set: LashEvidence, found: LashEvidence): boolean =>
  set.engine === found.engine && isNear(set.gap.value, found.gap.value);

function asAsked({ valve, gap: { value }, engine }: LashEvidence, evidence: Evidence): boolean {
  const printed = evidence.card[sideOfValve(valve)].lash;
  return (
    value !== undefined &&
    isNear(value, printed) &&
    heatsWanting(value, evidence).some((heat) => heat === engine)
  );
}

/** Read at one heat with a lock that did not move, and whatever its gauges leave open, not changed past what is ordinary. */
function isOrdinary(set: LashEvidence, found: LashEvidence, limit: number): boolean {
  const [from, to] = [set.gap, found.gap];
  const least = (to.value ?? to.low ?? Number.NEGATIVE_INFINITY) - (from.value ?? from.high ?? 0);
  const most = (to.value ?? to.high ?? Number.POSITIVE_INFINITY) - (from.value ?? from.low ?? 0);
  const isRead = set.engine === found.engine && found.nut !== 'moved';
  return isRead && least >= -limit - EQUAL && most <= limit + EQUAL;
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
