import { allowance } from '../kit/allowances.ts';
import { EQUAL } from '../kit/nearest.ts';

/** What one arm gave on one valve, read in one way. */
export interface LotRead {
  readonly armId: string;
  readonly place: string;
  /** Only what was read the same way, on the same side, is set against each other. */
  readonly way: string;
  readonly lift: number;
}

const alike = (a: LotRead, b: LotRead): boolean =>
  Math.abs(a.lift - b.lift) <= 2 * allowance('repeat') + EQUAL;
const apart = (a: LotRead, b: LotRead): boolean =>
  Math.abs(a.lift - b.lift) > allowance('odd-beyond') + EQUAL;

/**
 * Whether a lift was read twice independently: with the same arm on another valve, or on the same valve with another
 * arm, while the other arm or the other valve read otherwise. A slip of the eye does not go with a part, nor stay on a
 * valve.
 *
 * Equation: |lift − its repeat| ≤ 2·.002 in, and |lift − what the swap read beside it| > .008 in
 *
 * @param own [m] the lift that is doubted
 * @param lots [m] every lift with a named arm, its own among them
 *
 * Source: swap test, common practice, no published source; derived here.
 */
export function isReadTwice(own: LotRead, lots: readonly LotRead[]): boolean {
  const others = lots.filter((lot) => lot.way === own.way && lot !== own);
  const goesWithArm = others.some(
    (again) =>
      again.armId === own.armId &&
      again.place !== own.place &&
      alike(again, own) &&
      others.some(
        (beside) =>
          beside.armId !== own.armId && [own.place, again.place].includes(beside.place) && apart(beside, own),
      ),
  );
  const staysOnValve = others.some(
    (again) =>
      again.armId !== own.armId &&
      again.place === own.place &&
      alike(again, own) &&
      others.some(
        (beside) =>
          beside.place !== own.place && [own.armId, again.armId].includes(beside.armId) && apart(beside, own),
      ),
  );
  return goesWithArm || staysOnValve;
}
