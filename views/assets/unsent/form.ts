import { picksIn } from '../keeps.ts';

const KEY = 'input[type=hidden][name=key]';

const keyField = (form: HTMLFormElement) => form.querySelector<HTMLInputElement>(KEY);

/** 128 random bits; `randomUUID` is missing over plain http. */
function newKey(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** A form that posts something to be kept. */
export const isKeeping = (form: Element | null): form is HTMLFormElement =>
  form instanceof HTMLFormElement && form.method === 'post' && keyField(form) !== null;

/**
 * Gives a form a key of its own. The key that a page came with counts for one sending, and a page that is kept on
 * this device is opened more than once.
 */
export function renewKey(form: HTMLFormElement): void {
  const field = keyField(form);
  if (field !== null) field.value = newKey();
}

/** Where it is posted to. A field may be called `action`, so the form itself is not asked. */
export const addressOf = (form: HTMLFormElement): string =>
  new URL(form.getAttribute('action') ?? '', location.href).pathname;

/** What the form would send by itself, with the button that was pressed. */
export function dataOf(form: HTMLFormElement, pressed: HTMLElement | null): FormData {
  const data = new FormData(form);
  if (pressed instanceof HTMLButtonElement && pressed.name !== '') data.append(pressed.name, pressed.value);
  return data;
}

/** Every field but files, in order. */
export const fieldsIn = (data: FormData): [string, string][] =>
  [...data].filter((pair): pair is [string, string] => typeof pair[1] === 'string');

/** Leaves the form as its page made it, ready for the next entry. */
export function emptyForm(form: HTMLFormElement): void {
  form.reset();
  renewKey(form);
  delete form.dataset.changes;
  for (const said of form.querySelectorAll('.form-draft, .form-told')) said.remove();
  for (const field of form.querySelectorAll('input, textarea'))
    field.dispatchEvent(new Event('input', { bubbles: true }));
}

/** Likewise, but for what it keeps: that stays as it was picked. */
export function emptyForNext(form: HTMLFormElement): void {
  const picked = picksIn(form).find(({ checked }) => checked);
  emptyForm(form);
  if (picked !== undefined) fill(picked, [picked.value]);
}

function fill(control: Element, values: readonly string[]): void {
  if (control instanceof HTMLInputElement && (control.type === 'radio' || control.type === 'checkbox')) {
    control.checked = values.includes(control.value);
    control.dispatchEvent(new Event('input', { bubbles: true }));
  } else if (
    control instanceof HTMLInputElement ||
    control instanceof HTMLTextAreaElement ||
    control instanceof HTMLSelectElement
  ) {
    if (control instanceof HTMLInputElement && control.type === 'file') return;
    control.value = values[0] ?? '';
    control.dispatchEvent(new Event('input', { bubbles: true }));
  }
}

/** Puts fields that were typed before back into their form: of all its controls, its key and what the page put in among them, or of those named. */
export function fillForm(
  form: HTMLFormElement,
  fields: readonly (readonly [string, string])[],
  which: 'all' | ReadonlySet<string> = 'all',
): void {
  for (const control of form.elements) {
    const name = control.getAttribute('name');
    if (name === null || control instanceof HTMLButtonElement) continue;
    if (which !== 'all' && !which.has(name)) continue;
    fill(
      control,
      fields.filter(([each]) => each === name).map(([, value]) => value),
    );
  }
}
