import { Z95 } from '../uncertainty/student.ts';

export interface Process {
  readonly mean: number;
  readonly s: number;
  /** How many values mean and s come from; left out, not known. */
  readonly n?: number;
}

interface Capability {
  readonly cp: number;
  readonly cpk: number;
  readonly interval95?: [number, number];
}

/**
 * How a spread sits between two limits.
 *
 * Equation: cp = (U − L)/6s; cpk = min(U − x̄, x̄ − L)/3s; cpk ± 1.96 √(1/(9n) + cpk²/(2(n − 1)))
 *
 * @param process [any] mean and s (above zero), n [1] at least two where known
 * @param lower [any] lower limit L
 * @param upper [any] upper limit U, above the lower
 * @returns cp, cpk [1], interval95 of cpk [1] where n is known
 *
 * Validity: near normal values from a process that holds still; the interval is approximate, better from 25 on.
 * Source: NIST/SEMATECH e-Handbook, 6.1.6; interval A. Bissell, Applied Statistics 39, 1990 (from memory).
 */
export function capabilityOf({ mean, s, n }: Process, lower: number, upper: number): Capability {
  const cp = (upper - lower) / (6 * s);
  const cpk = Math.min(upper - mean, mean - lower) / (3 * s);
  if (n === undefined) return { cp, cpk };
  const half = Z95 * Math.sqrt(1 / (9 * n) + cpk ** 2 / (2 * (n - 1)));
  return { cp, cpk, interval95: [cpk - half, cpk + half] };
}
