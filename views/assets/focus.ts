const FIRST_INPUT = '.desk-step form :is(input:not([type=hidden]), textarea, select):not(:disabled)';

/** At the desk the first input of a step has the focus, unless it is a list that a stray key would change. */
function firstInput(): HTMLElement | undefined {
  if (document.documentElement.dataset.side !== 'desk') return undefined;
  // What is folded away takes no focus.
  const first = [...document.querySelectorAll<HTMLElement>(FIRST_INPUT)].find((each) =>
    each.checkVisibility(),
  );
  if (first === undefined || first instanceof HTMLSelectElement) return undefined;
  const checked = first.closest('fieldset')?.querySelector<HTMLElement>('input:checked');
  return checked ?? first;
}

/** What has this id, brought to sight out of its fold. */
export function openField(id: string): HTMLElement | undefined {
  const field = document.getElementById(id);
  for (let fold = field?.closest('details'); fold; fold = fold.parentElement?.closest('details'))
    fold.open = true;
  return field ?? undefined;
}

/** At the desk the cursor is where what is next is entered. */
function nextField(): HTMLElement | undefined {
  if (document.documentElement.dataset.side !== 'desk') return undefined;
  const id = document.querySelector<HTMLElement>('main')?.dataset.nextField;
  const field = id === undefined ? undefined : openField(id);
  // A stray key would change a list: it is opened to sight, and the cursor stays out of it.
  return field instanceof HTMLSelectElement ? undefined : field;
}

const isNewPage = (): boolean =>
  performance
    .getEntriesByType('navigation')
    .some((each) => each instanceof PerformanceNavigationTiming && each.type === 'navigate');

const title = () => document.querySelector<HTMLElement>('#step-title');

/** Nobody types where they see no cursor: where the entry is below the screen the heading has the focus, and keys go on from there. */
function focusSeen(entry: HTMLElement): void {
  const { top, bottom } = entry.getBoundingClientRect();
  const isSeen = scrollY + bottom <= innerHeight || (top >= 0 && bottom <= innerHeight);
  (isSeen ? entry : (title() ?? entry)).focus({ preventScroll: true });
}

/**
 * A page opens at its top, where the stop, what is next and the answer stand: a browser that scrolled to the entry that
 * it gave the focus to is sent back.
 */
function atTop(entry: HTMLElement): void {
  focusSeen(entry);
  if (!isNewPage()) return;
  window.scrollTo(0, 0);
  requestAnimationFrame(() => window.scrollTo(0, 0));
}

/** After a form came back the summary of its faults has the focus; on a new step its first input, or its heading. */
export function keepFocus(): void {
  const summary = document.querySelector<HTMLElement>('[data-focus-on-load]');
  if (summary !== null) {
    summary.focus();
    return;
  }
  if (location.hash !== '') return;
  const entry = nextField() ?? document.querySelector<HTMLElement>('[autofocus]');
  if (entry !== null) {
    atTop(entry);
    return;
  }
  const target = firstInput();
  if (target === undefined) title()?.focus({ preventScroll: true });
  else focusSeen(target);
}
