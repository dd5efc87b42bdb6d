import type { Judgement } from '../../assessment.ts';
import { UNLIKE_SPRINGS } from '../sides/side-springs.ts';
import type { Said } from './said.ts';

/** Valves that were read on unlike springs: those on the running one once more, on a light one. */
export const ofSprings = (judgements: readonly Judgement[]): Said[] => {
  const found = judgements.filter(({ id }) => id.startsWith(UNLIKE_SPRINGS));
  const [first] = found;
  if (first === undefined) return [];
  return [
    {
      action: 'read-on-light-spring',
      about: found.length > 1 ? { of: 'build' } : first.about,
      sentence: `Read ${found.flatMap(({ lacks }) => lacks).join(', and ')}, the same way as the others.`,
      reason: first.sentence,
    },
  ];
};
