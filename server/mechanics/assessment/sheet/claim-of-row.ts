import type { Evidence } from '../evidence.ts';
import { type Claim, claimsOn } from '../ratio/marks.ts';
import { isOfSetBefore, type SheetRow } from './rows.ts';

/** What the arm that a row was read with is held to be: of a set that is off since what that was sold as, else the arm that sits there. */
export function claimOfRow(evidence: Evidence, row: SheetRow | undefined, spring: string): Claim | undefined {
  const lot = row?.lifts.find((each) => each.spring === spring);
  const isBefore = lot !== undefined && isOfSetBefore(lot);
  return claimsOn(evidence, isBefore ? lot.armId : row?.armId, lot?.soldAsThen)[0];
}
