import { defined } from '../../../../shared/defined.ts';
import { GAP_KINDS } from '../../../../shared/schemas/sheet.ts';
import { sideOfValve } from '../../../../shared/schemas/words.ts';
import { forSide, plansOf } from '../common/plans.ts';
import { isOffSince } from '../common/seats.ts';
import type { Evidence, SheetEvidence } from '../evidence.ts';
import { planSaidOf } from './gap-of-plan.ts';
import { soldThen } from './sold-then.ts';
import { type WhoseArms, whoseArms } from './whose-arms.ts';

const isGap = ({ kind }: SheetEvidence): boolean => GAP_KINDS.some((gap) => gap === kind);

/** Whose arms a gap was read with. */
function armsOfGap(entry: SheetEvidence, evidence: Evidence): WhoseArms {
  const said = planSaidOf(entry, evidence);
  if (said !== undefined) return { plan: said, on: false, off: false };
  const { soldAsThen: _, ...read } = entry;
  const told = whoseArms({ ...read, ...defined({ soldAsThen: soldThen(entry, evidence) }) }, evidence);
  if (told !== undefined) return told;
  const off = isOffSince(entry, evidence);
  const ofEngine = { on: !off, off };
  // While a ratio is still being chosen there is nothing of it to read on the engine.
  if (evidence.call.goal === 'choose-ratio') return ofEngine;
  const [plan] = plansOf(evidence);
  return plan === undefined ? ofEngine : { plan, on: false, off: false };
}

/** With what other arms a gap was read than it is asked for; nothing where they are the same. */
function otherArmsOf(entry: SheetEvidence, evidence: Evidence): SheetEvidence['otherArms'] {
  if (entry.arms === 'before' || !isGap(entry)) return undefined;
  const { on, off } = armsOfGap(entry, evidence);
  if (off) return 'off-since';
  return on && plansOf(evidence).length > 0 ? 'on-now' : undefined;
}

/** No one ratio makes the gaps of an overhead cam: they are what was read, whatever its arms were sold as. */
export const isMadeByRatio = ({ engine }: Evidence): boolean => (engine.gear ?? 'pushrod') === 'pushrod';

/** The same evidence with those gaps marked that were read with other arms than they are asked for. */
export function withOtherArms(evidence: Evidence): Evidence {
  if (!isMadeByRatio(evidence)) return evidence;
  const sheet = evidence.sheet.map((entry) => {
    const otherArms = otherArmsOf(entry, forSide(evidence, sideOfValve(entry.valve)));
    return otherArms === undefined ? entry : { ...entry, otherArms };
  });
  return { ...evidence, sheet };
}

/** As what is worked out sees it: what was read with other arms was read with those before. */
export const seenByChange = (evidence: Evidence): Evidence => ({
  ...evidence,
  sheet: evidence.sheet.map((entry) =>
    entry.otherArms === undefined ? entry : { ...entry, arms: 'before' },
  ),
});

/** Whether a gap was read with the arms of this plan; without one, with those that are fitted. */
export const isWithPlan = (entry: SheetEvidence, plan: number | undefined, evidence: Evidence): boolean =>
  plan === undefined || armsOfGap(entry, evidence).plan === plan;
