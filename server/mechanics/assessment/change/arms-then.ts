import { planOf } from '../../../../shared/schemas/goals.ts';
import { sameRatio } from '../common/same-ratio.ts';
import type { ValveRatio } from '../common/valve-ratio.ts';
import type { Evidence, SheetEvidence, Side } from '../evidence.ts';
import type { ChangeRatio } from './detail.ts';
import { bestSettled, measured } from './ratios.ts';
import {
  notMeasured,
  soldBefore,
  soldOnNow,
  soldRatio,
  stampedAs,
  stampedOn,
  statedOnNow,
} from './stated-ratios.ts';
import { whoseArms } from './whose-arms.ts';

/** Where a gap was read, and the ratios that were: of its valve, and all of them. */
interface ReadThere {
  readonly side: Side;
  readonly plan: number | undefined;
  readonly ratios: readonly ValveRatio[];
  readonly all: readonly ValveRatio[];
}

/** The ratio that its own arm was measured at: on its valve, else on another. */
function measuredOf(armId: string, { ratios, all }: ReadThere): ChangeRatio | undefined {
  const own = (from: readonly ValveRatio[]) => bestSettled(from.filter((each) => each.armId === armId));
  const best = own(ratios) ?? own(all);
  return best && measured(best);
}

/** Of arms that nobody named: what was read of such on the valve. */
function measuredUnnamed(entry: SheetEvidence, evidence: Evidence, { plan, ratios }: ReadThere) {
  const of = (whose: 'on' | 'off') => ratios.filter((each) => whoseArms(each, evidence)?.[whose] === true);
  const [on, off] = [of('on'), of('off')];
  const isOnNow = entry.otherArms === 'on-now';
  // Arms that are on now were on before a plan; without one they are those of after.
  const best =
    plan === undefined ? bestSettled(off) : (bestSettled(on) ?? (isOnNow ? undefined : bestSettled(off)));
  return best && measured(best);
}

/** What they were sold as then, where it is not what the arm is that sits there now. */
function soldThenOf(
  entry: SheetEvidence,
  evidence: Evidence,
  plan: number | undefined,
): ChangeRatio | undefined {
  const sold = soldRatio(evidence);
  const seated = stampedOn(evidence, entry);
  const isOther = seated !== undefined && sold !== undefined && !sameRatio(seated.value, sold.value);
  // Where a ratio is only being chosen the arms before are those that are on.
  const { isChange, mayBeDone } = planOf(evidence.call.goal);
  const isOn = isChange === true && mayBeDone !== true;
  if (plan !== undefined || isOther || isOn) {
    const was = plan === undefined ? sold : soldOnNow(evidence);
    if (was !== undefined && entry.soldAsThen === undefined) return notMeasured(was);
  }
  return entry.soldAsThen === undefined ? undefined : notMeasured(soldBefore(entry.soldAsThen));
}

/**
 * The ratio of the arms that a gap was read with, where those are others than it is told of: as that arm was measured, as
 * it is stamped, as they were sold then; what is of an arm that was put on later is never taken for it. Nothing where
 * nobody said any of it.
 */
export function ratioThen(
  entry: SheetEvidence,
  evidence: Evidence,
  there: ReadThere,
): ChangeRatio | undefined {
  const { armId, otherArms } = entry;
  if (armId !== undefined) {
    const stamped = stampedAs(evidence, armId);
    const own = measuredOf(armId, there) ?? (stamped && notMeasured(stamped));
    if (own !== undefined) return own;
  } else {
    const own = measuredUnnamed(entry, evidence, there);
    if (own !== undefined) return own;
  }
  if (otherArms !== 'on-now') return soldThenOf(entry, evidence, there.plan);
  const now = statedOnNow(evidence, entry);
  return now && notMeasured(now);
}
