export type Control = HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement;

export function isControl(node: Node | null): node is Control {
  return (
    node instanceof HTMLInputElement ||
    node instanceof HTMLTextAreaElement ||
    node instanceof HTMLSelectElement
  );
}

/** Whether a field holds something else than the page was made with. */
export function isChanged(control: Control): boolean {
  if (control instanceof HTMLSelectElement) {
    const options = [...control.options];
    const made = options.find((option) => option.defaultSelected) ?? options[0];
    return made?.selected === false;
  }
  if (control instanceof HTMLInputElement && (control.type === 'radio' || control.type === 'checkbox'))
    return control.checked !== control.defaultChecked;
  return control.value !== control.defaultValue;
}

/** A form that somebody has begun is left alone whole: its fields belong together, and its key to its content. */
function isBegun(form: HTMLFormElement): boolean {
  return [...form.elements].some(
    (element) => isControl(element) && element.type !== 'hidden' && isChanged(element),
  );
}

/** Whether the node is a begun form, whose content must stay as it is. */
export function isBegunForm(node: Node): boolean {
  return node instanceof HTMLFormElement && isBegun(node);
}

/** A form that nobody has begun, and that makes room once the other side has kept what it asks for. */
const makesRoom = (form: HTMLFormElement): boolean => form.dataset.givesWay !== undefined && !isBegun(form);

/** Whether the node is or holds a form that must stay: a begun one, or one that somebody is just at. */
export function holdsFormInUse(node: Node): boolean {
  if (!(node instanceof Element)) return false;
  const forms = node instanceof HTMLFormElement ? [node] : [...node.querySelectorAll('form')];
  const active = document.activeElement;
  return forms.some(
    (form) => isBegun(form) || (isControl(active) && form.contains(active) && !makesRoom(form)),
  );
}

/** Whether somebody is in a field of an entry of the step that stays as the call goes on. */
export function isAtEntry(): boolean {
  const active = document.activeElement;
  const form = isControl(active) ? active.closest<HTMLFormElement>('.desk-step form, .builder form') : null;
  return form !== null && !makesRoom(form);
}
