import type { z } from 'zod';
import { defined } from '../../shared/defined.ts';
import type { ButtonData } from '../../views/parts/button.examples.ts';
import type { Component } from '../../views/parts/components.ts';
import type { FormGroup } from '../../views/parts/form.examples.ts';
import type { PagerData } from '../../views/parts/pager.examples.ts';
import { type FormState, FRESH, summaryOf } from '../web/forms/fields.ts';
import type { Fields, FormFault } from '../web/forms/read-form.ts';

/** A form that came back: which one of the page, what was typed, what was wrong. */
export interface RejectedForm {
  readonly faults: readonly FormFault[];
  readonly typed: Fields;
  /** Where it was posted to. */
  readonly action?: string;
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
  /** A file goes along. */
  readonly upload?: boolean;
  /** Untouched, it makes room for the page that the call has gone on to. */
  readonly givesWay?: boolean;
  readonly hidden?: Readonly<Record<string, string>>;
  readonly initial?: Fields;
  /** The choice that says what is kept: what is picked of it stands beside the buttons. */
  readonly keeps?: string;
  /** What reads it, where that is one schema by its own names: its fields then know what they can be. */
  readonly schema?: z.ZodObject;
  readonly groups: (shown: FormState) => readonly FormGroup[];
}

const isFor = (rejected: RejectedForm | undefined, name: string): rejected is RejectedForm =>
  rejected?.typed.form === name;

/** What is in a form: what was typed into it, or else what is on record. */
function shownIn(form: PageForm, rejected: RejectedForm | undefined): FormState {
  const shown = isFor(rejected, form.name) ? rejected : { ...FRESH, typed: form.initial ?? {} };
  return { ...shown, prefix: form.name, ...defined({ schema: form.schema }) };
}

/** The form as a slot of the page. */
export function formComponent(form: PageForm, rejected: RejectedForm | undefined): Component {
  return {
    template: '/parts/form',
    data: {
      id: form.name,
      action: form.action,
      ...(form.method === undefined
        ? { key: crypto.randomUUID(), hidden: { form: form.name, ...form.hidden } }
        : { method: form.method, hidden: form.hidden ?? {} }),
      ...defined({ title: form.title, upload: form.upload, keeps: form.keeps, givesWay: form.givesWay }),
      groups: form.groups(shownIn(form, rejected)),
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
  return form === undefined
    ? summaryOf(rejected, {})
    : summaryOf({ ...rejected, prefix: form.name }, form.labels);
}

/** How a thing is done: what is in sight of it, and the rest below that. */
export interface Guide {
  readonly summary: string;
  readonly slots: readonly Component[];
}

/** A page of a call in the making: its parts in order, and which forms it has. */
export interface StepBody {
  readonly slots: readonly Component[];
  readonly forms: readonly PageForm[];
  /** What goes with how it is done, such as a caution: one tap away, with its first words in sight. */
  readonly guide?: Guide;
  /** The button of what is next, where it is done on this page. */
  readonly next?: ButtonData;
  /** At the bench a step may have several screens: where the one before and the one after are. */
  readonly screens?: Partial<Omit<PagerData, 'label'>> & {
    /** One goes through them to their end: no way leads to another step and loses what was said. */
    readonly alone?: true;
  };
  /** What of the step is shown, as the query of its address: whoever is at a form of it keeps it as the call goes on. */
  readonly shows?: string;
  /** What is asked and how it is done here, where a step has several parts. */
  readonly words?: { readonly say: string; readonly how: string };
}
