import { defined } from '../../../../shared/defined.ts';
import type { NextAction, Subject } from '../assessment.ts';
import type { Lacking } from '../missing/missing.ts';

export const BUILD: Subject = { of: 'build' };

/** Rows that were not read yet: an odd valve that is clear does not wait for them. */
export const isRows = ({ step, need }: Lacking): boolean => step === 'sheet' && need.code === 'rows';

/** The first of what is lacking. */
export function lackingNext(lacking: readonly Lacking[]): NextAction | undefined {
  const [found] = lacking;
  if (found === undefined) return undefined;
  const { step, need } = found;
  return {
    id: `next:${step}:${need.code}`,
    action: need.code,
    step,
    about: need.about ?? BUILD,
    sentence: need.ask,
    ...defined({
      sentenceAtBench: need.askAtBench,
      settles: need.settles,
      corrects: need.corrects,
    }),
    reason: need.must ? 'The answer of this call needs it.' : 'It comes next in this call.',
    turns: need.turns,
  };
}
