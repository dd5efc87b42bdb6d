import type { SliderCrank } from './slider-crank.ts';

/**
 * How far the piston has come down from true top dead centre.
 *
 * Equation: D = √((l + a)² − e²) − a·cosθ − √(l² − (a·sinθ − e)²), θ from crank-zero; written as
 * D = 2a·sin(φ/2)·(sin m + cos m·(x + x₀)/(l·cosα + √(l² − x²))) with φ = θ − α past true TDC (at α),
 * m = α + φ/2, x = a·sinθ − e, x₀ = −l·sinα, which loses no figures near TDC
 *
 * @param pastTdc [rad] crank angle after true top dead centre, negative before
 * @returns [m] the drop, zero at true top dead centre
 *
 * Validity: rigid parts; no piston rock, rod stretch or bearing slack.
 * Source: J. B. Heywood, Internal Combustion Engine Fundamentals (1988), equations 2.4 and 2.5; offset and the form
 * without cancellation derived here.
 */
export function pistonDrop(crank: SliderCrank, pastTdc: number): number {
  const { throwRadius, rodLength, pinOffset, tdcAt } = crank;
  const middle = tdcAt + pastTdc / 2;
  const across = throwRadius * Math.sin(tdcAt + pastTdc) - pinOffset;
  const atTop = -rodLength * Math.sin(tdcAt);
  const reach = Math.sqrt((rodLength - across) * (rodLength + across));
  const share = (across + atTop) / (rodLength * Math.cos(tdcAt) + reach);
  return 2 * throwRadius * Math.sin(pastTdc / 2) * (Math.sin(middle) + Math.cos(middle) * share);
}

/**
 * The piston's downward motion per radian of the crank.
 *
 * Equation: dD/dθ = a·sinθ + (a·sinθ − e)·a·cosθ/√(l² − (a·sinθ − e)²), θ from crank-zero
 *
 * @param pastTdc [rad] crank angle after true top dead centre, negative before
 * @returns [m/rad] positive while the piston goes down
 *
 * Validity: rigid parts.
 * Source: derivative of the drop, derived here.
 */
export function pistonDropRate(crank: SliderCrank, pastTdc: number): number {
  const { throwRadius, rodLength, pinOffset, tdcAt } = crank;
  const angle = tdcAt + pastTdc;
  const across = throwRadius * Math.sin(angle) - pinOffset;
  const reach = Math.sqrt((rodLength - across) * (rodLength + across));
  return throwRadius * (Math.sin(angle) + (across * Math.cos(angle)) / reach);
}
