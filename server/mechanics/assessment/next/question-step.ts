import type { AssessedQuestion, StepName } from '../assessment.ts';

/** Doubts that are settled by asking, looking or entering again: nothing is turned for them. */
const BY_ASKING: ReadonlySet<string> = new Set([
  'spring-not-said',
  'lifter-not-said',
  'lash-not-said',
  'stated-not-read',
  'decimal-slip',
  'unit-mixed',
  'card-ratio',
  'lash-formula',
  'springs-swapped',
  'slip',
  'unit-or-decimal',
]);

export const isAsked = ({ code }: AssessedQuestion): boolean => BY_ASKING.has(code);

/** The step in which a question is settled, by what it is about. */
export function stepOf({ about, code }: AssessedQuestion): StepName {
  if (about.of === 'set-up') return 'ratio';
  if (about.of === 'part') return 'identify';
  if (about.of === 'arm') return 'parts';
  if (code.startsWith('lash') || code === 'nut-moved') return 'adjuster';
  if (code.includes('mark') || code.includes('sweep')) return 'geometry';
  return 'sheet';
}
