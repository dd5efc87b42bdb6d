import { partsOfId } from '../../common/asked.ts';
import { placeOf } from '../../common/said.ts';
import type { Evidence, ValvePlace } from '../../evidence.ts';
import { foundBy } from '../../ratio/read/answers.ts';
import { LASH_OF_ONE } from '../asked/lash-of-one.ts';
import type { ArmLot } from '../rows/lots-of-swaps.ts';
import type { Swap } from './swap-cells.ts';

/** Somebody was asked whether its lash was left in, and it was not. */
const wasOut = ({ answers }: Evidence, { cylinder, valve }: ValvePlace): boolean =>
  answers.some((answer) => {
    const asked = partsOfId(answer.questionId);
    return asked?.code === LASH_OF_ONE && asked.about === `${cylinder}-${valve}` && foundBy(answer) === false;
  });

/**
 * Lash that is left in stays on its valve whichever arm is on, as a position does: the lower of the two valves, where
 * none of its readings is known to have been at zero lash (common practice, no published source).
 */
export function lashMayStay(
  evidence: Evidence,
  swap: Swap,
  lots: readonly ArmLot[],
  position: number,
): ValvePlace | undefined {
  const low = position < 0 ? swap.places[0] : swap.places[1];
  const own = lots.filter(
    (lot) => placeOf(lot) === placeOf(low) && lot.armId !== undefined && swap.arms.includes(lot.armId),
  );
  return own.every(({ lashOpen }) => lashOpen) && !wasOut(evidence, low) ? low : undefined;
}
