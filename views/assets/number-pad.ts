import { wordsOn } from './unsent/words.ts';

const FIGURES = ['1', '2', '3', '4', '5', '6', '7', '8', '9', '.', '0'] as const;
const BACK = '⌫';

/** Puts text where the caret is, as if it had been typed: whatever follows typing follows this. */
function type(field: HTMLInputElement, text: string): void {
  const [from, to] = [field.selectionStart ?? field.value.length, field.selectionEnd ?? field.value.length];
  field.setRangeText(text, from, to, 'end');
  field.dispatchEvent(new Event('input', { bubbles: true }));
}

function takeBack(field: HTMLInputElement): void {
  const [from, to] = [field.selectionStart ?? field.value.length, field.selectionEnd ?? field.value.length];
  field.setRangeText('', from === to ? Math.max(0, from - 1) : from, to, 'end');
  field.dispatchEvent(new Event('input', { bubbles: true }));
}

/** What is said beside figures in this field: turns of its dial, and the units of a length. */
function wordsOf({ dataset: { perTurn, reads } }: HTMLInputElement): readonly string[] {
  const turns = perTurn === undefined ? [] : ['turns'];
  return reads === 'length' ? [...turns, 'in', 'mm', 'thou'] : turns;
}

/** What is said between two gauges: `more than .024, less than .028`. */
const BOUNDS = [
  ['more', 'more than '],
  ['less', 'less than '],
] as const;

function boundKeys(field: HTMLInputElement): HTMLElement[] {
  if (field.dataset.between === undefined) return [];
  return BOUNDS.map(([label, text]) =>
    keyOf(label, () => type(field, field.value.trim() === '' ? text : `, ${text}`), text.trim()),
  );
}

function keyOf(label: string, act: () => void, named?: string): HTMLButtonElement {
  const key = document.createElement('button');
  key.type = 'button';
  key.className = 'pad-key';
  key.textContent = label;
  if (named !== undefined) key.setAttribute('aria-label', named);
  // The field keeps its focus and its caret.
  key.addEventListener('pointerdown', (event) => event.preventDefault());
  key.addEventListener('click', act);
  return key;
}

/** The button of the field's form, as the last key: in its first word, for it stands whole on the page. */
function keepKey(field: HTMLInputElement, shut: () => void): readonly HTMLElement[] {
  const button = field.form?.querySelector<HTMLButtonElement>('button:not([type=button])');
  const [word = ''] = wordsOn(button ?? null).split(' ');
  if (!button || word === '') return [];
  const key = keyOf(word, () => {
    shut();
    button.click();
  });
  key.classList.add('pad-wide', 'pad-keep');
  return [key];
}

/** The field of the same form that is typed in next; none after the last. */
function nextField(field: HTMLInputElement): HTMLInputElement | undefined {
  const all = [...(field.form?.querySelectorAll<HTMLInputElement>('input[data-reads]') ?? [])].filter(
    (each) => !each.readOnly && !each.disabled && each.checkVisibility(),
  );
  return all[all.indexOf(field) + 1];
}

/** While there is a field to come it is where the thumb goes on: saving is the key of the last one. */
function onwardKey(field: HTMLInputElement, shut: () => void): readonly HTMLElement[] {
  const next = nextField(field);
  if (next === undefined) return keepKey(field, shut);
  const key = keyOf('Next', () => next.focus(), 'Go to the next field');
  key.classList.add('pad-wide', 'pad-keep');
  return [key];
}

function padOf(field: HTMLInputElement, shut: () => void, letters: () => void): HTMLElement {
  const pad = document.createElement('div');
  pad.className = 'pad';
  pad.setAttribute('role', 'group');
  pad.setAttribute('aria-label', 'Number pad');
  const figures = document.createElement('div');
  figures.append(
    ...FIGURES.map((figure) => keyOf(figure, () => type(field, figure))),
    keyOf(BACK, () => takeBack(field), 'Take one back'),
  );
  const words = document.createElement('div');
  const own = keyOf('letters', letters, 'Use the phone’s own keyboard');
  own.classList.add('pad-wide');
  words.append(
    ...wordsOf(field).map((word) => keyOf(word, () => type(field, ` ${word}${word === 'turns' ? ' ' : ''}`))),
    ...boundKeys(field),
    own,
    ...onwardKey(field, shut),
  );
  pad.append(figures, words);
  return pad;
}

/** Between the field and the pad, so that its lower edge is seen. */
const ROOM = 8;

/** The field and its echo stay in sight above the pad. */
function uncover(field: HTMLInputElement, pad: HTMLElement): void {
  const place = field.closest('.field, .cell-entry') ?? field;
  const hidden = place.getBoundingClientRect().bottom + ROOM - pad.getBoundingClientRect().top;
  if (hidden > 0) scrollBy(0, hidden);
}

/**
 * At the engine a finger types figures more than letters: on the lower edge of the screen stands a pad of the step, in
 * the place of the phone's own keyboard, until somebody asks for that.
 */
export function offerNumberPad(): void {
  const isTouched = window.matchMedia('(pointer: coarse)').matches;
  if (document.documentElement.dataset.side !== 'builder' || !isTouched) return;
  const wantsLetters = new WeakSet<HTMLInputElement>();
  let open: HTMLElement | undefined;
  const close = () => {
    open?.remove();
    open = undefined;
  };
  for (const field of document.querySelectorAll<HTMLInputElement>('input[data-reads]'))
    field.inputMode = 'none';
  document.addEventListener('focusout', ({ relatedTarget }) => {
    // A key that is reached by another way than a finger takes the focus, and the pad stays.
    if (!(relatedTarget instanceof Node && open?.contains(relatedTarget))) close();
  });
  const offer = (target: EventTarget | null) => {
    if (!(target instanceof HTMLInputElement) || target.dataset.reads === undefined) return;
    if (target.readOnly || wantsLetters.has(target)) return;
    close();
    open = padOf(target, close, () => {
      wantsLetters.add(target);
      close();
      target.inputMode = 'text';
      target.blur();
      target.focus();
    });
    // Room below the page for it, which stays: a button that is pressed must not move from under the thumb.
    document.body.classList.add('has-pad');
    document.body.append(open);
    uncover(target, open);
  };
  document.addEventListener('focusin', ({ target }) => offer(target));
  // After a pad was shut its field may have the focus still.
  document.addEventListener('click', ({ target }) => {
    if (open === undefined && target === document.activeElement) offer(target);
  });
}
