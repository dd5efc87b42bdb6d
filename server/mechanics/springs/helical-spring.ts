/** How the ends of a compression spring are finished. */
export const SPRING_ENDS = ['plain', 'plain-ground', 'squared', 'squared-ground'] as const;
type SpringEnds = (typeof SPRING_ENDS)[number];

/** A helical spring of round wire, in SI. */
interface HelicalSpring {
  readonly wire: number;
  readonly meanDiameter: number;
  readonly activeCoils: number;
  readonly totalCoils: number;
  readonly ends: SpringEnds;
  readonly shearModulus: number;
  readonly density: number;
}

/**
 * Rate of a helical spring of round wire.
 *
 * Equation: k = G·d⁴/(8·D³·Na)
 *
 * @returns [N/m]
 *
 * Validity: close coils of round wire, linear range.
 * Source: J. E. Shigley, Mechanical Engineering Design, 9th ed. (2011), section 10-3.
 */
export function springRate({ wire, meanDiameter, activeCoils, shearModulus }: HelicalSpring): number {
  return (shearModulus * wire * (wire / meanDiameter) ** 3) / (8 * activeCoils);
}

/**
 * Height of a spring with all coils touching.
 *
 * Equation: d·Nt with ground ends; d·(Nt + 1) with ends left as they are
 *
 * @returns [m]
 *
 * Validity: round wire, coils stacked square.
 * Source: J. E. Shigley, Mechanical Engineering Design, 9th ed. (2011), table 10-1.
 */
export function solidHeightOf({ wire, totalCoils, ends }: HelicalSpring): number {
  const ground = ends === 'plain-ground' || ends === 'squared-ground';
  return wire * (ground ? totalCoils : totalCoils + 1);
}

/**
 * Lowest natural frequency of a spring whose both ends are seated.
 *
 * Equation: f = ½·√(k/m), m = ρ·π²·d²·D·Na/4; together f = d/(2π·D²·Na)·√(G/(2ρ))
 *
 * @returns [Hz]
 *
 * Validity: both ends held, uniform wire; the active coils alone swing.
 * Source: J. E. Shigley, Mechanical Engineering Design, 9th ed. (2011), section 10-8; closed form derived here.
 */
export function naturalFrequencyOf(spring: HelicalSpring): number {
  const { wire, meanDiameter, activeCoils, shearModulus, density } = spring;
  const wave = Math.sqrt(shearModulus / (2 * density));
  return ((wire / meanDiameter) * wave) / (2 * Math.PI * meanDiameter * activeCoils);
}

/** Coils at the ends that do not work, by the same table 10-1: what total less active usually is. */
const DEAD_COILS: Record<SpringEnds, number> = {
  plain: 0,
  'plain-ground': 1,
  squared: 2,
  'squared-ground': 2,
};

/** A remark where the active coils are not what such ends usually leave. */
export function coilRemark({ activeCoils, totalCoils, ends }: HelicalSpring): readonly string[] {
  const usual = totalCoils - DEAD_COILS[ends];
  if (Math.abs(usual - activeCoils) < 1e-9) return [];
  return [
    `${ends} ends usually leave the total less ${DEAD_COILS[ends]} coils active: ${usual}, not ${activeCoils}`,
  ];
}
