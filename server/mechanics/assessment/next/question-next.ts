import type { AssessedQuestion, NextAction } from '../assessment.ts';
import { inDoubt } from '../common/asked.ts';
import { isAsked } from '../common/is-asked.ts';
import { subjectSaid, upperFirst } from '../common/said.ts';
import { isAboutCard } from '../ratio/asked/conditions.ts';
import { CAM_THEN } from '../timing/cam-then.ts';

/** Doubts about what a reading is set against: the reading itself stands. */
const NOT_TAKEN_AGAIN: ReadonlySet<string> = new Set(['card-ratio', 'spring-mixed']);

/**
 * It was read right, and what it says of the part was found so; or it was of the cam as it stood, and what lacks now is a
 * reading with it where it is: there is nothing to enter again.
 */
const isSettled = ({ code, answered }: AssessedQuestion): boolean =>
  (code === 'lash-grew' || code === 'lobe-worn' || code === 'mark-at-the-edge' || code === CAM_THEN) && answered?.found === true;

/** What an answer leads to that is not the entry of that reading once more. */
const LEADS_TO: Readonly<Partial<Record<string, string>>> = {
  'lobes-apart':
    'read both lobes again at equal drop with the pointer left alone, coming up to the lift in running direction.',
  'scan-far-from-tdc': 'prove top dead centre by the positive stop on both sides, then scan it again.',
  'scan-copied': 'scan that valve by itself, and strike out the one that was copied.',
  'lash-left-in': 'take the lash up, read that lift again, and enter it.',
  'lash-grew-everywhere': 'set one again step by step, and read it at the heat that it was set at.',
  'springs-at-different-lash': 'read both springs again at one lash, and enter those.',
};

function againSaid({ code, restsOn }: AssessedQuestion): string {
  const leads = LEADS_TO[code];
  if (leads !== undefined) return leads;
  if (isAboutCard({ code, restsOn })) return 'put the lobe lift of the card right.';
  if (code === 'plunger-bottomed') return 'back the adjuster off to zero lash, and keep the turns again.';
  if (code === 'stud-load')
    return 'fit studs whose maker allows the load, or softer springs, and say which are in it.';
  if (code === 'preload-over')
    return 'find zero lash again by up-and-down play, and work the turns out again.';
  if (code === 'sum-unlikely' || code === 'heat-sums-differ')
    return 'work it out again with the right figure, and keep that.';
  if (code === 'sum-against-log') return 'work it out again from the gap that the log has, and keep that.';
  if (code === 'turn-heat')
    return 'work the turn out again with the gap found and the lash wanted at one heat, and keep that.';
  if (code === 'lash-unusual')
    return 'find out which lash is asked for at that heat, set it to that, and enter it.';
  if (code === 'lifters-differ') return 'work the turns out again for the lifters that are in it.';
  if (code === 'centrelines-differ' || code === 'centreline-unusual')
    return 'read the lobe again at equal drop, coming up to the lift in running direction.';
  if (code === 'threads-differ') return 'work the turns out again with the thread that is on it.';
  return code === 'ratio-not-listed'
    ? 'look the part number up, and say which ratio they are sold as.'
    : restsOn.length > 1
      ? 'enter those readings again, or strike them out with the reason.'
      : 'enter that reading again, or strike it out with the reason.';
}

/** The test of a strong doubt; a reading that was found wrong is entered again first. */
export function questionNext(questions: readonly AssessedQuestion[]): NextAction | undefined {
  const open = questions.find(
    (question) => inDoubt(question) && !isSettled(question) && !NOT_TAKEN_AGAIN.has(question.code),
  );
  if (open === undefined) return undefined;
  const again = open.answered?.found === true;
  const of = open.about.of === 'build' ? '' : `${upperFirst(subjectSaid(open.about))}: `;
  const told = (todo: string): string => (of === '' ? upperFirst(todo) : `${of}${todo}`);
  const atBench = again ? undefined : open.testAtBench;
  return {
    id: `next:${open.id}`,
    action: open.code,
    step: open.step,
    about: open.about,
    sentence: told(again ? againSaid(open) : open.test),
    ...(atBench === undefined ? {} : { sentenceAtBench: told(atBench) }),
    reason: open.ask,
    turns: !again && !isAsked(open),
  };
}

/** Of the sheet: before anything is read or moved that would rest on a row in doubt. */
export const sheetDoubtNext = (questions: readonly AssessedQuestion[]): NextAction | undefined =>
  questionNext(questions.filter(({ step }) => step === 'sheet'));

/**
 * A gap that grew, once its causes are looked into: what is looked at and put right on that valve before the call ends.
 * Answered, it leaves the setting to do.
 */
export const mendNext = (questions: readonly AssessedQuestion[]): NextAction | undefined =>
  questionNext(
    questions
      .filter(({ code, answered }) => code === 'lash-grew' && answered === undefined)
      .map((each): AssessedQuestion => ({ ...each, weight: 'strong' })),
  );
