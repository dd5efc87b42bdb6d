import { defined } from '../../../../shared/defined.ts';
import type { NextAction, NotToRun } from '../assessment.ts';

const LIFTED = 'not-to-run:stop:';

/** A stop that was lifted to read its gap again, or parts that are not to be fitted: before anything else is asked. */
export function notToRunNext(notToRun: readonly NotToRun[]): NextAction | undefined {
  const first =
    notToRun.find(({ id }) => id.startsWith(LIFTED)) ?? notToRun.find(({ what }) => what === 'fit');
  if (first === undefined) return undefined;
  const lifted = first.id.startsWith(LIFTED);
  return {
    id: `next:${first.id}`,
    action: lifted ? 'read-gap-again' : 'do-not-fit',
    step: lifted ? 'sheet' : 'consequences',
    about: first.about,
    sentence: first.wayOut,
    ...defined({ sentenceAtBench: first.wayOutAtBench }),
    reason: first.sentence,
    turns: lifted,
  };
}
