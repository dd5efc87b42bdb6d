import type { AssessedQuestion } from '../../assessment.ts';
import type { RatioLack } from '../read/lack.ts';
import type { SetUpRead } from '../read/set-up-read.ts';

export const sinks = (questions: readonly AssessedQuestion[]): boolean =>
  questions.some(({ code, weight }) => code === 'falling-passes' && weight === 'strong');

/** What is lacking where a hydraulic lifter may have sunk before its first pass. */
export function sunkLacks(
  { setUp: { lifter, spring } }: SetUpRead,
  questions: readonly AssessedQuestion[],
): RatioLack[] {
  if (lifter !== 'hydraulic' || spring === 'running') return [];
  // Whether it was one at all is asked before another lifter is put in.
  const isOpen = questions.some(
    ({ code, answered }) => code === 'lifter-of-engine' && answered === undefined,
  );
  return [{ code: isOpen ? 'which-lifter-was' : 'may-have-sunk' }];
}
