import { GAP_KINDS } from '../../../../shared/schemas/sheet.ts';
import type { Evidence, SheetEvidence } from '../evidence.ts';
import { plansOf } from './plans.ts';
import { armsOf } from './ratios.ts';

const isGap = ({ kind }: SheetEvidence): boolean => GAP_KINDS.some((gap) => gap === kind);

/** The plan whose arms a gap was read with; of a gap read with what is on the engine now, none. */
function planOfGap(entry: SheetEvidence, evidence: Evidence): number | 'fitted' | undefined {
  const told = armsOf(entry, evidence);
  if (told !== undefined) return told;
  // While a ratio is still being chosen there is nothing of it to read on the engine.
  return evidence.call.goal === 'choose-ratio' ? 'fitted' : plansOf(evidence)[0];
}

/** The same evidence with those gaps marked that were read with the arms now fitted while others are planned. */
export function withArmsOnNow(evidence: Evidence): Evidence {
  if (plansOf(evidence).length === 0) return evidence;
  const marked = (entry: SheetEvidence): SheetEvidence =>
    entry.arms === 'these' && isGap(entry) && planOfGap(entry, evidence) === 'fitted'
      ? { ...entry, onNow: true }
      : entry;
  return { ...evidence, sheet: evidence.sheet.map(marked) };
}

/** As a plan sees it: what was read with the arms now fitted was read before it. */
export const seenByPlans = (evidence: Evidence): Evidence => ({
  ...evidence,
  sheet: evidence.sheet.map((entry) => (entry.onNow === true ? { ...entry, arms: 'before' } : entry)),
});

/** Whether a gap was read with the arms of this plan; without one, with those that are fitted. */
export const isWithPlan = (entry: SheetEvidence, plan: number | undefined, evidence: Evidence): boolean =>
  plan === undefined || planOfGap(entry, evidence) === plan;
