import { inDoubt } from '../common/asked.ts';
import type { AssessedQuestion } from '../assessment.ts';
import { ABOUT_TURNS } from './counted.ts';
import type { SetUpRead } from './set-up-read.ts';

/** Doubts about the card or a sum, not about what was read. */
const NOT_ABOUT_READINGS: ReadonlySet<string> = new Set([
  'card-ratio',
  'lash-formula',
  'stated-not-read',
  'springs-at-different-lash',
  // The count was looked at: the inference weighs what is left.
  'count-does-not-fit',
]);

/** A mean of falling passes is no ratio, whatever its interval (common practice, no published source). */
const SINKING = 'passes that don’t sink: a solid lifter, or one locked solid at the same seat height';

const sinks = (questions: readonly AssessedQuestion[]): boolean =>
  questions.some(({ code, weight }) => code === 'falling-passes' && weight === 'strong');

function stateLacks({ setUp }: SetUpRead): string[] {
  const { spring, lifter, lash, lashSetting, alignment } = setUp;
  return [
    ...(spring === 'not-said' ? ['which spring is on the valve'] : []),
    ...(lifter === 'not-said' ? ['which lifter is under the pushrod'] : []),
    ...(lash === 'not-said' ? ['whether the lash was taken up'] : []),
    ...(lash === 'set' && lashSetting === undefined
      ? ['a reading at zero lash: lash was left in, and how much is not said']
      : []),
    ...(lash === 'set' && lashSetting !== undefined ? ['a reading at zero lash: lash was left in'] : []),
    ...(alignment === 'leaning' ? ['a reading with the plunger parallel to the stem'] : []),
  ];
}

function doubtLacks(questions: readonly AssessedQuestion[]): string[] {
  const open = questions.filter(
    (question) =>
      inDoubt(question) && !NOT_ABOUT_READINGS.has(question.code) && question.code !== 'falling-passes',
  );
  return open.map((question) => {
    if (question.answered?.found === true) return `the reading again: ${bare(question.ask)} was found`;
    return ABOUT_TURNS.has(question.code)
      ? `an answer whether the turns were counted right`
      : `an answer: ${question.ask}`;
  });
}

/** `Could a turn be missing?` as a thing that was found. */
const bare = (ask: string): string => `“${ask}”`;

/** What must be known or done before a word stands against what was read in this set-up. */
export function lacksOf(own: SetUpRead, questions: readonly AssessedQuestion[]): string[] {
  const sinking = sinks(questions);
  return [
    ...new Set([
      ...stateLacks(own),
      ...(own.valve.used.length === 0 ? ['a pass of the valve lift'] : []),
      ...own.lobe.lacks,
      ...(sinking ? [SINKING] : own.valve.lacks),
      ...doubtLacks(questions),
    ]),
  ];
}

/** Passes of which no mean may be taken: the lifter sinks, or nobody can say which of them is right. */
export const noMean = (own: SetUpRead, questions: readonly AssessedQuestion[]): boolean =>
  sinks(questions) || own.valve.lacks.length > 0 || own.lobe.passes.lacks.length > 0;
