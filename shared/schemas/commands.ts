import { z } from 'zod';
import { foundSaid } from '../begins-with.ts';
import { amountsIn } from '../quantities/amounts-in.ts';
import { BEFORE_STOP } from './before-stop.ts';
import { buildSpec } from './build-spec.ts';
import { CAN_BE } from './can-be.ts';
import { type Entered, entered } from './entered.ts';
import { choice } from './fields.ts';
import { answersTo, namesValve, noiseAnswerIn, noiseQuestionOf } from './noise.ts';
import { bare } from './number-fields.ts';
import { enteredOrTurns } from './said-in-turns.ts';
import { struckOrWhole } from './struck-or-whole.ts';
import { someWords, words } from './texts.ts';
import { allOrNone, came, evenIfFaulty, faultAt } from './two-forms.ts';
import {
  CALLER_ROLES,
  CONTACT,
  ENGINE_STATES,
  GOALS,
  keysOf,
  READING_KINDS,
  UNIT_SYSTEMS,
  VALVES,
} from './words.ts';

/** The input of each command: one schema for its JSON route and its form. */
export const openCall = z.strictObject({
  callerName: words('who is calling').default(''),
  callerRole: choice(keysOf(CALLER_ROLES), 'who is calling: owner, builder or shop').default(''),
  callBack: words('how to call back').default(''),
  goal: choice(keysOf(GOALS), 'what the caller wants from this call'),
  buildLabel: someWords('a name for the build that both sides will know it by'),
  buildId: z.uuid().optional().meta({ description: 'a build that exists already' }),
  units: choice(
    keysOf(UNIT_SYSTEMS),
    'units of the call; left out, as the build’s calls were, and inches for a new one',
  ).optional(),
});

export const triage = z.strictObject({
  engineState: choice(keysOf(ENGINE_STATES), 'does it run, has it run, is it apart'),
  contact: choice(keysOf(CONTACT), 'did anything hit, bend, come loose or turn tight'),
});

export const chooseUnits = z.strictObject({
  units: choice(keysOf(UNIT_SYSTEMS), 'units of the calls about the build'),
});
export const setHold = z.strictObject({ reason: someWords('why nobody turns it', 500) });
export const liftHold = z.strictObject({ reason: someWords('why it may be turned again', 500) });
export const closeCall = z.strictObject({ outcome: someWords('how the call ended', 2000) });

export const reviseBuild = z.strictObject({
  spec: buildSpec,
  reason: words('why it changed', 500).default(''),
});

export const newArm = z.strictObject({
  name: someWords('what both sides call this arm', 100),
  family: words('part family, if known').default(''),
  ratioStamp: words('what looks like a ratio on the part, word for word').default(''),
  otherNumber: words('every other number or letter on the part, word for word').default(''),
  boxLabel: words('what the box or invoice says, word for word').default(''),
});

/** Marks of an arm that is on record, read again or more of them: what is left out stays as it is. */
export const armMarks = z.strictObject({
  ratioStamp: words('what looks like a ratio on the part, word for word').optional(),
  otherNumber: words('every other number or letter on the part, word for word').optional(),
  boxLabel: words('what the box or invoice says, word for word').optional(),
  reason: words('why it is another than before', 500).default(''),
});

/** The same with the arm that it is of, as a form has it. */
export const marksOfArm = armMarks.extend({ armId: z.uuid().meta({ description: 'the arm' }) });

export const placeArm = z.strictObject({
  armId: z.uuid().meta({ description: 'the arm' }),
  cylinder: bare('cylinder number', { least: 1, most: 16, whole: true }),
  valve: choice(keysOf(VALVES), 'which valve'),
  reason: words('why it sits there now', 500).default(''),
});

