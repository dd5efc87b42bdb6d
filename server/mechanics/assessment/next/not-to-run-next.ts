import { defined } from '../../../../shared/defined.ts';
import type { AssessedQuestion, NextAction, NotToRun } from '../assessment.ts';
import { chosenOf } from '../common/chosen.ts';
import { keyOf, lowerFirst, subjectSaid, upperFirst } from '../common/said.ts';
import { MISREAD, READ_TWICE } from '../gaps/misread.ts';
import { questionNext } from './question-next.ts';

/** It was read again, and comes out otherwise: what was done between says which of the two is of the engine as it is. */
function readAgain({ about }: NotToRun, questions: readonly AssessedQuestion[]): NextAction | undefined {
  const apart = questions.find(({ code, about: of }) => code === 'scans-apart' && keyOf(of) === keyOf(about));
  const answer = apart === undefined ? undefined : chosenOf(apart);
  if (apart === undefined || answer === 'not-changed') return undefined;
  const place = upperFirst(subjectSaid(about));
  const changed = answer === 'changed';
  return {
    id: `next:${apart.id}${changed ? ':changed' : ''}`,
    action: changed ? 'strike-old-scan' : apart.code,
    step: 'scan',
    about,
    sentence: changed
      ? `${place}: strike the scan of the old state out, with the reason.`
      : `${place}: ${lowerFirst(apart.test)}`,
    reason: apart.ask,
    turns: false,
  };
}

/** What is done once it was said which of two readings of a gap was misread. */
const TO_DO: Readonly<Record<string, { readonly action: string; readonly todo: string }>> = {
  [MISREAD.short]: { action: 'strike-gap', todo: 'strike the short reading out, with the reason.' },
  [MISREAD.again]: { action: 'strike-gap', todo: 'strike the later reading out, with the reason.' },
  [MISREAD.neither]: {
    action: 'shop-looks',
    todo: 'leave it. Both readings hold, and a qualified shop looks before it runs.',
  },
};

/** It was read again, on the sheet, and is not short by that: which of the two was misread is asked, and done. */
function readTwice(
  { about, toReadAgain = '' }: NotToRun,
  questions: readonly AssessedQuestion[],
): NextAction | undefined {
  const twice = questions.find(({ code, restsOn }) => code === READ_TWICE && restsOn.includes(toReadAgain));
  if (twice === undefined) return undefined;
  const done = TO_DO[chosenOf(twice) ?? ''];
  return {
    id: `next:${twice.id}${done === undefined ? '' : `:${done.action}`}`,
    action: done?.action ?? twice.code,
    step: twice.step,
    about,
    sentence: `${upperFirst(subjectSaid(about))}: ${done?.todo ?? lowerFirst(twice.test)}`,
    reason: twice.ask,
    turns: false,
  };
}

/** Nothing that is open may take it away. */
const isSure = ({ hangsOn = [] }: NotToRun): boolean => hangsOn.length === 0;

/** What nobody has to turn for, and by which it may fit after all, is asked before parts are changed. */
function mayTakeAway(
  { hangsOn = [] }: NotToRun,
  questions: readonly AssessedQuestion[],
): NextAction | undefined {
  const open = questions.find(({ id, answered }) => answered === undefined && hangsOn.includes(id));
  return open === undefined ? undefined : questionNext([{ ...open, weight: 'strong' }]);
}

/** A stop that was lifted to read its gap again, or parts that are not to be fitted: before anything else is asked. */
export function notToRunNext(
  notToRun: readonly NotToRun[],
  questions: readonly AssessedQuestion[],
): NextAction | undefined {
  const fits = notToRun.filter(({ what, beside }) => what === 'fit' && beside !== true);
  const first =
    notToRun.find(({ toReadAgain }) => toReadAgain !== undefined) ??
    fits.find((each) => isSure(each)) ??
    fits[0];
  if (first === undefined) return undefined;
  const before = mayTakeAway(first, questions);
  if (before !== undefined) return before;
  const lifted = first.toReadAgain !== undefined;
  const again = lifted ? (readTwice(first, questions) ?? readAgain(first, questions)) : undefined;
  if (again !== undefined) return again;
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

/** What is done about it first; nothing where it is only said, and the call goes on. */
function todoOf(
  { todo, saidFirst }: NotToRun,
  isPlanning: boolean,
): Pick<NextAction, 'action' | 'step' | 'turns' | 'settles'> | undefined {
  if (todo !== undefined) return { ...todo, turns: true };
  return isPlanning && saidFirst === true
    ? { action: 'do-not-run', step: 'consequences', turns: false }
    : undefined;
}

/** What is not run before something is read: that goes before whatever else the call is about. */
export function toReadBeforeRunning(
  notToRun: readonly NotToRun[],
  isPlanning: boolean,
): NextAction | undefined {
  return notToRun.flatMap((each): NextAction[] => {
    const todo = todoOf(each, isPlanning);
    if (todo === undefined) return [];
    const place = each.about.of === 'build' ? '' : `${upperFirst(subjectSaid(each.about))}: `;
    const told = (text: string): string => `${place}${place === '' ? text : lowerFirst(text)}`;
    return [
      {
        id: `next:${each.id}`,
        action: todo.action,
        step: todo.step,
        about: each.about,
        sentence: told(each.wayOut),
        ...(each.wayOutAtBench === undefined ? {} : { sentenceAtBench: told(each.wayOutAtBench) }),
        reason: each.sentence,
        ...defined({ settles: todo.settles }),
        turns: todo.turns,
      },
    ];
  })[0];
}
