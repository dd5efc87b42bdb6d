import type { Judgement } from '../../assessment.ts';
import { SIDE_AGAIN } from '../sides/side-again.ts';
import type { Said } from './said.ts';

/** Of a side that was not read right, as was answered, those that are left. */
export const ofSideAgain = (judgements: readonly Judgement[]): Said[] =>
  judgements
    .filter(({ id }) => id.startsWith(SIDE_AGAIN))
    .map(({ about, sentence }) => ({
      action: 'read-again',
      about,
      sentence: 'Read the others again the same way, and strike out with the reason what was read before.',
      reason: sentence,
    }));
