import { defined } from '../../../../../shared/defined.ts';
import type { OddValve, SheetValve } from '../../../valve-sheet/types.ts';
import { placeOf } from '../../common/said.ts';
import type { Evidence, ValvePlace } from '../../evidence.ts';
import type { SheetOddDetail } from '../rows/detail.ts';
import { partnerOf } from '../rows/partner.ts';

type ToSwap = NonNullable<SheetOddDetail['toSwap']>;

/** What both sides call an arm. */
export const armNameOf = ({ arms }: Evidence, armId: string | undefined): string | undefined =>
  arms.find(({ id }) => id === armId)?.name;

/** The swap that would decide part against position. */
export function swapToDo(
  odd: OddValve,
  siblings: readonly SheetValve[],
  odds: readonly OddValve[],
  evidence: Evidence,
): SheetOddDetail['toSwap'] {
  if (odd.cause !== 'rocker-or-position' && odd.cause !== 'both') return undefined;
  const fit = siblings.filter(
    (each) => each.valveLift !== undefined && !odds.some((one) => placeOf(one) === placeOf(each)),
  );
  const cylinders = Math.max(evidence.engine.cylinders ?? 0, ...siblings.map(({ cylinder }) => cylinder));
  const partner = partnerOf(evidence, odd, fit, cylinders);
  if (partner === undefined) return undefined;
  const armOn = (place: ValvePlace) =>
    armNameOf(evidence, evidence.seats.find((seat) => placeOf(seat) === placeOf(place))?.armId);
  return { partner, ...defined({ arm: armOn(odd), partnersArm: armOn(partner) }) };
}

/** The same as a sentence's part: what is done, or what has to be known before it. */
export function swapSaid(odd: OddValve, { partner, arm, partnersArm }: ToSwap): string {
  const bank = partner.sameBank === true ? ', on the same bank' : '';
  if (arm === undefined || partnersArm === undefined)
    return `the arms of ${placeOf(odd)} and ${placeOf(partner)}${bank === '' ? '' : ' on the same bank'} named, with which sits where; then both read, and read once more with the two swapped`;
  return `${arm} (${placeOf(odd)}) and ${partnersArm} (${placeOf(partner)}${bank}) swapped, where they sit then said, and both valves read once more in the same way`;
}
