import type { Judgement } from '../../assessment.ts';
import { subjectSaid } from '../../common/said.ts';
import { ODD_BEFORE } from '../odd/odd-before.ts';
import type { Said } from './said.ts';

/** A valve that was odd with an arm that is off it since: itself once more, as it sits now. */
export const ofBefore = (judgements: readonly Judgement[]): Said[] =>
  judgements
    .filter(({ id }) => id.startsWith(ODD_BEFORE))
    .map(({ about, sentence }) => ({
      action: 'read-as-it-sits',
      about,
      sentence: `Read ${subjectSaid(about)} as it sits now, the same way as before.`,
      reason: sentence,
    }));
