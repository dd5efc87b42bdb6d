const ENTRY = 'input.cell-input';

const entriesIn = (within: ParentNode): HTMLInputElement[] => [
  ...within.querySelectorAll<HTMLInputElement>(ENTRY),
];

/** The entry above or below: the one of the same column, counted among the entries of its row. */
function vertical(input: HTMLInputElement, by: 1 | -1): HTMLInputElement | undefined {
  const row = input.closest('tr');
  if (row === null) return undefined;
  const at = entriesIn(row).indexOf(input);
  let next = by > 0 ? row.nextElementSibling : row.previousElementSibling;
  while (next !== null && entriesIn(next).length === 0)
    next = by > 0 ? next.nextElementSibling : next.previousElementSibling;
  return next === null ? undefined : entriesIn(next)[at];
}

/** The entry beside it, where the cursor has come to the end of what is typed. */
function horizontal(input: HTMLInputElement, by: 1 | -1): HTMLInputElement | undefined {
  const { selectionStart, selectionEnd, value } = input;
  const end = by > 0 ? value.length : 0;
  if (selectionStart !== end || selectionEnd !== end) return undefined;
  const table = input.closest('table');
  if (table === null) return undefined;
  const all = entriesIn(table);
  return all[all.indexOf(input) + by];
}

function target(input: HTMLInputElement, key: string): HTMLInputElement | undefined {
  switch (key) {
    case 'ArrowUp':
      return vertical(input, -1);
    case 'ArrowDown':
      return vertical(input, 1);
    case 'ArrowLeft':
      return horizontal(input, -1);
    case 'ArrowRight':
      return horizontal(input, 1);
    default:
      return undefined;
  }
}

/** In a table that is typed into the arrow keys go from cell to cell. */
export function moveByArrows(): void {
  document.addEventListener('keydown', (event) => {
    const { target: at, key, altKey, ctrlKey, metaKey, shiftKey } = event;
    if (!(at instanceof HTMLInputElement) || !at.matches(ENTRY)) return;
    if (altKey || ctrlKey || metaKey || shiftKey) return;
    const next = target(at, key);
    if (next === undefined) return;
    event.preventDefault();
    next.focus();
    next.select();
  });
}
