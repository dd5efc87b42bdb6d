import type { ButtonData } from '../../views/parts/button.examples.ts';
import type { FormGroup } from '../../views/parts/form.examples.ts';
import type { PagerData } from '../../views/parts/pager.examples.ts';
import type { Component } from '../../views/parts/part.ts';
import { type FormState, FRESH, summaryOf } from '../web/forms/fields.ts';
import type { Fields, FormFault } from '../web/forms/read-form.ts';

/** A form that came back: which one of the page, what was typed, what was wrong. */
export interface RejectedForm {
  readonly faults: readonly FormFault[];
  readonly typed: Fields;
}

/** One of the several forms of a page. Its name goes before its ids, so that each id stands once. */
export interface PageForm {
  readonly name: string;
  readonly action: string;
  readonly labels: Readonly<Record<string, string>>;
  readonly buttons: readonly ButtonData[];
  readonly title?: string;
  /** A form that only leads on is fetched, not posted. */
  readonly method?: 'get';
  readonly hidden?: Readonly<Record<string, string>>;
  readonly initial?: Fields;
  readonly groups: (shown: FormState) => readonly FormGroup[];
}

const isFor = (rejected: RejectedForm | undefined, name: string): rejected is RejectedForm =>
  rejected?.typed.form === name;

/** What is in a form: what was typed into it, or else what is on record. */
function shownIn(form: PageForm, rejected: RejectedForm | undefined): FormState {
  if (isFor(rejected, form.name)) return rejected;
  return { ...FRESH, typed: form.initial ?? {} };
}

function withPrefix(slot: Component, prefix: string): Component {
  const id: unknown = Reflect.get(slot.data, 'id');
  return typeof id === 'string' ? { ...slot, data: { ...slot.data, id: `${prefix}-${id}` } } : slot;
}

/** The form as a slot of the page. */
export function formComponent(form: PageForm, rejected: RejectedForm | undefined): Component {
  const groups = form.groups(shownIn(form, rejected));
  return {
    template: '/parts/form',
    data: {
      id: form.name,
      action: form.action,
      ...(form.method === undefined
        ? { key: crypto.randomUUID(), hidden: { form: form.name, ...form.hidden } }
        : { method: form.method, hidden: form.hidden ?? {} }),
      ...(form.title === undefined ? {} : { title: form.title }),
      groups: groups.map((group) => ({
        ...group,
        slots: group.slots.map((slot) => withPrefix(slot, form.name)),
      })),
      buttons: form.buttons,
    },
  };
}

/** The lines of the error summary for the form that came back. */
export function errorsOf(
  forms: readonly PageForm[],
  rejected: RejectedForm | undefined,
): { field?: string; text: string }[] {
  if (rejected === undefined) return [];
  const form = forms.find((each) => isFor(rejected, each.name));
  const lines = summaryOf(rejected, form?.labels ?? {});
  if (form === undefined) return lines;
  return lines.map((line) =>
    line.field === undefined ? line : { ...line, field: `${form.name}-${line.field}` },
  );
}

/** A page of a call in the making: its parts in order, and which forms it has. */
export interface StepBody {
  readonly slots: readonly Component[];
  readonly forms: readonly PageForm[];
  /** At the bench a step may have several screens: where the one before and the one after are. */
  readonly screens?: Partial<Omit<PagerData, 'label'>>;
  /** What is asked and how it is done here, where a step has several parts. */
  readonly words?: { readonly say: string; readonly how: string };
}
