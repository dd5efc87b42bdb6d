import { combine } from '../uncertainty/combine.ts';
import { rectangular } from '../uncertainty/type-b.ts';

/**
 * The 95 % interval of the sum of loads that are each known within a part of themselves.
 *
 * Equation: u² = Σ(t·Fᵢ/√3)²; U = 1.96·u, and no more than t·ΣFᵢ, which is all that the tolerances together allow
 *
 * @param loads [N] load of each spring, not negative
 * @param tolerance [1] half-width t of each load as a part of it, zero to below one
 * @returns low and high end [N], not negative
 *
 * Validity: each load anywhere within its tolerance alike, the springs independently of one another.
 * Source: JCGM 100:2008, 4.3.7 and 5.1.2.
 */
export function loadInterval(loads: readonly number[], tolerance: number): [low: number, high: number] {
  const total = loads.reduce((sum, load) => sum + load, 0);
  const { expanded } = combine(
    loads.map((load) => ({ source: 'load', u: rectangular(tolerance * load), sensitivity: 1 })),
  );
  const half = Math.min(expanded, tolerance * total);
  return [total - half, total + half];
}
