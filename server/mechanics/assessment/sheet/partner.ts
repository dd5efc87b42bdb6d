import { banksOf } from '../../valve-sheet/orders.ts';
import { placeOf } from '../common/said.ts';
import type { Evidence, ValvePlace } from '../evidence.ts';

/** A valve whose arm changes places with that of the odd one. */
export interface Partner extends ValvePlace {
  /** It is said to be on the same bank; left out where nothing says how the banks are. */
  readonly sameBank?: boolean;
}

/**
 * The valve to swap with: of those that read alike one of the same bank, where the engine's cover is off already; of
 * these one whose arm is on record, and then the nearest along it; where nothing says how the banks are, the nearest by
 * number. Common practice, no published source.
 */
export function partnerOf(
  evidence: Evidence,
  odd: ValvePlace,
  fit: readonly ValvePlace[],
  cylinders: number,
): Partner | undefined {
  const banks = banksOf(evidence.engine.bankOrder, cylinders);
  const own = banks.find((bank) => bank.includes(odd.cylinder));
  const isOwn = (cylinder: number): boolean => own?.includes(cylinder) === true;
  const along = (cylinder: number): number =>
    own !== undefined && isOwn(cylinder)
      ? Math.abs(own.indexOf(cylinder) - own.indexOf(odd.cylinder))
      : Math.abs(cylinder - odd.cylinder);
  const isNamed = (place: ValvePlace): number =>
    Number(evidence.seats.some((seat) => placeOf(seat) === placeOf(place)));
  const [best] = fit
    .filter((place) => placeOf(place) !== placeOf(odd))
    .toSorted(
      (a, b) =>
        Number(isOwn(b.cylinder)) - Number(isOwn(a.cylinder)) ||
        isNamed(b) - isNamed(a) ||
        along(a.cylinder) - along(b.cylinder) ||
        a.cylinder - b.cylinder,
    );
  if (best === undefined) return undefined;
  const { cylinder, valve } = best;
  return { cylinder, valve, ...(own === undefined ? {} : { sameBank: own.includes(cylinder) }) };
}
