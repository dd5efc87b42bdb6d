import { computation as lift } from '../computations/lift.ts';
import { type Calculated, known } from './gap-calculation.ts';
import type { ConsequenceInput, RatioFigure } from './types.ts';

function lifted(input: ConsequenceInput, ratio: RatioFigure, lash: number): Calculated {
  const lobeLift = known(input.lobeLift, 'lobe lift');
  const { netLift: value } = lift.compute({ lobeLift, ratio: ratio.value, lash });
  return { value, halfWidth: lobeLift * ratio.halfWidth };
}

/** Lobe lift times ratio, with the lash out. */
export const grossLift = (input: ConsequenceInput, ratio: RatioFigure): Calculated => lifted(input, ratio, 0);

/**
 * The lift that gaps and loads are calculated at: the net lift, or with no lash known the most that there can be.
 *
 * Equation: h = L·r − g; half-width = L·U₉₅(r)
 *
 * The lobe lift's own error is inside the ratio's interval already: the ratio is valve lift over this same lobe
 * lift, so that their product is the valve lift that was read. Where that was read with the lash set, it is net
 * already.
 */
export const liftAtValve = (input: ConsequenceInput, ratio: RatioFigure): Calculated =>
  lifted(input, ratio, ratio.lashIn ? 0 : lashOf(input));

/** A hydraulic lifter has none; where it is not known it is taken as zero, which leaves the least room. */
const lashOf = (input: ConsequenceInput): number => (input.lifter === 'hydraulic' ? 0 : (input.lash ?? 0));
