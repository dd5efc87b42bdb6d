import { CONTACT, sentence } from '../../shared/schemas/words.ts';
import type { CallContext } from './context.ts';

/** What was first told of contact; where something found since says otherwise, that is said beside it. */
export function contactText({ call, assessment }: Pick<CallContext, 'call' | 'assessment'>): string {
  const told = sentence(CONTACT, call.contact);
  const otherwise = assessment.questions.some(({ code }) => code === 'contact-told-otherwise');
  if (otherwise) return `${told}, as first told; told otherwise since`;
  // Beside a stop that was found since it is no more than what was told when the call began.
  return assessment.stop.length > 0 ? `${told}, as first told` : told;
}
