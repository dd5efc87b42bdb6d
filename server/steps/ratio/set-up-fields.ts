import { inSpoken } from '../../../shared/quantities/authored.ts';
import {
  ALIGNMENTS,
  LASH_STATES,
  LIFT_TOOLS,
  LIFTERS,
  LOBE_SOURCES,
  RESTS_ON,
  SPRINGS,
} from '../../../shared/schemas/words.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { FormGroup } from '../../../views/parts/form.examples.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import { valveWords } from '../../call/valve-words.ts';
import { liftLimitsSaid, lobeLimitsSaid } from '../../mechanics/kit/lift-tools.ts';
import {
  choiceField,
  type FormState,
  numberField,
  quantityField,
  selectField,
} from '../../web/forms/fields.ts';
import { usualDial } from './usual-dial.ts';

export const SET_UP_LABELS = {
  cylinder: 'Cylinder',
  valve: 'Which valve',
  armId: 'Which arm sits on it',
  'method.spring': 'Spring on the valve',
  'method.lifter': 'Lifter under the pushrod',
  'method.lash': 'Lash',
  'method.lashSetting': 'Lash left in, if it is set',
  'method.tool': 'The valve lift is read with',
  'method.restsOn': 'The tip of the indicator rests on',
  'method.alignment': 'The plunger stands',
  'method.graduation': 'Smallest division of the dial',
  'method.perTurn': 'Travel of the big hand per turn',
  'method.travel': 'Whole travel of the indicator',
  'method.pushedIn': 'Pushed in before zeroing',
  'method.errorLimit': 'Error limit of a reading',
  'method.lobeSource': 'Where the lobe lift comes from',
  'method.lobeErrorLimit': 'Error limit of the lobe lift',
} as const;

export type SetUpField = keyof typeof SET_UP_LABELS;

type MakesField = (shown: FormState, name: SetUpField, context: CallContext) => Component;

const length =
  (hint?: () => string): MakesField =>
  (shown, name) =>
    quantityField(shown, name, SET_UP_LABELS[name], 'length', {
      ...(hint === undefined ? {} : { hint: hint() }),
    });

const words =
  (list: Readonly<Record<string, string>>): MakesField =>
  (shown, name) =>
    choiceField(shown, name, SET_UP_LABELS[name], list);

const arm: MakesField = (shown, name, context) => {
  const seats = new Map(context.now.map((placement) => [placement.armId, valveName(placement)]));
  const arms = Object.fromEntries(
    context.arms.map(({ id, name: called }) => [id, `${called}, on ${seats.get(id) ?? 'no valve'} now`]),
  );
  return selectField(shown, name, SET_UP_LABELS[name], arms, { first: 'Not on record' });
};

const FIELDS: Readonly<Record<SetUpField, MakesField>> = {
  cylinder: (shown, name, context) =>
    numberField(shown, name, SET_UP_LABELS[name], {
      hint: 'In the engine’s own numbering.',
      ...(context.side === 'desk' ? { autofocus: true } : {}),
    }),
  valve: (shown, name, context) =>
    selectField(shown, name, SET_UP_LABELS[name], valveWords(context), { first: 'Not said' }),
  armId: arm,
  'method.spring': words(SPRINGS),
  'method.lifter': words(LIFTERS),
  'method.lash': words(LASH_STATES),
  'method.lashSetting': length(),
  'method.tool': words(LIFT_TOOLS),
  'method.restsOn': words(RESTS_ON),
  'method.alignment': words(ALIGNMENTS),
  'method.graduation': length(),
  'method.perTurn': length(() => usualDial().asked),
  'method.travel': length(),
  'method.pushedIn': length(() => inSpoken('At the valve: full lift and .050 or more.')),
  'method.errorLimit': length(
    () =>
      `Half-width. Empty, as the tool may be: ${liftLimitsSaid()} (common practice, no published source).`,
  ),
  'method.lobeSource': words(LOBE_SOURCES),
  'method.lobeErrorLimit': length(
    () =>
      `Half-width. Empty, as where it comes from may be: ${lobeLimitsSaid()} (common practice, no published source).`,
  ),
};

/** Fields that are asked together; at the bench each group is a screen of its own. */
interface SetUpGroup extends Omit<FormGroup, 'slots'> {
  readonly fields: readonly SetUpField[];
}

export const SET_UP_GROUPS: readonly SetUpGroup[] = [
  { legend: 'Which valve', columns: true, fields: ['cylinder', 'valve', 'armId'] },
  {
    legend: 'What is on it while you read',
    hint: 'The spring on the valve names the ratio. Only a light one is set against a stamp.',
    fields: ['method.spring', 'method.lifter', 'method.lash', 'method.lashSetting'],
  },
  {
    legend: 'What it is read with, and how that stands',
    hint: 'Without an indicator: caliper, feelers or a rule, each as far off as it may be. A guess is kept as a guess.',
    fields: ['method.tool', 'method.restsOn', 'method.alignment'],
  },
  {
    legend: 'The dial',
    hint: 'Read without a dial: leave its figures as they are.',
    columns: true,
    fields: ['method.graduation', 'method.perTurn', 'method.travel', 'method.pushedIn', 'method.errorLimit'],
  },
  { legend: 'The lobe', fields: ['method.lobeSource', 'method.lobeErrorLimit'] },
];

export const formGroup = (
  { fields, ...group }: SetUpGroup,
  shown: FormState,
  context: CallContext,
): FormGroup => ({ ...group, slots: fields.map((name) => FIELDS[name](shown, name, context)) });
