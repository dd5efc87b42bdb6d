import { defined } from '../../../shared/defined.ts';
import { newSetUp } from '../../../shared/schemas/method.ts';
import type { CallContext } from '../../call/context.ts';
import type { PageForm, StepBody } from '../../call/forms.ts';
import type { SetUp } from '../../records/set-ups/set-ups.ts';
import type { Fields } from '../../web/forms/read-form.ts';
import { formGroup, SET_UP_GROUPS, SET_UP_LABELS, type SetUpField } from './set-up-fields.ts';
import { usualDial } from './usual-dial.ts';

/** A new set-up begins as the last one was; the first with the usual dial, and on the valve that an arm sits on. */
function initialOf(context: CallContext, from: SetUp | undefined): Fields {
  if (from !== undefined) return fieldsOfSetUp(from);
  const placed = context.now[0];
  const { graduation, perTurn } = usualDial();
  return {
    cylinder: placed === undefined ? '' : String(placed.cylinder),
    valve: placed?.valve ?? '',
    armId: placed?.armId ?? '',
    'method.graduation': graduation,
    'method.perTurn': perTurn,
    'method.tool': 'indicator',
    'method.lobeSource': 'indicator',
  };
}

/** A set-up as the fields of its form. */
export function fieldsOfSetUp(from: SetUp): Fields {
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
  const { spring, lifter, lash, restsOn, alignment, lobeSource, tool = 'indicator' } = method;
  const words = { spring, lifter, lash, restsOn, alignment, lobeSource, tool };
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

const isName = (name: string): name is SetUpField => Object.hasOwn(SET_UP_LABELS, name);

/** How the readings are taken, asked before the first of them: method is part of the measurement. */
export function setUpForm(context: CallContext, from: SetUp | undefined, asked: Fields = {}): PageForm {
  const said = Object.fromEntries(Object.entries(asked).filter(([name]) => isName(name)));
  return {
    name: 'set-up',
    action: `${context.base}/set-ups`,
    labels: SET_UP_LABELS,
    schema: newSetUp,
    ...(context.side === 'desk'
      ? { hidden: { 'was-setUps': String(Math.max(0, ...context.setUps.map(({ number }) => number))) } }
      : {}),
    initial: { ...initialOf(context, from), ...said },
    groups: (shown) => SET_UP_GROUPS.map((group) => formGroup(group, shown, context)),
    buttons: [
      { label: 'Start this set-up', kind: 'primary', key: 'k' },
      ...(from === undefined ? [] : [{ label: 'Leave it', href: `${context.base}/steps/ratio` }]),
    ],
  };
}

/**
 * The same at the bench, a group on a screen. What was said on the screens before goes along in the address,
 * so that nothing is kept until the last one, and going back changes nothing.
 */
export function setUpScreen(
  context: CallContext,
  from: SetUp | undefined,
  asked: Fields,
): { readonly form: PageForm; readonly screens: NonNullable<StepBody['screens']> } {
  const whole = setUpForm(context, from, asked);
  const entries = { ...whole.initial };
  const count = SET_UP_GROUPS.length;
  const at = Math.min(Math.max(1, Number.parseInt(asked.new ?? '1', 10) || 1), count);
  const own = SET_UP_GROUPS.slice(at - 1, at);
  const here = new Set<string>(own.flatMap(({ fields }) => fields));
  const carried = Object.fromEntries(Object.entries(entries).filter(([name]) => !here.has(name)));
  const last = at === count;
  const form: PageForm = {
    ...whole,
    initial: entries,
    groups: (shown) => own.map((group) => formGroup(group, shown, context)),
    ...(last
      ? { hidden: carried }
      : {
          method: 'get',
          action: `${context.base}/steps/ratio`,
          hidden: { ...carried, new: String(at + 1) },
        }),
    buttons: [{ label: last ? 'Start this set-up' : 'Go on', kind: 'primary' }],
  };
  const page = `${context.base}/steps/ratio`;
  const said = Object.entries(asked).filter((pair): pair is [string, string] => pair[1] !== undefined);
  const back = new URLSearchParams([...said.filter(([name]) => name !== 'new'), ['new', String(at - 1)]]);
  const previous =
    at > 1
      ? { href: `${page}?${back}`, label: `${at - 1} of ${count}` }
      : from === undefined
        ? undefined
        : { href: page, label: 'Leave this set-up' };
  return { form, screens: { alone: true, position: `${at} of ${count}`, ...defined({ previous }) } };
}
