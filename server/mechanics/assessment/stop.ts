import { defined } from '../../../shared/defined.ts';
import type { NextAction, StopReason, Subject } from './assessment.ts';
import { byId, upperFirst } from './common/said.ts';
import type { Evidence } from './evidence.ts';

const BUILD: Subject = { of: 'build' };

const ended = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`);

function held({ call }: Evidence): StopReason[] {
  const { hold } = call;
  if (hold === undefined) return [];
  return [
    {
      id: 'stop:held',
      code: 'held',
      about: BUILD,
      sentence: `Do not turn it: ${ended(hold.reason)}`,
      wayOut: 'The desk lifts the hold, with a reason, once that is looked at.',
      from: 'person',
      answered: true,
      ...defined({ line: hold.line, since: hold.since }),
    },
  ];
}

function contact({ call }: Evidence): StopReason[] {
  if (call.contact !== 'something') return [];
  return [
    {
      id: 'stop:contact',
      code: 'contact',
      about: BUILD,
      sentence: 'Do not turn it: something hit, bent, came loose or turns tight.',
      wayOut: 'A qualified shop looks at it first; the desk lifts the stop with what was found.',
      from: 'person',
      answered: true,
    },
  ];
}

/** A hold is lifted by taking it off; everything else stays until a person lifts it by name, once it is answered. */
function isLifted(reason: StopReason, { call }: Evidence): boolean {
  if (reason.code === 'held' || !reason.answered) return false;
  return (call.stopsLifted ?? []).some(
    ({ stopId, entryId }) => stopId === reason.id && entryId === reason.entryId,
  );
}

/**
 * Why nobody turns it: what a person set, what the first question of the call told, and what the readings raise.
 *
 * A reason from the readings stands until what raised it is answered or struck out; lifting it before that does
 * nothing.
 */
export function stopReasons(evidence: Evidence, raised: readonly StopReason[]): StopReason[] {
  const all = [...held(evidence), ...contact(evidence), ...raised.toSorted(byId)];
  const once = all.filter((reason, index) => all.findIndex(({ id }) => id === reason.id) === index);
  return once
    .filter((reason) => !isLifted(reason, evidence))
    .map((reason) => ({ ...reason, wayOut: upperFirst(reason.wayOut) }));
}

const STEPS: Readonly<Record<StopReason['code'], NextAction['step']>> = {
  held: 'triage',
  contact: 'triage',
  'gap-short': 'consequences',
  'lash-grew-again': 'adjuster',
  'lobe-worn': 'sheet',
  'mark-at-the-edge': 'geometry',
};

const FIRST: Readonly<Record<StopReason['code'], string>> = {
  held: 'Leave it as it stands: photograph it, and read the marks of the parts that are off',
  contact: 'Leave it as it stands: photograph what hit, bent or came loose, and say which parts are off',
  'gap-short':
    'Leave it as it stands: write down which parts are in it, and what the part maker asks for this gap',
  'lash-grew-again':
    'Do not set it again: draw a line over nut and stud, and photograph the nut, the stem’s tip and both ends of the pushrod',
  'lobe-worn':
    'Leave it as it stands: photograph the lobe and the lifter’s face if they can be seen, and look at the oil',
  'mark-at-the-edge': 'Leave it as it stands: photograph the stem’s tip and its edge, and look at the guide',
};

/** What a stop needs now; none of it turns the engine. */
export function actionUnder(reason: StopReason): NextAction {
  return {
    id: `next:under:${reason.id}`,
    action: `under-${reason.code}`,
    step: STEPS[reason.code],
    about: reason.about,
    sentence: `${FIRST[reason.code]}. ${reason.wayOut}`,
    reason: reason.sentence,
    turns: false,
  };
}
