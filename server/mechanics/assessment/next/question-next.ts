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
  (code === 'lobe-worn' || code === 'mark-at-the-edge' || code === CAM_THEN) && answered?.found === true;

/** What is done once a doubt was found to be so, and whether entries are corrected for it. */
interface Leads {
  readonly todo: string;
  readonly corrects: boolean;
}

const done = (todo: string): Leads => ({ todo, corrects: false });
const LOBE_AGAIN = done('read the lobe again at equal drop, coming up to the lift in running direction.');
const SUM_AGAIN = done('work it out again with the right figure, and keep that.');

/** What an answer leads to that is not the entry of that reading once more. */
const LEADS_TO: Readonly<Partial<Record<string, Leads>>> = {
  'lobes-apart': done(
    'read both lobes again at equal drop with the pointer left alone, coming up to the lift in running direction.',
  ),
  'centrelines-differ': LOBE_AGAIN,
  'centreline-unusual': LOBE_AGAIN,
  'scan-far-from-tdc': done('prove top dead centre by the positive stop on both sides, then scan it again.'),
  'scan-copied': {
    todo: 'scan that valve by itself, and strike out the one that was copied.',
    corrects: true,
  },
  'lash-left-in': done('take the lash up, read that lift again, and enter it.'),
  'lash-grew-everywhere': done('set one again step by step, and read it at the heat that it was set at.'),
  'lash-unusual': done('find out which lash is asked for at that heat, set it to that, and enter it.'),
  'springs-at-different-lash': done('read both springs again at one lash, and enter those.'),
  'plunger-bottomed': done('back the adjuster off to zero lash, and keep the turns again.'),
  'preload-over': done('find zero lash again by up-and-down play, and work the turns out again.'),
  'stud-load': done('fit studs whose maker allows the load, or softer springs, and say which are in it.'),
  'sum-unlikely': SUM_AGAIN,
  'heat-sums-differ': SUM_AGAIN,
  'sum-against-log': done('work it out again from the gap that the log has, and keep that.'),
  'turn-heat': done(
    'work the turn out again with the gap found and the lash wanted at one heat, and keep that.',
  ),
  'lifters-differ': done('work the turns out again for the lifters that are in it.'),
  'threads-differ': done('work the turns out again with the thread that is on it.'),
  'ratio-not-listed': done('look the part number up, and say which ratio they are sold as.'),
};

function leadsTo({ code, restsOn }: AssessedQuestion): Leads {
  const own = LEADS_TO[code];
  if (own !== undefined) return own;
  if (isAboutCard({ code, restsOn })) return done('put the lobe lift of the card right.');
  const what = restsOn.length > 1 ? ['those readings', 'them'] : ['that reading', 'it'];
  return { todo: `enter ${what[0]} again, or strike ${what[1]} out with the reason.`, corrects: true };
}

/** The test of a strong doubt; a reading that was found wrong is entered again first. */
export function questionNext(questions: readonly AssessedQuestion[]): NextAction | undefined {
  const open = questions.find(
    (question) => inDoubt(question) && !isSettled(question) && !NOT_TAKEN_AGAIN.has(question.code),
  );
  if (open === undefined) return undefined;
  const again = open.answered?.found === true ? leadsTo(open) : undefined;
  const of = open.about.of === 'build' ? '' : `${upperFirst(subjectSaid(open.about))}: `;
  const told = (todo: string): string => (of === '' ? upperFirst(todo) : `${of}${todo}`);
  const atBench = again === undefined ? open.testAtBench : undefined;
  return {
    id: `next:${open.id}`,
    action: open.code,
    step: open.step,
    about: open.about,
    sentence: told(again?.todo ?? open.test),
    ...(atBench === undefined ? {} : { sentenceAtBench: told(atBench) }),
    reason: open.ask,
    ...(again?.corrects === true ? { corrects: open.restsOn } : {}),
    turns: again === undefined && !isAsked(open),
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
