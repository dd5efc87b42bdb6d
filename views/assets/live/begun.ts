import { type Entry, saysSame } from './entries.ts';

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

/** What the fields that a person sees hold as the page was made. */
function madeWith(form: HTMLFormElement): Entry[] {
  return [...form.elements].flatMap((element): Entry[] => {
    if (!isControl(element) || element.type === 'hidden') return [];
    if (element instanceof HTMLSelectElement) {
      const options = [...element.options];
      const made = options.find((option) => option.defaultSelected) ?? options[0];
      return [[element.name, made?.value ?? '']];
    }
    if (element instanceof HTMLInputElement && (element.type === 'radio' || element.type === 'checkbox'))
      return element.defaultChecked ? [[element.name, element.value]] : [];
    return [[element.name, element.defaultValue]];
  });
}

/**
 * Whether a form that somebody is at would say another thing beneath their hands, such as another valve: it is then
 * left whole. Where only its words change, as the pass that is next, it is made new whole.
 */
export function saysElseAtHand(here: Node, next: Node): boolean {
  if (!(here instanceof HTMLFormElement && next instanceof HTMLFormElement)) return false;
  const active = document.activeElement;
  return isControl(active) && here.contains(active) && !saysSame(madeWith(here), madeWith(next));
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
