import { defined } from '../../shared/defined.ts';
import type { CallContext } from '../call/context.ts';
import { formComponent, type PageForm, type RejectedForm } from '../call/forms.ts';
import { isStopped } from '../call/under-stop.ts';
import { areaField, tickField } from '../web/forms/fields.ts';
import type { Fields } from '../web/forms/read-form.ts';

/** What a form carries beside what somebody typed or picked. */
const CARRIED = ['form', 'key', 'step', 'part', 'csrf'];
const IS_ID = /^[0-9a-f]{8}-[0-9a-f]{4}-/;

/** `lobe.intake` and `restsOn` as they are read: the name of a form that is gone has no label any more. */
const readable = (name: string): string =>
  name
    .slice(name.lastIndexOf('.') + 1)
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .replaceAll('-', ' ')
    .toLowerCase();

/** Everything that was typed or picked, in the order of the form: a figure with the name of its field. */
export function typedSaid(typed: Fields): string {
  return Object.entries(typed)
    .filter(([name, value]) => !CARRIED.includes(name) && value?.trim() && !IS_ID.test(value))
    .map(([name, value = '']) =>
      /\d/.test(value) ? `${readable(name)} ${value}` : value.replaceAll('-', ' '),
    )
    .join(', ');
}

/**
 * What came back and has no form on the page any more, because a stop came first: it is shown as it was typed, in a
 * note that needs no more than its button. Undefined where the page still has its form.
 */
export function heldBackForm(
  context: CallContext,
  forms: readonly PageForm[],
  rejected: RejectedForm | undefined,
): PageForm | undefined {
  if (rejected === undefined || forms.some(({ name }) => name === rejected.typed.form)) return undefined;
  const said = typedSaid(rejected.typed);
  if (said === '') return undefined;
  const label = 'What was typed, and when it was read';
  return {
    name: 'note',
    action: `${context.base}/notes`,
    title: 'Save it as a note',
    labels: { body: label },
    hidden: { kind: 'note' },
    initial: { body: `${isStopped(context) ? 'Entered as the stop came' : 'Not kept'}: ${said}` },
    groups: (shown) => [{ slots: [areaField(shown, 'body', label, { rows: 3 })] }],
    buttons: [{ label: 'Save as a note', kind: 'primary' }],
  };
}

/** The stop was what was in its way. */
const isHeldBack = (faults: RejectedForm['faults']): boolean => faults.some(({ held }) => held);

const BEFORE = 'It was read before the stop';

/**
 * The same, to be kept at once where it was read before the stop: whoever sends it says so, and that is recorded with it.
 * A page that still has the form, for what needs no turning, offers it beside that where the stop was all that was in
 * the way.
 */
export function beforeStopForm(
  context: CallContext,
  forms: readonly PageForm[],
  rejected: RejectedForm | undefined,
): PageForm | undefined {
  if (rejected?.action === undefined || !isStopped(context)) return undefined;
  const { typed, action, faults } = rejected;
  if (typedSaid(typed) === '') return undefined;
  const isGone = forms.every(({ name }) => name !== typed.form);
  if (!isGone && !isHeldBack(faults)) return undefined;
  const sent = Object.entries(typed).filter(([name]) => !['key', 'csrf', 'beforeStop'].includes(name));
  return {
    name: 'before-stop',
    action,
    title: 'Keep it, if it was read before the stop',
    labels: { beforeStop: BEFORE },
    hidden: Object.fromEntries(sent),
    groups: (shown) => [{ slots: [tickField(shown, 'beforeStop', BEFORE)] }],
    buttons: [{ label: 'Keep it', kind: 'primary' }],
  };
}

/** The same as slots of the page, and what its error frame is called: nothing of it can be put right here. */
export function heldBack(
  context: CallContext,
  forms: readonly PageForm[],
  rejected: RejectedForm | undefined,
) {
  const form = heldBackForm(context, forms, rejected);
  const before = beforeStopForm(context, forms, rejected);
  return {
    slots: [before, form].flatMap((each) => (each === undefined ? [] : [formComponent(each, undefined)])),
    ...defined({
      errorTitle:
        form === undefined && before === undefined
          ? undefined
          : isStopped(context)
            ? 'Not kept: a stop stands'
            : 'Not kept',
    }),
  };
}
