import type { CallContext } from './context.ts';
import type { StepBody } from './forms.ts';

export const isStopped = ({ assessment }: Pick<CallContext, 'assessment'>): boolean =>
  assessment.stop.length > 0;

/** Under a stop nobody is asked to turn anything: the words of a step give way to why. */
export function wordsUnderStop({ assessment: { stop } }: CallContext): StepBody['words'] {
  if (stop.length === 0) return undefined;
  const why = [
    'Nothing is turned or read on the engine while the stop stands.',
    ...stop.map(({ sentence }) => sentence),
  ];
  return { say: why.join(' '), how: why.join(' ') };
}
