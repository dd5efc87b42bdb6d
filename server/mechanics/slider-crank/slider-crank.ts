import { impossible } from '../../../shared/problems/faults.ts';

/** A crank with its rod; angles from where the crank throw lies along the bore (crank-zero). */
export interface SliderCrank {
  /** Half the stroke named on the engine's sheet. */
  readonly throwRadius: number;
  readonly rodLength: number;
  /** Positive toward the side that the crankpin moves to after top dead centre. */
  readonly pinOffset: number;
  readonly tdcAt: number;
  readonly bdcAt: number;
  readonly actualStroke: number;
}

/**
 * The dead centres and the real stroke of a crank, a rod and a piston pin that may stand off the bore's line.
 *
 * Equation: tdcAt = asin(e/(l + a)); bdcAt = π + asin(e/(l − a));
 * actualStroke = √((l + a)² − e²) − √((l − a)² − e²), a half the stroke, l the rod, e the offset
 *
 * @param stroke [m] twice the crank throw, above zero
 * @param rodLength [m] centre to centre, above half the stroke
 * @param pinOffset [m] positive toward the side the crankpin moves to after top dead centre
 * @throws impossible-input when the rod is not longer than half the stroke
 * @throws impossible-input when the offset is so large that the crank can't turn round
 *
 * Validity: rigid parts, a crank whose axis crosses the bore's line.
 * Source: geometry, J. B. Heywood, Internal Combustion Engine Fundamentals (1988), section 2.2 (offset derived here).
 */
export function sliderCrank(stroke: number, rodLength: number, pinOffset: number): SliderCrank {
  const throwRadius = stroke / 2;
  if (rodLength <= throwRadius) {
    impossible(['rodLength', 'stroke'], 'the rod must be longer than half the stroke');
  }
  const shortest = rodLength - throwRadius;
  const longest = rodLength + throwRadius;
  if (Math.abs(pinOffset) >= shortest) {
    impossible(
      ['pinOffset'],
      'must be less than the rod length less half the stroke: the crank could not turn',
    );
  }
  const legs = (hypotenuse: number) => Math.sqrt((hypotenuse - pinOffset) * (hypotenuse + pinOffset));
  return {
    throwRadius,
    rodLength,
    pinOffset,
    tdcAt: Math.asin(pinOffset / longest),
    bdcAt: Math.PI + Math.asin(pinOffset / shortest),
    actualStroke: legs(longest) - legs(shortest),
  };
}
