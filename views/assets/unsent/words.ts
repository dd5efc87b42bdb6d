import { picksIn } from '../keeps.ts';

type Filled = HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement;

const plain = (text: string | null | undefined) => (text ?? '').replace(/\s+/g, ' ').trim();

type Ticked = HTMLInputElement & { readonly type: 'radio' | 'checkbox' };

const isTicked = (control: Filled): control is Ticked =>
  control instanceof HTMLInputElement && (control.type === 'radio' || control.type === 'checkbox');

function isFilled(control: Element): control is Filled {
  if (control instanceof HTMLInputElement) {
    if (control.type === 'hidden' || control.type === 'file') return false;
    if (isTicked(control)) return control.checked;
    return control.value.trim() !== '';
  }
  return (
    (control instanceof HTMLTextAreaElement || control instanceof HTMLSelectElement) &&
    control.value.trim() !== ''
  );
}

function isAsMade(control: Filled): boolean {
  if (isTicked(control)) return control.checked === control.defaultChecked;
  if (control instanceof HTMLSelectElement)
    return [...control.selectedOptions].every((option) => option.defaultSelected);
  return control.value === control.defaultValue;
}

/** The label’s own words, without what is only drawn or only beside them, and without what the form tells of itself. */
function labelOf(control: Filled): string {
  const label = control.labels?.item(0)?.cloneNode(true);
  if (!(label instanceof Element)) return plain(control.name);
  for (const beside of label.querySelectorAll('.field-hint, .field-optional, .field-names')) beside.remove();
  return plain(label.textContent);
}

function said(control: Filled): string {
  if (control instanceof HTMLSelectElement)
    return `${labelOf(control)}: ${[...control.selectedOptions].map((option) => plain(option.text)).join(', ')}`;
  if (isTicked(control)) return labelOf(control);
  return `${labelOf(control)}: ${plain(control.value)}`;
}

/** Which cylinder, valve and arm, and how it was read: told also where the form began with it. */
const isPlace = ({ name }: Filled): boolean =>
  /(^|\.)(cylinder|valve|kind|armId|method|spring|lifter|lash|tool)$/.test(name);

/** A form of few fields is told whole; of a long one what it is of, and what was typed into it. */
const FEW = 6;

/** What a form holds, in the words that are on it. */
export function typedIn(form: HTMLFormElement): string {
  const filled = [...form.elements].filter(isFilled);
  const told =
    filled.length <= FEW ? filled : filled.filter((control) => isPlace(control) || !isAsMade(control));
  // What is picked to be kept is its name.
  const picks: readonly Filled[] = picksIn(form);
  return told
    .filter((control) => !picks.includes(control))
    .map(said)
    .join('; ');
}

/** The words on a button, without its key. */
export function wordsOn(button: Element | null): string {
  const copy = button?.cloneNode(true);
  if (!(copy instanceof Element)) return '';
  for (const key of copy.querySelectorAll('kbd')) key.remove();
  return plain(copy.textContent);
}

/** A form without a title goes by what is written over it: the question that it answers, or what its first fields are of. */
function headingOf(form: HTMLFormElement): string {
  const around = form.closest('.question, article, .call-group');
  const heading = around?.querySelector('h2, h3') ?? form.querySelector('legend:not(.choice-legend)');
  return plain(heading?.textContent);
}

/** What an entry is called: by what is picked to be kept, or the title of its form without the word of its button. */
export function nameOf(form: HTMLFormElement, pressed: Element | null): string {
  const picked = picksIn(form).find(({ checked }) => checked);
  if (picked !== undefined) return labelOf(picked);
  const title = plain(form.querySelector('h2')?.textContent).replace(/^(keep|add|put) (an?|the) /i, '');
  const named = title === '' ? headingOf(form) : title;
  return named === '' ? wordsOn(pressed) : `${named.charAt(0).toUpperCase()}${named.slice(1)}`;
}
