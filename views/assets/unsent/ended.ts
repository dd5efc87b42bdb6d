import { isKeeping } from './form.ts';

let over = false;
const heard: (() => void)[] = [];

export const onEnded = (each: () => void): void => {
  heard.push(each);
};

/** The service takes nothing more under this link, whoever of the page learns it first. */
export function tellEnded(): void {
  if (over) return;
  over = true;
  for (const each of heard) each();
}

/** Nothing more can be entered; what was typed and not pressed can still be read and copied. */
export function shutEntry(): void {
  // The stream that says who is here has ended too.
  document.querySelector('[data-presence]')?.replaceChildren();
  for (const pad of document.querySelectorAll('.pad')) pad.remove();
  for (const form of document.forms) {
    if (!isKeeping(form)) continue;
    for (const control of form.elements) {
      const isText =
        control instanceof HTMLTextAreaElement ||
        (control instanceof HTMLInputElement && !['radio', 'checkbox', 'file'].includes(control.type));
      if (isText) control.readOnly = true;
      else if (
        control instanceof HTMLButtonElement ||
        control instanceof HTMLSelectElement ||
        control instanceof HTMLInputElement
      )
        control.disabled = true;
    }
  }
}
