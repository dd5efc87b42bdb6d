import type { Evidence } from '../evidence.ts';
import { markOn } from './stamp.ts';

/** What an arm is held to be: the ratio stamped on it, or what it is sold as. */
export interface Claim {
  readonly to: 'mark' | 'sold-as';
  readonly ratio: number;
}

/** Stamped as one of the ratios that are planned: an arm of the new set, and what the old were sold as is not said of it. */
export function isOfPlan({ rockers }: Evidence, mark: number | undefined): boolean {
  const { planned, plannedExhaust, alsoPlanned = [] } = rockers;
  return [planned, plannedExhaust, ...alsoPlanned].some(
    (plan) => plan !== undefined && mark !== undefined && Math.abs(plan - mark) < 0.0005,
  );
}

/** What the arm is held to be, the mark first: it is on the part itself. */
export function claimsOn(evidence: Evidence, armId: string | undefined): Claim[] {
  const mark = markOn(evidence, armId);
  const { soldAs } = evidence.rockers;
  const isOther = soldAs !== undefined && soldAs !== mark && !isOfPlan(evidence, mark);
  return [
    ...(mark === undefined ? [] : [{ to: 'mark' as const, ratio: mark }]),
    ...(isOther ? [{ to: 'sold-as' as const, ratio: soldAs }] : []),
  ];
}

/** `the 1.6 stamped on it`, `the 1.6 it is sold as` */
export const claimSaid = ({ to }: Claim, ratio: string): string =>
  to === 'mark' ? `the ${ratio} stamped on it` : `the ${ratio} it is sold as`;
