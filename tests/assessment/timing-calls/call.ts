import type { Assessment } from '../../../server/mechanics/assessment/assessment.ts';
import type { AnswerEvidence, Evidence } from '../../../server/mechanics/assessment/evidence.ts';
import { PLAIN } from '../../mechanics/assessment/plain-build.ts';
import { type Kept, workingsOf } from '../../tools/record/kept-workings.ts';

/*
 * Calls about cam timing. By hand: equal drop at 62 and 148 peaks at 105; an exhaust at 160 and 70 before TDC peaks at
 * 115 before it. The stop read at 37 after and 35 before stands at 36: the wheel reads 1° too much after TDC (as 36.75
 * and 35.25 do by .75, a printed degreeing text), so that intake peaks at 104.
 */

export const drop = (before: number, after: number, card: number, side = 'intake'): Kept => [
  'centreline',
  { before: `${before} deg`, after: `${after} deg`, card: `${card} deg`, side },
];
export const stop = (after: number, before: number): Kept => [
  'top-dead-centre',
  { stopReadings: [`${after} deg`, `${before} deg`] },
];
export const answer = (code: string, ask: string, said: string, line: number): AnswerEvidence => ({
  id: `answer-${code}`,
  line,
  code,
  question: ask,
  answer: said,
});

type Said = (
  kept: readonly Kept[],
  answers?: readonly AnswerEvidence[],
  base?: Partial<Evidence>,
) => Assessment;

/** What is said of a build with these sums kept and these answers given. */
export const saying =
  (assess: (evidence: Evidence) => Assessment): Said =>
  (kept, answers = [], base = {}) =>
    assess({ ...PLAIN, ...base, answers, workings: workingsOf(kept) });

export const told = ({ headlines }: Assessment) =>
  headlines.filter(({ step }) => step === 'timing').map(({ sentence }) => sentence);
export const codes = ({ questions }: Assessment) =>
  questions.filter(({ step }) => step === 'timing').map(({ code }) => code);
export const figure = ({ quantities }: Assessment, side: string) => {
  const found = quantities.find(({ id }) => id === `timing:centreline:${side}`);
  const degrees = (si = Number.NaN) => Math.round((si * 18000) / Math.PI) / 100;
  return [degrees(found?.low), degrees(found?.value), degrees(found?.high)];
};
