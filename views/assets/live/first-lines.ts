import { holdsFormInUse } from './begun.ts';

/** What stands before an entry on every step, in the order it is read. */
const FIRST = ['.hold', '.step-header', '.bar-kept', '.bar-next', '.bar-answer', '.bar-rest'] as const;

/** What holds the first lines and what follows them, one under the other. */
const COLUMNS = '.builder, .desk-step';

/**
 * An entry that somebody is at stays where it is while the page around it is made again, and what is new there can
 * come to be below it. What must be read first is put before it again; the entry itself is never moved, or the
 * field would lose its focus.
 */
export function putFirstLinesFirst(): void {
  for (const column of document.querySelectorAll(COLUMNS)) {
    const children = [...column.children];
    const held = children.find(holdsFormInUse);
    if (held === undefined) continue;
    const below = children.slice(children.indexOf(held) + 1);
    // A form is not asked to do it: a field of it may be called `before`.
    for (const selector of FIRST)
      for (const line of below) if (line.matches(selector)) column.insertBefore(line, held);
  }
}

/** The box of a stop, as the service made it. */
const holdBox = (): HTMLElement | null => document.querySelector('main .hold');

/**
 * A stop comes while somebody has a choice or a button under the cursor, where one key may answer away what it rests on:
 * the cursor leaves it. Words that are being typed are left alone.
 */
export function leaveAnswer(): void {
  const { activeElement } = document;
  const isTyped =
    activeElement instanceof HTMLTextAreaElement ||
    (activeElement instanceof HTMLInputElement &&
      !['radio', 'checkbox', 'submit'].includes(activeElement.type));
  if (activeElement instanceof HTMLElement && !isTyped) activeElement.blur();
}

/** A stop that has just come is seen at once, wherever on the page somebody was; who is in no field is put there. */
export function showNewStop(): void {
  const box = holdBox();
  if (box === null) return;
  const { top, bottom } = box.getBoundingClientRect();
  if (top < 0 || bottom > innerHeight) box.scrollIntoView({ block: 'start', behavior: 'instant' });
  const { activeElement } = document;
  if (activeElement !== null && activeElement !== document.body) return;
  box.tabIndex = -1;
  box.focus({ preventScroll: true });
}
