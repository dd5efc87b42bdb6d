import type { AssessedQuestion } from '../assessment.ts';
import { inDoubt } from '../common/asked.ts';
import { passNamed } from './answers.ts';
import { ABOUT_TURNS } from './counted.ts';
import type { SetUpRead } from './set-up-read.ts';

/** Doubts about the card or a sum, not about what was read. */
const NOT_ABOUT_READINGS: ReadonlySet<string> = new Set([
  'card-ratio',
  'lash-formula',
  'stated-not-read',
  'springs-at-different-lash',
  'spring-mixed',
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

/** A pass that stands apart is out of the figures, but only a person strikes it out. */
function apartLacks({ valve, lobe }: SetUpRead): string[] {
  const all = [...valve.aside, ...(lobe.from === undefined ? lobe.passes.aside : [])];
  return all.map(({ pass, why }) => `pass ${pass.pass} entered again or struck out: it ${why}`);
}

/** Answers to these say how it was read; what that lacks is said of the state. */
const OF_STATE: ReadonlySet<string> = new Set([
  'spring-not-said',
  'lifter-not-said',
  'lash-not-said',
  'lash-setting-not-said',
  'alignment-not-said',
  'rests-on-not-said',
]);

/** A doubt that is open on what the word would rest on, and that no other lack has named already. */
function isOpen(question: AssessedQuestion, { setUp, valve, lobe }: SetUpRead): boolean {
  const foundSo = question.answered?.found === true && !OF_STATE.has(question.code);
  if ((!inDoubt(question) && !foundSo) || NOT_ABOUT_READINGS.has(question.code)) return false;
  if (question.code === 'lash-left-in' && setUp.lash === 'set') return false;
  if (question.code === 'plunger-tilted' && setUp.alignment === 'leaning') return false;
  const named = [...valve.aside, ...lobe.passes.aside].map(({ pass }) => pass.id);
  return question.restsOn.length === 0 || !question.restsOn.every((id) => named.includes(id));
}

/** Strong doubts that nobody has answered, or that were found to be so while the reading still stands. */
export function doubtsOf(own: SetUpRead, questions: readonly AssessedQuestion[]): string[] {
  const open = questions.filter((each) => each.code !== 'falling-passes' && isOpen(each, own));
  return open.map(({ ask, code, answered }) => {
    const pass = answered === undefined ? undefined : passNamed(answered);
    if (answered?.found === true && pass !== undefined)
      return `pass ${pass} entered again or struck out: “${ask}” was found to be so on it`;
    if (answered?.found === true)
      return `the reading entered again or struck out: “${ask}” was found to be so`;
    return ABOUT_TURNS.has(code) ? `whether the turns were counted right: ${ask}` : `an answer: ${ask}`;
  });
}

/** What must be known or done before a word stands against what was read in this set-up, its doubts aside. */
export function lacksOf(own: SetUpRead, questions: readonly AssessedQuestion[]): string[] {
  const sinking = sinks(questions);
  return [
    ...new Set([
      ...stateLacks(own),
      ...(own.valve.used.length === 0 ? ['a pass of the valve lift'] : []),
      ...own.lobe.lacks,
      ...(sinking ? [SINKING] : own.valve.lacks),
      ...apartLacks(own),
    ]),
  ];
}

/** Passes of which no mean may be taken: the lifter sinks, or nobody can say which of them is right. */
export const noMean = (own: SetUpRead, questions: readonly AssessedQuestion[]): boolean =>
  sinks(questions) || own.valve.lacks.length > 0 || own.lobe.passes.lacks.length > 0;
