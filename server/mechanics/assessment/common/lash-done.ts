import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { allowance } from '../../kit/allowances.ts';
import { EQUAL } from '../../kit/nearest.ts';
import type { Evidence, LashEvidence, ValvePlace } from '../evidence.ts';
import { heatsWanting } from '../workings/wanted-heat.ts';
import { lashLogOf } from './lash-log-of.ts';
import { usableLash } from './usable-lash.ts';

/** Why a valve waits for no turn: it was set and has held since, or it was found as the card asks. */
export type LashDone = 'held' | 'as-asked';

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

/** Whether nothing is left to be turned on a valve of the log. */
export function lashDone(evidence: Evidence, place: ValvePlace): LashDone | undefined {
  const now = usableLash(evidence, place);
  if (now?.moment !== 'found') return undefined;
  const set = lashLogOf(evidence, place).findLast(({ moment }) => moment === 'set');
  if (set !== undefined && hasHeld(set, now)) return 'held';
  return asAsked(now, evidence) ? 'as-asked' : undefined;
}
