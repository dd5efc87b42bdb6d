import { defined } from '../../../../shared/defined.ts';
import type { Mark, MarkContext } from '../../tip-mark/types.ts';
import { limitNamed } from '../common/limits.ts';
import type { Evidence } from '../evidence.ts';
import type { MarkedValveDetail } from './detail.ts';

/** What a mark is held to: how wide the sweep can be, the stem under it, and the engine. */
export function contextOf(
  evidence: Evidence,
  { value, arm, lift }: MarkedValveDetail['least'],
  stem: number | undefined,
  beside: readonly Mark[],
): MarkContext {
  const { engine, rockers } = evidence;
  const follower = engine.gear === 'finger-follower';
  return {
    leastSweep: value,
    overLeast: limitNamed(evidence, 'sweep-over-least').value,
    ordinaryTo: limitNamed(evidence, 'ordinary-mark-up-to').value,
    ...defined({ mounting: follower ? undefined : engine.mounting }),
    follower,
    arm,
    lift,
    ratio: rockers.soldAs,
    stem,
    beside,
  };
}
