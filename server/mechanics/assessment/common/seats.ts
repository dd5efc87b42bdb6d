import type { ArmEvidence, Evidence, ValvePlace } from '../evidence.ts';
import { placeOf } from './said.ts';

/** The arm that sits on a valve now. */
export function seatedOn({ seats, arms }: Evidence, place: ValvePlace): ArmEvidence | undefined {
  const seat = seats.find((each) => placeOf(each) === placeOf(place));
  return seat === undefined ? undefined : arms.find(({ id }) => id === seat.armId);
}

/** Whether something was read with an arm that no longer sits there; where either arm is unknown nothing tells. */
export function isOffSince(
  read: ValvePlace & { readonly armId?: string; readonly comesOff?: true },
  evidence: Evidence,
): boolean {
  if (read.comesOff === true) return true;
  const seated = seatedOn(evidence, read);
  return read.armId !== undefined && seated !== undefined && seated.id !== read.armId;
}
