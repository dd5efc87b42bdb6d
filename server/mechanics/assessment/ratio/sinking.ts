import type { AssessedQuestion } from '../assessment.ts';

/** A mean of falling passes is no ratio, whatever its interval (common practice, no published source). */
export const SINKING = 'passes that don’t sink: a solid lifter, or one locked solid at the same seat height';

export const sinks = (questions: readonly AssessedQuestion[]): boolean =>
  questions.some(({ code, weight }) => code === 'falling-passes' && weight === 'strong');
