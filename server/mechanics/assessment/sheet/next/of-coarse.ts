import type { Judgement } from '../../assessment.ts';
import { COARSE } from '../sides/side-coarse.ts';
import type { Said } from './said.ts';

/** Valves that were read with something too coarse to tell them apart: the same lifts, with what can. */
export const ofCoarse = (judgements: readonly Judgement[]): Said[] => {
  const found = judgements.filter(({ id }) => id.startsWith(COARSE));
  const [first] = found;
  if (first === undefined) return [];
  const sides = found.flatMap(({ about }) => (about.of === 'side' ? [about.valve] : []));
  return [
    {
      action: 'read-with-indicator',
      about: found.length > 1 ? { of: 'build' } : first.about,
      sentence: `Read the ${sides.join(' and ')} valves with a dial indicator, one after the other, the same way each time, small hand first.`,
      reason: first.sentence,
    },
  ];
};
