import { sameRatio } from '../../common/same-ratio.ts';
import type { Evidence } from '../../evidence.ts';
import { markOn } from './stamp.ts';

/** What an arm is held to be: the ratio stamped on it, or what it is sold as. */
export interface Claim {
  readonly to: 'mark' | 'sold-as';
  readonly ratio: number;
  /** It was sold as it when it was read; what is on now is sold as another. */
  readonly wasThen?: true;
  /** It was read with an arm that is to be fitted. */
  readonly isPlanned?: true;
}

/** Ratios that are to be fitted, or thought of. */
export const plansOf = ({ rockers: { planned, plannedExhaust, alsoPlanned = [] } }: Evidence): number[] =>
  [planned, plannedExhaust, ...alsoPlanned].flatMap((plan) => plan ?? []);

/** Stamped as one of the ratios that are planned: an arm of the new set, and what the old were sold as is not said of it. */
export const isOfPlan = (evidence: Evidence, mark: number | undefined): boolean =>
  plansOf(evidence).some((plan) => mark !== undefined && sameRatio(plan, mark));

/** What the arm is held to be, the mark first: it is on the part itself. */
export function claimsOn(evidence: Evidence, armId: string | undefined, soldAsThen?: number): Claim[] {
  const mark = markOn(evidence, armId);
  const soldAs = soldAsThen ?? evidence.rockers.soldAs;
  const wasPlanned = isOfPlan(evidence, soldAsThen)
    ? { isPlanned: true as const }
    : { wasThen: true as const };
  const when = soldAsThen === undefined ? {} : wasPlanned;
  const isOther = soldAs !== undefined && soldAs !== mark && !isOfPlan(evidence, mark);
  return [
    ...(mark === undefined ? [] : [{ to: 'mark' as const, ratio: mark }]),
    ...(isOther ? [{ to: 'sold-as' as const, ratio: soldAs, ...when }] : []),
  ];
}

/** `the 1.6 stamped on it`, `the 1.6 it is sold as`, `the planned 1.6`, `the 1.5 it was sold as when it was read` */
export function claimSaid({ to, wasThen, isPlanned }: Claim, ratio: string): string {
  if (to === 'mark') return `the ${ratio} stamped on it`;
  if (isPlanned === true) return `the planned ${ratio}`;
  return wasThen === true ? `the ${ratio} it was sold as when it was read` : `the ${ratio} it is sold as`;
}