export const newReading = z
  .strictObject({
    kind: choice(keysOf(READING_KINDS), 'what was read'),
    pass: bare('number of the pass', { least: 1, most: 99, whole: true }).optional(),
    peak: enteredOrTurns('the reading: at the peak, or at the lobe lift named', CAN_BE.reading),
    zeroReturn: enteredOrTurns('where the hand stood back on the base circle', CAN_BE.zeroReturn, {
      sign: 'any',
    }).optional(),
    atLobeLift: enteredOrTurns(
      'the lobe lift at which the valve was read, for valve-lift-at',
      CAN_BE.partWay,
    ).optional(),
    counted: z
      .boolean()
      .optional()
      .meta({ description: 'the small hand was read, and which way the hand ran' }),
    ...BEFORE_STOP,
  })
  .superRefine(({ kind }, ctx) => {
    const at = came(ctx, 'atLobeLift');
    if (kind === 'valve-lift-at' && !at)
      faultAt(ctx, ['atLobeLift'], 'required', 'is missing: the lobe lift at which the valve was read');
    if (kind !== 'valve-lift-at' && Object.hasOwn(READING_KINDS, kind) && at)
      faultAt(ctx, ['atLobeLift'], 'not-allowed', 'goes with a valve lift read part of the way up alone');
  }, evenIfFaulty);

export const correctReading = z
  .strictObject({
    peak: enteredOrTurns(
      'the reading as it should be; left out with the kind too, the reading is struck',
      CAN_BE.reading,
    ).optional(),
    zeroReturn: enteredOrTurns('where the hand stood back on the base circle', CAN_BE.zeroReturn, {
      sign: 'any',
    }).optional(),
    kind: choice(keysOf(READING_KINDS), 'what was read, where it was kept as something else').optional(),
    atLobeLift: enteredOrTurns(
      'the lobe lift at which the valve was read, for valve-lift-at',
      CAN_BE.partWay,
    ).optional(),
    reason: someWords('why the reading is replaced', 500),
  })
  .superRefine((given, ctx) => {
    const { kind } = given;
    struckOrWhole(given, ctx, 'peak', ['kind']);
    const at = came(ctx, 'atLobeLift');
    if (kind === 'valve-lift-at' && !at)
      faultAt(ctx, ['atLobeLift'], 'required', 'is missing: the lobe lift at which the valve was read');
    if (kind !== 'valve-lift-at' && at)
      faultAt(ctx, ['atLobeLift'], 'not-allowed', 'goes with a valve lift read part of the way up alone');
  }, evenIfFaulty);

/** As many letters as a question can have that names an arm with all its marks on every valve. */
const LONGEST_QUESTION = 6_000;

