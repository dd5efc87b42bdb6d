import type { Evidence, Side } from '../evidence.ts';
import { nominalSaid } from './said.ts';
import { sameRatio } from './same-ratio.ts';

/** The ratios that are thought of, each once: the one that is to be fitted, then the others, the smallest first. */
export function plansOf({ rockers }: Pick<Evidence, 'rockers'>): number[] {
  const others = (rockers.alsoPlanned ?? []).toSorted((a, b) => a - b);
  const all = rockers.planned === undefined ? others : [rockers.planned, ...others];
  return all.filter(
    (plan, index) => all.findIndex((each) => nominalSaid(each) === nominalSaid(plan)) === index,
  );
}

/** The same evidence as one side sees it: where intakes and exhausts are to have different ratios, each its own. */
export function forSide(evidence: Evidence, side: Side): Evidence {
  const { plannedExhaust, ...rockers } = evidence.rockers;
  if (plannedExhaust === undefined) return evidence;
  const { planned } = rockers;
  const isSplit = planned === undefined || !sameRatio(planned, plannedExhaust);
  return {
    ...evidence,
    rockers: {
      ...rockers,
      ...(side === 'exhaust' ? { planned: plannedExhaust } : {}),
      ...(isSplit ? { split: true } : {}),
    },
  };
}

/**
 * What the rockers are sold as is what is to be fitted, where the whole engine is to have that: who thinks of leaving one
 * side, or all of it, as it is names what is on.
 */
export const isToBeFitted = ({ rockers: { planned, split } }: Pick<Evidence, 'rockers'>, sold: number) =>
  split !== true && planned !== undefined && sameRatio(planned, sold);

/** A ratio that is thought of beside the one that is to be fitted. */
export const isBeside = (
  { rockers: { planned } }: Pick<Evidence, 'rockers'>,
  plan: number | undefined,
): boolean => plan !== undefined && planned !== undefined && !sameRatio(plan, planned);

/** What ids say of a plan beside what they are about; the first plan needs no name. */
export const planKey = (evidence: Pick<Evidence, 'rockers'>, plan: number | undefined): string =>
  plan === undefined || plansOf(evidence)[0] === plan ? '' : `:planned-${nominalSaid(plan)}`;
