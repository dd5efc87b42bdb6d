import { within } from './compare.ts';
import { valveLift } from './lifts.ts';
import type { Tolerances } from './tolerances.ts';
import type { QuestionInput } from './types.ts';

/** How many peaks of other valves are within the tolerance of this one. */
export function peaksAlike(input: QuestionInput, tolerance: number): number {
  const lift = valveLift(input);
  if (lift === undefined) return 0;
  return (input.otherPeaks ?? []).filter((peak) => within(peak - lift, tolerance)).length;
}

/** True if so many of the other valves peak alike that chance is a poor explanation. */
export function manyAlike(input: QuestionInput, t: Tolerances, tolerance: number): boolean {
  const alike = peaksAlike(input, tolerance);
  return alike >= t.peaksForSame && alike >= t.peaksShare * (input.otherPeaks ?? []).length;
}
