import { placeOf } from '../../common/said.ts';
import type { SetUpRead } from '../read/set-up-read.ts';

/** Ratios of one arm that lie this near are read alike; of two arms further apart the arm makes the difference. */
const ALIKE = 0.012;
const APART = 0.03;

/** Doubts about how one dial was read. */
export const OF_ONE_READING: ReadonlySet<string> = new Set([
  'turn-miscounted',
  'hand-read-backwards',
  'digits-swapped',
]);

const ratioOf = ({ lift, lobe }: SetUpRead): number | undefined =>
  lift === undefined || lobe.value === undefined || lobe.value <= 0 ? undefined : lift.read / lobe.value;

/**
 * The swap was read: this arm gives the same on another valve, and on one of the two another arm gives something else.
 * Then the dial was read right, or it would have been misread in the same way twice for this arm alone.
 */
export function isAlikeElsewhere(own: SetUpRead, all: readonly SetUpRead[]): boolean {
  const ratio = ratioOf(own);
  const { armId } = own.setUp;
  if (ratio === undefined || armId === undefined) return false;
  return all.some((moved) => {
    const again = ratioOf(moved);
    if (again === undefined || moved.setUp.armId !== armId || Math.abs(again - ratio) > ALIKE) return false;
    const places = [placeOf(own.setUp), placeOf(moved.setUp)];
    return (
      places[0] !== places[1] &&
      all.some((each) => {
        const other = ratioOf(each);
        const isOther = each.setUp.armId !== undefined && each.setUp.armId !== armId;
        return (
          isOther &&
          other !== undefined &&
          places.includes(placeOf(each.setUp)) &&
          Math.abs(other - ratio) > APART
        );
      })
    );
  });
}
