import { inSpoken } from '../../../shared/quantities/authored.ts';
import {
  ALIGNMENTS,
  LASH_STATES,
  LIFTERS,
  LOBE_SOURCES,
  RESTS_ON,
  SPRINGS,
  VALVES,
} from '../../../shared/schemas/words.ts';
import type { Component } from '../../../views/parts/components.ts';
import type { FormGroup } from '../../../views/parts/form.examples.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import {
  choiceField,
  type FormState,
  numberField,
  quantityField,
  selectField,
} from '../../web/forms/fields.ts';

const LIMIT_SOURCE =
  'Half-width. Common practice, no published source; put in what you know of this indicator.';

export const SET_UP_LABELS = {
  cylinder: 'Cylinder',
  valve: 'Which valve',
  armId: 'Which arm sits on it',
  'method.spring': 'Spring on the valve',
  'method.lifter': 'Lifter under the pushrod',
  'method.lash': 'Lash',
  'method.lashSetting': 'Lash left in, if it is set',
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
  (hint?: string): MakesField =>
  (shown, name) =>
    quantityField(shown, name, SET_UP_LABELS[name], 'length', {
      ...(hint === undefined ? {} : { hint: inSpoken(hint) }),
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
  valve: (shown, name) => selectField(shown, name, SET_UP_LABELS[name], VALVES, { first: 'Not said' }),
  armId: arm,
  'method.spring': words(SPRINGS),
  'method.lifter': words(LIFTERS),
  'method.lash': words(LASH_STATES),
  'method.lashSetting': length(),
  'method.restsOn': words(RESTS_ON),
  'method.alignment': words(ALIGNMENTS),
  'method.graduation': length(),
  'method.perTurn': length('Settle this first: .100 on the usual .001 dial; .050 and .200 exist.'),
  'method.travel': length(),
  'method.pushedIn': length('At the valve: full lift and .050 or more.'),
  'method.errorLimit': length(LIMIT_SOURCE),
  'method.lobeSource': words(LOBE_SOURCES),
  'method.lobeErrorLimit': length(LIMIT_SOURCE),
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
  { legend: 'How the indicator stands', fields: ['method.restsOn', 'method.alignment'] },
  {
    legend: 'The dial',
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