export const answerQuestion = z
  .strictObject({
    question: someWords('which question: its own words, or its word', LONGEST_QUESTION),
    questionId: someWords('the id of the question in the assessment', 400).optional(),
    setUpId: z.uuid().optional().meta({ description: 'the set-up it was asked about' }),
    answer: someWords('what the person found', 2000),
    code: z
      .string()
      .regex(/^[a-z0-9-]{0,60}$/)
      .optional()
      .meta({ description: 'the word of the question, such as turn-miscounted or read-back' }),
    found: z.boolean().optional().meta({ description: 'something was found wrong' }),
    value: entered(
      'length',
      'the amount, where the question asks for one: how much lash was in it',
      CAN_BE.lashFound,
      {
        sign: 'not-negative',
      },
    ).optional(),
    lean: entered('angle', 'how far the plunger leaned, where that is asked', CAN_BE.lean).optional(),
    cylinder: bare('cylinder of the one valve that it is, in the engine’s own numbering', {
      least: 1,
      most: 16,
      whole: true,
    }).optional(),
    valve: choice(keysOf(VALVES), 'which valve of the cylinder').optional(),
  })
  .superRefine(allOrNone('cylinder', 'valve'), evenIfFaulty)
  .superRefine(({ code, questionId, answer }, ctx) => {
    if (typeof answer !== 'string') return;
    const noise = noiseQuestionOf(questionId, code);
    if (noise !== undefined && noiseAnswerIn(noise, answer) === undefined)
      faultAt(
        ctx,
        ['answer'],
        'not-allowed',
        `came as “${answer.slice(0, 40)}”; it begins with one of ${Object.keys(answersTo(noise)).join(', ')}`,
      );
    if (namesValve(noise, answer)) return;
    for (const name of ['cylinder', 'valve'].filter((each) => came(ctx, each)))
      faultAt(ctx, [name], 'not-allowed', 'goes with the answer that it is one valve alone');
  }, evenIfFaulty)
  .superRefine(({ code, questionId, answer, found, value, lean }, ctx) => {
    if (lean !== undefined) checkLean(ctx, lean, asksForLean(code, questionId), answer, came(ctx, 'value'));
    if ((lean?.value ?? 0) > 0 && found === false)
      faultAt(ctx, ['lean'], 'not-allowed', 'does not go with an answer that nothing was found');
    if (code === 'read-back' && !came(ctx, 'found') && foundSaid(String(answer)) === undefined)
      faultAt(ctx, ['found'], 'required', 'is missing: are the entries as they were read, or was one wrong');
    if (/^zero\b/.test(answer) && (value?.value ?? 0) > 0)
      faultAt(ctx, ['value'], 'not-allowed', 'does not go with a lash that was taken up to zero');
    if (came(ctx, 'value') || typeof answer !== 'string' || !asksForLash(code, questionId)) return;
    const [amount, ...more] = amountsIn(answer);
    if (amount !== undefined && more.length === 0)
      faultAt(ctx, ['value'], 'required', `is missing. Is that the lash: ${amount.readAs}?`);
    else if (/^as[- ](?:logged|card|told)\b/.test(answer))
      faultAt(ctx, ['value'], 'required', 'is missing: the amount that the question offers');
  }, evenIfFaulty);

/** A plunger that leans more than this is not read with: common practice, no published source. */
const MOST_LEAN = 45;

function checkLean(
  ctx: z.RefinementCtx,
  { value, readAs }: Entered,
  isAsked: boolean,
  answer: string,
  withValue: boolean,
): void {
  const refuse = (detail: string) => faultAt(ctx, ['lean'], 'not-allowed', detail);
  if (!isAsked || withValue) refuse('goes with a question about how the plunger stands alone');
  else if (/^parallel\b/.test(answer)) refuse('does not go with a plunger that stood parallel');
  else if (value > MOST_LEAN) refuse(`is ${readAs}: no more than ${MOST_LEAN} deg can be read with`);
}

/** Questions about how the plunger stands. */
const asksForLean = (code: string | undefined, questionId: string | undefined): boolean =>
  isAbout(['plunger-tilted', 'alignment-not-said'], code, questionId);

/** Questions about the lash: words alone would leave open how much was in it. */
const ABOUT_LASH = ['lash-not-said', 'lash-left-in', 'lash-setting-not-said'] as const;

export function asksForLash(code: string | undefined, questionId: string | undefined): boolean {
  return isAbout(ABOUT_LASH, code, questionId);
}

function isAbout(
  codes: readonly string[],
  code: string | undefined,
  questionId: string | undefined,
): boolean {
  return codes.some((each) => code === each || questionId?.startsWith(`question:${each}:`) === true);
}

export const newNote = z.strictObject({
  kind: choice(['note', 'advice', 'promise'], 'a note, advice given, or a promise'),
  body: someWords('what was said', 4000),
  restsOn: words('the figures or limits it rests on', 1000).default(''),
  owner: words('who does it').default(''),
  due: z.iso.date().optional().meta({ description: 'by when' }),
});

export const strikeWorking = z.strictObject({
  reason: someWords('why the computation no longer counts', 500),
});
export type StrikeWorking = z.output<typeof strikeWorking>;

export const shareBuild = z.strictObject({
  holder: someWords('who the link is for').default('Builder'),
  days: bare('days until it expires', { least: 1, most: 90, whole: true }).default(14),
});
