import { defined } from '../../../../shared/defined.ts';
import type { Mark, MarkContext } from '../../tip-mark/types.ts';
import { lastKept } from '../common/kept.ts';
import { limitNamed } from '../common/limits.ts';
import type { Evidence } from '../evidence.ts';
import type { MarkedValveDetail } from './detail.ts';

/** A rocker on an overhead cam has no stud, stand or pushrod that its mark is moved by. */
export const isOverhead = ({ engine: { gear } }: Evidence): boolean =>
  gear === 'cam-rocker' || gear === 'bucket';

/** What the arms are mounted on, where a mark is moved by that: nothing for followers and rockers on an overhead cam. */
export const mountingOf = (evidence: Evidence): MarkContext['mounting'] =>
  isOverhead(evidence) || evidence.engine.gear === 'finger-follower' ? undefined : evidence.engine.mounting;

/** An adjustment is in the length that is ordered, so that the checker stood at another one. */
const isAdjusted = (evidence: Evidence): boolean => {
  const { added = 0, lashOff } = lastKept(evidence, 'pushrod')?.set ?? {};
  return added > 0 || lashOff === true;
};

/** What a mark is held to: how wide the sweep can be, the stem under it, and the engine. */
export function contextOf(
  evidence: Evidence,
  { value, low, arm, lift }: MarkedValveDetail['least'],
  stem: number | undefined,
  beside: readonly Mark[],
): MarkContext {
  const { engine, rockers } = evidence;
  return {
    leastSweep: value,
    leastLow: low,
    overLeast: limitNamed(evidence, 'sweep-over-least').value,
    ordinaryTo: limitNamed(evidence, 'ordinary-mark-up-to').value,
    ...defined({ mounting: mountingOf(evidence) }),
    follower: engine.gear === 'finger-follower',
    overhead: isOverhead(evidence),
    adjusted: isAdjusted(evidence),
    arm,
    lift,
    ratio: rockers.soldAs,
    stem,
    beside,
  };
}
