import type { Evidence } from '../evidence.ts';
import { markOn } from './stamp.ts';

/** What an arm is held to be: the ratio stamped on it, or what it is sold as. */
export interface Claim {
  readonly to: 'mark' | 'sold-as';
  readonly ratio: number;
}

/** What the arm is held to be, the mark first: it is on the part itself. */
export function claimsOn(evidence: Evidence, armId: string | undefined): Claim[] {
  const mark = markOn(evidence, armId);
  const { soldAs } = evidence.rockers;
  return [
    ...(mark === undefined ? [] : [{ to: 'mark' as const, ratio: mark }]),
    ...(soldAs === undefined || soldAs === mark ? [] : [{ to: 'sold-as' as const, ratio: soldAs }]),
  ];
}

/** `the 1.6 stamped on it`, `the 1.6 it is sold as` */
export const claimSaid = ({ to }: Claim, ratio: string): string =>
  to === 'mark' ? `the ${ratio} stamped on it` : `the ${ratio} it is sold as`;
