import {
  ALIGNMENTS,
  LASH_STATES,
  LIFTERS,
  LOBE_SOURCES,
  RESTS_ON,
  SPRINGS,
  VALVES,
} from '../../../shared/schemas/words.ts';
import type { FormGroup } from '../../../views/parts/form.examples.ts';
import type { Component } from '../../../views/parts/part.ts';
import { type CallContext, valveName } from '../../call/context.ts';
import type { PageForm } from '../../call/forms.ts';
import type { SetUp } from '../../records/set-ups/set-ups.ts';
import {
  choiceField,
  type FormState,
  numberField,
  quantityField,
  selectField,
} from '../../web/forms/fields.ts';
import type { Fields } from '../../web/forms/read-form.ts';

/** Error limits that stand in the form until somebody knows better. */
export const DEFAULT_LIMITS = { reading: '.0025', lobe: '.002' } as const;
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

type Name = keyof typeof SET_UP_LABELS;

/** A new set-up begins as the last one was; the first with the usual dial. */
function initialOf(context: CallContext, from: SetUp | undefined): Fields {
  const placed = context.now[0];
  if (from === undefined) {
    return {
      cylinder: String(placed?.cylinder ?? 1),
      valve: placed?.valve ?? 'intake',
      armId: placed?.armId ?? '',
      'method.graduation': '.001',
      'method.perTurn': '.100',
      'method.errorLimit': DEFAULT_LIMITS.reading,
      'method.lobeSource': 'indicator',
      'method.lobeErrorLimit': DEFAULT_LIMITS.lobe,
    };
  }
  const { method } = from;
  const lengths = {
    lashSetting: method.lashSetting,
    graduation: method.graduation,
    perTurn: method.perTurn,
    travel: method.travel,
    pushedIn: method.pushedIn,
    errorLimit: method.errorLimit,
    lobeErrorLimit: method.lobeErrorLimit,
  };
  const { spring, lifter, lash, restsOn, alignment, lobeSource } = method;
  const words = { spring, lifter, lash, restsOn, alignment, lobeSource };
  return {
    cylinder: String(from.cylinder),
    valve: from.valve,
    armId: from.armId ?? '',
    ...Object.fromEntries(Object.entries(words).map(([name, word]) => [`method.${name}`, word])),
    ...Object.fromEntries(
      Object.entries(lengths).map(([name, entry]) => [
        `method.${name}`,
        entry === undefined ? '' : `${entry.value} ${entry.unit}`,
      ]),
    ),
  };
}

const length = (shown: FormState, name: Name, hint?: string): Component =>
  quantityField(shown, name, SET_UP_LABELS[name], 'length', {
    assume: 'in',
    ...(hint === undefined ? {} : { hint }),
  });

const words = (
  shown: FormState,
  name: Name,
  list: Readonly<Record<string, string>>,
  hint?: string,
): Component => choiceField(shown, name, SET_UP_LABELS[name], list, hint === undefined ? {} : { hint });

function where(shown: FormState, context: CallContext): Component[] {
  const seats = new Map(context.now.map((placement) => [placement.armId, valveName(placement)]));
  const arms = Object.fromEntries(
    context.arms.map((arm) => [arm.id, `${arm.name}, on ${seats.get(arm.id) ?? 'no valve'} now`]),
  );
  return [
    numberField(shown, 'cylinder', SET_UP_LABELS.cylinder, {
      hint: 'In the engine’s own numbering.',
      ...(context.side === 'desk' ? { autofocus: true } : {}),
    }),
    selectField(shown, 'valve', SET_UP_LABELS.valve, VALVES),
    selectField(shown, 'armId', SET_UP_LABELS.armId, arms, { first: 'Not on record' }),
  ];
}

function groupsOf(shown: FormState, context: CallContext): FormGroup[] {
  return [
    { legend: 'Which valve', columns: true, slots: where(shown, context) },
    {
      legend: 'What is on it while you read',
      hint: 'The spring on the valve names the ratio. Only a light one is set against a stamp.',
      slots: [
        words(shown, 'method.spring', SPRINGS),
        words(shown, 'method.lifter', LIFTERS),
        words(shown, 'method.lash', LASH_STATES),
        length(shown, 'method.lashSetting'),
      ],
    },
    {
      legend: 'How the indicator stands',
      slots: [words(shown, 'method.restsOn', RESTS_ON), words(shown, 'method.alignment', ALIGNMENTS)],
    },
    {
      legend: 'The dial',
      columns: true,
      slots: [
        length(shown, 'method.graduation'),
        length(
          shown,
          'method.perTurn',
          'Settle this first: .100 on the usual .001 dial; .050 and .200 exist.',
        ),
        length(shown, 'method.travel'),
        length(shown, 'method.pushedIn', 'At the valve: full lift and .050 or more.'),
        length(shown, 'method.errorLimit', LIMIT_SOURCE),
      ],
    },
    {
      legend: 'The lobe',
      slots: [
        words(shown, 'method.lobeSource', LOBE_SOURCES),
        length(shown, 'method.lobeErrorLimit', LIMIT_SOURCE),
      ],
    },
  ];
}

const isName = (name: string): name is Name => Object.hasOwn(SET_UP_LABELS, name);

/** How the readings are taken, asked before the first of them: method is part of the measurement. */
export function setUpForm(context: CallContext, from: SetUp | undefined, asked: Fields = {}): PageForm {
  const said = Object.fromEntries(Object.entries(asked).filter(([name]) => isName(name)));
  return {
    name: 'set-up',
    action: `${context.base}/set-ups`,
    labels: SET_UP_LABELS,
    initial: { ...initialOf(context, from), ...said },
    groups: (shown) => groupsOf(shown, context),
    buttons: [
      { label: 'Start this set-up', kind: 'primary', key: 'k' },
      ...(from === undefined ? [] : [{ label: 'Leave it', href: `${context.base}/steps/ratio` }]),
    ],
  };
}

function namesIn(group: FormGroup): string[] {
  return group.slots
    .map((slot): unknown => Reflect.get(slot.data, 'name'))
    .filter((name) => typeof name === 'string');
}

/**
 * The same at the bench, a group on a screen. What was said on the screens before goes along in the address,
 * so that nothing is kept until the last one, and going back changes nothing.
 */
export function setUpScreen(
  context: CallContext,
  from: SetUp | undefined,
  asked: Fields,
): { form: PageForm; position: string } {
  const whole = setUpForm(context, from, asked);
  const entries = { ...whole.initial };
  const groups = groupsOf({ typed: entries, faults: [] }, context);
  const at = Math.min(Math.max(1, Number.parseInt(asked.new ?? '1', 10) || 1), groups.length);
  const own = groups.slice(at - 1, at);
  const here = new Set(own.flatMap(namesIn));
  const carried = Object.fromEntries(Object.entries(entries).filter(([name]) => !here.has(name)));
  const last = at === groups.length;
  const form: PageForm = {
    ...whole,
    initial: entries,
    groups: (shown) => groupsOf(shown, context).slice(at - 1, at),
    ...(last
      ? { hidden: carried }
      : {
          method: 'get',
          action: `${context.base}/steps/ratio`,
          hidden: { ...carried, new: String(at + 1) },
        }),
    buttons: [{ label: last ? 'Start this set-up' : 'Go on', kind: 'primary' }],
  };
  return { form, position: `${at} of ${groups.length}` };
}
