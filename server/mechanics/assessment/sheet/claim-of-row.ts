import type { Evidence } from '../evidence.ts';
import { type Claim, claimsOn } from '../ratio/marks.ts';
import { isOfSetBefore, type LiftLot, type SheetRow } from './rows.ts';

const lotOf = (row: SheetRow | undefined, spring: string): LiftLot | undefined =>
  row?.lifts.find((each) => each.spring === spring);

/** The arm that a row was read with: of a set that is off since the one that was on then, else the one that sits there. */
export function armOfRow(row: SheetRow | undefined, spring: string): string | undefined {
  const lot = lotOf(row, spring);
  return lot !== undefined && isOfSetBefore(lot) ? lot.armId : row?.armId;
}

/** What that arm is held to be; of a set that is off since what that was sold as. */
export const claimOfRow = (
  evidence: Evidence,
  row: SheetRow | undefined,
  spring: string,
): Claim | undefined => claimsOn(evidence, armOfRow(row, spring), lotOf(row, spring)?.soldAsThen)[0];
