import { readNumber } from '../../../../shared/quantities/read-number.ts';
import type { ArmEvidence, Evidence } from '../evidence.ts';

/** What an arm is held to be: the ratio stamped on it, or what it is sold as. */
export interface Claim {
  readonly to: 'mark' | 'sold-as';
  readonly ratio: number;
}

/** Ratios that a rocker can have: a number beyond them is no ratio (common practice, no published source). */
const LEAST = 0.9;
const MOST = 2.5;

/** A stamp counts as a ratio only with its point: "16" or "60" alone stays undecided. */
export function ratioOfStamp(arm: ArmEvidence | undefined): number | undefined {
  const stamp = arm?.ratioStamp.trim() ?? '';
  if (!/^\d[.,]\d{1,3}$/.test(stamp)) return undefined;
  const read = readNumber(stamp, { kind: 'ratio' });
  return read.ok && read.value > LEAST && read.value < MOST ? read.value : undefined;
}

/** What the arm is held to be, the mark first: it is on the part itself. */
export function claimsOn(evidence: Evidence, armId: string | undefined): Claim[] {
  const mark = ratioOfStamp(evidence.arms.find(({ id }) => id === armId));
  const { soldAs } = evidence.rockers;
  return [
    ...(mark === undefined ? [] : [{ to: 'mark' as const, ratio: mark }]),
    ...(soldAs === undefined || soldAs === mark ? [] : [{ to: 'sold-as' as const, ratio: soldAs }]),
  ];
}

/** `the 1.6 stamped on it`, `the 1.6 it is sold as` */
export const claimSaid = ({ to }: Claim, ratio: string): string =>
  to === 'mark' ? `the ${ratio} stamped on it` : `the ${ratio} it is sold as`;
