import { defined } from '../../../shared/defined.ts';
import { firstAtGrowth } from '../lash/adjuster-words.ts';
import type { AssessedQuestion, NextAction, NotToRun, StopReason, Subject } from './assessment.ts';
import { ended } from './common/first-said.ts';
import { byId, keyOf } from './common/said.ts';
import { SHOP_LOOKS, STRUCK_BY_DESK } from './common/way-out.ts';
import type { Evidence } from './evidence.ts';

const BUILD: Subject = { of: 'build' };

function held({ call }: Evidence): StopReason[] {
  const { hold } = call;
  if (hold === undefined) return [];
  return [
    {
      id: 'stop:held',
      code: 'held',
      about: BUILD,
      sentence: `Do not turn it: ${ended(hold.reason)}`,
      why: hold.reason,
      wayOut: 'The desk lifts the stop, with a reason, once that is looked at.',
      wayOutAtBench: 'Have that looked at, and leave it until the desk has lifted the stop.',
      from: 'person',
      answered: true,
      restsOn: [],
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
      ...SHOP_LOOKS,
      from: 'person',
      answered: true,
      restsOn: [],
    },
  ];
}

/** A hold is lifted by taking it off; everything else stays until a person lifts it by name, once it is answered. */
export function isLifted(reason: StopReason, { call }: Evidence): boolean {
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
  const standing = once.filter((reason) => !isLifted(reason, evidence));
  return standing.filter((reason) => reason.code !== 'held' || !isSaidBy(reason, standing));
}

/** The hold that contact set says what the contact says: it is told once, with the way out of the contact. */
const isSaidBy = (held: StopReason, standing: readonly StopReason[]): boolean =>
  standing.some(({ id, sentence }) => id !== held.id && sentence === held.sentence);

/** A gap that was read short is not run, also once the desk lets it be turned by hand to read it again. */
export function liftedGaps(evidence: Evidence, raised: readonly StopReason[]): NotToRun[] {
  return raised
    .filter((reason) => reason.code === 'gap-short' && isLifted(reason, evidence))
    .map(({ id, entryId, about, sentence, why }) => ({
      id: `not-to-run:${id}`,
      what: 'run' as const,
      ...defined({ toReadAgain: entryId }),
      about,
      sentence: why === undefined ? sentence : `Do not run it: ${ended(why)}`,
      wayOut: `Have it turned by hand only, gently, and the gap read again. A qualified shop looks before it runs. ${STRUCK_BY_DESK}`,
      wayOutAtBench:
        'Turn it by hand only, gently, and read the gap again. Have a qualified shop look before it runs.',
    }))
    .toSorted(byId);
}

const STEPS: Readonly<Record<StopReason['code'], NextAction['step']>> = {
  held: 'triage',
  contact: 'triage',
  'gap-short': 'sheet',
  'lash-grew-again': 'adjuster',
  'lobe-worn': 'sheet',
  'mark-at-the-edge': 'geometry',
  'part-damaged': 'noise',
  'plunger-bottomed': 'adjuster',
  'sign-of-damage': 'noise',
};

const FIRST: Readonly<Record<StopReason['code'], string>> = {
  held: 'Leave it as it stands: photograph it, and read the marks of the parts that are off',
  contact: 'Leave it as it stands: photograph what hit, bent or came loose, and say which parts are off',
  'gap-short':
    'Leave it as it stands: write down which parts are in it, and what the part maker asks for this gap',
  'lash-grew-again': firstAtGrowth('not-known'),
  'lobe-worn':
    'Leave it as it stands: photograph the lobe and the lifter’s face if they can be seen, and look at the oil',
  'sign-of-damage':
    'Leave it as it stands: keep the oil and the filter, photograph what was found, and count the pieces',
  'part-damaged':
    'Leave it as it stands: photograph the part, look at all the others like it, and count the pieces',
  'mark-at-the-edge': 'Leave it as it stands: photograph the stem’s tip and its edge, and look at the guide',
  'plunger-bottomed': 'Leave the engine as it stands, and back that adjuster off until the pushrod has play',
};

/** Whose first words ask for a photograph. */
const PHOTOGRAPHED: ReadonlySet<StopReason['code']> = new Set([
  'held',
  'contact',
  'lash-grew-again',
  'lobe-worn',
  'mark-at-the-edge',
  'part-damaged',
  'sign-of-damage',
]);

const asksPhotograph = ({ code, from, answered }: StopReason): boolean =>
  PHOTOGRAPHED.has(code) && (from === 'person' || !answered);

const LEFT = 'Leave it as it stands';

/** What a reason from the readings waits for is looked at and answered; the rest is the desk’s to lift. */
function sentenceUnder({ code, from, answered, first = FIRST[code] }: StopReason, wayOut: string): string {
  if (from === 'person') return `${first}. ${wayOut}`;
  return answered ? `${LEFT}. ${wayOut}` : `${first}. Then answer what was found.`;
}

/** The open question that a stop of the readings waits for: the one of its own name, else one of the same entries. */
function askedUnder(
  { code, about, answered, from, restsOn }: StopReason,
  questions: readonly AssessedQuestion[],
): string | undefined {
  if (answered || from === 'person') return undefined;
  const open = questions.filter((each) => each.answered === undefined && keyOf(each.about) === keyOf(about));
  const asked =
    open.find((each) => each.code === code) ??
    open.find((each) => each.restsOn.some((id) => restsOn.includes(id)));
  return asked?.code;
}

/** What a stop needs now; none of it turns the engine. Of several the first that is not answered yet. */
export function actionUnder(
  stop: readonly StopReason[],
  questions: readonly AssessedQuestion[],
): NextAction | undefined {
  const reason = stop.find(({ answered }) => !answered) ?? stop[0];
  if (reason === undefined) return undefined;
  return {
    id: `next:under:${reason.id}`,
    action: `under-${reason.code}`,
    step: reason.step ?? STEPS[reason.code],
    about: reason.about,
    sentence: sentenceUnder(reason, reason.wayOut),
    sentenceAtBench: sentenceUnder(reason, reason.wayOutAtBench ?? reason.wayOut),
    reason: reason.sentence,
    ...(asksPhotograph(reason) ? { photograph: true as const } : {}),
    ...defined({ settles: askedUnder(reason, questions) }),
    turns: false,
  };
}
