import { answeredText } from '../../call/answered-text.ts';
import type { CallContext } from '../../call/context.ts';
import type { TakeoverItem } from '../../call/takeover-items.ts';

/** What was answered, word for word, what remains of the causes, and what would tell them apart. */
export function noiseItems({ assessment, answers }: CallContext): TakeoverItem[] {
  const { noise } = assessment.details;
  if (!noise.active) return [];
  const told = assessment.questions.flatMap((question) => {
    const kept = answers.find(({ id }) => id === question.answered?.entryId);
    return question.step !== 'noise' || kept === undefined
      ? []
      : [`${question.ask} ${answeredText(question, kept)}`];
  });
  const left = noise.candidates.filter(({ remains }) => remains);
  return [
    ...told.map((text): TakeoverItem => ({ card: 'raw', text })),
    {
      card: 'of-goal',
      label: 'Causes left, no verdict:',
      text: left.map(({ said }) => said).join(', '),
    },
    ...noise.checks
      .slice(0, 3)
      .map(({ sentence }): TakeoverItem => ({ card: 'of-goal', label: 'Would tell:', text: sentence })),
  ];
}
