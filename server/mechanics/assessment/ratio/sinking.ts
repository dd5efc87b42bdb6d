import type { AssessedQuestion } from '../assessment.ts';
import type { SetUpRead } from './set-up-read.ts';

/** A mean of falling passes is no ratio, whatever its interval (common practice, no published source). */
export const SINKING = 'passes that don’t sink: a solid lifter, or one locked solid at the same seat height';

export const sinks = (questions: readonly AssessedQuestion[]): boolean =>
  questions.some(({ code, weight }) => code === 'falling-passes' && weight === 'strong');

/**
 * A hydraulic lifter that is not locked can sink before its first pass, under a light spring too: passes that repeat do
 * not show that it held, and an arm of more ratio then reads as one of less (common practice, no published source).
 */
const SUNK = 'a reading on a solid or locked lifter: a hydraulic one may have sunk before the first pass';

export function sunkLacks(
  { setUp: { lifter, spring } }: SetUpRead,
  questions: readonly AssessedQuestion[],
): string[] {
  if (lifter !== 'hydraulic' || spring === 'running') return [];
  // Whether it was one at all is asked before another lifter is put in.
  const isOpen = questions.some(
    ({ code, answered }) => code === 'lifter-of-engine' && answered === undefined,
  );
  return [isOpen ? 'which lifter was under the pushrod, since the engine is down with solid ones' : SUNK];
}
