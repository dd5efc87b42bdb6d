import { computation as lift } from '../computations/lift.ts';
import { known } from './gap-calculation.ts';
import type { ConsequenceInput, RatioFigure } from './types.ts';

/**
 * Net lift of the valve for a ratio, with what the interval of the ratio makes of it.
 *
 * Equation: h = L·r − g; half-width = L·U₉₅(r)
 *
 * The lobe lift's own error is inside the ratio's interval already: the ratio is valve lift over this same lobe
 * lift, so that their product is the valve lift that was read. Where that was read with the lash set, it is net
 * already.
 */
export function netLift(input: ConsequenceInput, ratio: RatioFigure): { value: number; halfWidth: number } {
  const lobeLift = known(input.lobeLift, 'lobe lift');
  const { netLift: value } = lift.compute({
    lobeLift,
    ratio: ratio.value,
    lash: ratio.lashIn ? 0 : lashOf(input),
  });
  return { value, halfWidth: lobeLift * ratio.halfWidth };
}

/** A hydraulic lifter has none; where it is not known it is taken as zero, which leaves the least room. */
const lashOf = (input: ConsequenceInput): number => (input.lifter === 'hydraulic' ? 0 : (input.lash ?? 0));
