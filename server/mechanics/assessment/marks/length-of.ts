import { adviceOf } from '../../tip-mark/advice.ts';
import type { Advice } from '../../tip-mark/advice-types.ts';
import type { Mark, MarkContext } from '../../tip-mark/types.ts';
import type { MarkedValveDetail, WhyNoLength } from './detail.ts';

const BECAUSE: Readonly<Record<Exclude<Advice['how'], 'keep'>, WhyNoLength>> = {
  change: 'try',
  'both-ways': 'try',
  contradict: 'contradict',
  'width-first': 'width',
  'still-wide': 'heights',
};

/** What the marks of a valve say of its pushrod’s length, on a stud; nothing where no length moves them. */
export function lengthOf(
  marks: readonly Mark[],
  context: MarkContext,
  waits: WhyNoLength | undefined,
): MarkedValveDetail['length'] {
  const judged = marks.at(-1);
  if (context.mounting !== 'stud') return undefined;
  if (waits !== undefined) return { how: 'open', because: waits };
  if (judged === undefined || judged.side === 'sideways') return undefined;
  const advice = adviceOf(marks, context);
  if (advice === undefined) return undefined;
  return advice.how === 'keep'
    ? { how: 'stays', at: advice.at ?? judged.pushrod, over: context.over }
    : { how: 'open', because: BECAUSE[advice.how] };
}

/** Which way the marks of a valve ask its stand or pedestal to go; nothing where they ask for no change. */
export function heightOf(marks: readonly Mark[], context: MarkContext): MarkedValveDetail['height'] {
  if (context.mounting === undefined || context.mounting === 'stud') return undefined;
  const advice = adviceOf(marks, context);
  return advice?.how === 'change' ? (advice.way === 'up' ? 'raise' : 'lower') : undefined;
}
