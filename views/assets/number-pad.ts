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

function padOf(field: HTMLInputElement, shut: () => void): HTMLElement {
  const pad = document.createElement('div');
  pad.className = 'pad';
  pad.setAttribute('role', 'group');
  pad.setAttribute('aria-label', 'Number pad');
  pad.append(
    ...FIGURES.map((figure) => keyOf(figure, () => type(field, figure))),
    keyOf(BACK, () => takeBack(field), 'Take one back'),
    ...wordsOf(field).map((word) => keyOf(word, () => type(field, ` ${word}${word === 'turns' ? ' ' : ''}`))),
    keyOf('letters', shut, 'Use the phone’s own keyboard'),
  );
  return pad;
}

/**
 * At the engine a finger types figures more than letters: below the field of a number stands a pad of the step, in the
 * place of the phone's own keyboard, until somebody asks for that.
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
  document.addEventListener('focusin', ({ target }) => {
    // A button that is pressed must not move from under the thumb: the pad goes when something else is entered.
    if (!(target instanceof HTMLElement) || !target.matches('input, select, textarea')) return;
    close();
    if (!(target instanceof HTMLInputElement) || target.dataset.reads === undefined) return;
    if (wantsLetters.has(target)) return;
    open = padOf(target, () => {
      wantsLetters.add(target);
      close();
      target.inputMode = 'text';
      target.blur();
      target.focus();
    });
    target.closest('.field, .cell-entry')?.append(open);
  });
}
