import { memberOf } from '../../../shared/member.ts';
import { picksIn } from '../keeps.ts';
import { type Control, isChanged, isControl } from '../live/begun.ts';
import { addressOf, emptyForm, fieldsIn, fillForm } from './form.ts';
import { clock } from './markup.ts';

/*
 * What was typed and not yet pressed stays in this browser until it is sent or cleared: a page is left by a thumb, a
 * ring of the telephone or a browser that is out of memory.
 */

const DRAFT = 'benchcall-draft';

interface Draft {
  readonly at: number;
  /** What was typed into or picked; of everything else the page knows better. */
  readonly names: readonly string[];
  readonly fields: readonly (readonly [name: string, value: string])[];
}

const isPair = (value: unknown): value is [string, string] =>
  Array.isArray(value) && typeof value[0] === 'string' && typeof value[1] === 'string';

const isText = (value: unknown): value is string => typeof value === 'string';

function draftIn(text: string | null): Draft | undefined {
  const value: unknown = text === null ? undefined : JSON.parse(text);
  const [at, names, fields] = ['at', 'names', 'fields'].map((name) => memberOf(value, name));
  if (typeof at !== 'number' || !Array.isArray(names) || !Array.isArray(fields)) return undefined;
  return { at, names: names.filter(isText), fields: fields.filter(isPair) };
}

const hiddenIn = (form: HTMLFormElement) => [
  ...form.querySelectorAll<HTMLInputElement>('input[type=hidden][name]:not([name=key])'),
];

/** What somebody can type or pick in a form, whether it is theirs yet or not. */
const controlsOf = (form: HTMLFormElement): Control[] =>
  [...form.elements].filter(isControl).filter(({ type, name }) => type !== 'hidden' && name !== '');

/** Forms of which each part is a page are one form in several parts: a part is known by what it asks. */
const partsOf = (link: string, form: HTMLFormElement) =>
  [DRAFT, link, location.pathname, form.id, 'part'].join(' ');

/** By link, form and what the page itself puts into it: what was typed for one set-up is shown in no other. */
function placeOf(link: string, form: HTMLFormElement): string {
  if (form.method === 'get')
    return `${partsOf(link, form)} ${[...new Set(controlsOf(form).map(({ name }) => name))].join(' ')}`;
  const made = hiddenIn(form).map(({ name, value }) => [name, value]);
  return [DRAFT, link, location.pathname, form.id, JSON.stringify(made)].join(' ');
}

/** A screen of a form with several is fetched, and what is typed on it must outlive a page that doesn't come. */
const isDrafted = (form: EventTarget | null): form is HTMLFormElement =>
  form instanceof HTMLFormElement && form.id !== '' && addressOf(form).startsWith('/bench');

export function keepDraft(link: string, form: HTMLFormElement): void {
  if (form.dataset.changes !== undefined) return;
  const names = new Set(
    controlsOf(form)
      .filter(isChanged)
      .map(({ name }) => name),
  );
  const fields = fieldsIn(new FormData(form)).filter(([name]) => names.has(name));
  if (names.size === 0) localStorage.removeItem(placeOf(link, form));
  else
    localStorage.setItem(placeOf(link, form), JSON.stringify({ at: Date.now(), names: [...names], fields }));
}

/** What was sent or cleared is no draft any more, nor are the parts that led to it. */
export function dropDraft(link: string, form: HTMLFormElement): void {
  localStorage.removeItem(placeOf(link, form));
  if (form.method === 'get') return;
  const parts = partsOf(link, form);
  for (const place of Object.keys(localStorage)) if (place.startsWith(parts)) localStorage.removeItem(place);
}

function sayRestored(link: string, form: HTMLFormElement, at: number): void {
  const said = document.createElement('p');
  said.className = 'form-draft small';
  said.textContent = `Typed here at ${clock(at)} and not sent. `;
  const clear = document.createElement('button');
  clear.type = 'button';
  clear.className = 'button button-plain';
  clear.textContent = 'Clear it';
  clear.addEventListener('click', () => {
    dropDraft(link, form);
    emptyForm(form);
    said.remove();
  });
  said.append(clear);
  form.querySelector('.form-buttons')?.before(said);
}

function restore(link: string, form: HTMLFormElement): void {
  const draft = draftIn(localStorage.getItem(placeOf(link, form)));
  if (draft === undefined) return;
  fillForm(form, draft.fields, new Set(draft.names));
  // What it keeps was picked and stands beside the button: nothing of it is lost or found again.
  const keeps = picksIn(form)[0]?.name;
  if (draft.names.every((name) => name === keeps)) return;
  sayRestored(link, form, draft.at);
  const fold = form.closest('details');
  if (fold !== null) fold.open = true;
  for (const inner of form.querySelectorAll('details')) inner.open = true;
}

/** Shows drafts in their forms and keeps them as they are typed; a page that answers a form has it as typed already. */
export function keepDrafts(link: string): void {
  const answers = document.querySelector<HTMLElement>('main')?.dataset.beside !== undefined;
  if (!answers) for (const form of document.forms) if (isDrafted(form)) restore(link, form);
  for (const heard of ['input', 'change'])
    document.addEventListener(heard, ({ target, isTrusted }) => {
      const form = target instanceof Element ? target.closest('form') : null;
      if (isTrusted && isDrafted(form)) keepDraft(link, form);
    });
}
