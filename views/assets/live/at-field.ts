import { type Control, isControl } from './begun.ts';

const TEXT = ['text', 'search', 'tel', 'url', 'password'];

/** Where the caret is; other kinds of field have none. */
function caretOf(control: Control): readonly [number, number] | undefined {
  const hasCaret =
    control instanceof HTMLTextAreaElement ||
    (control instanceof HTMLInputElement && TEXT.includes(control.type));
  if (!hasCaret) return undefined;
  return [control.selectionStart ?? 0, control.selectionEnd ?? 0];
}

/** The same field, where the page made it again. */
function again(control: Control): Control | undefined {
  if (control.isConnected) return control;
  const named = control.id === '' ? null : document.getElementById(control.id);
  return isControl(named) ? named : undefined;
}

/**
 * Remembers the field that somebody is in; what comes back puts them there again, with the caret, and opens the fold
 * that the field has come to stand in: letters typed on must not fall on the page, where each is a key of its own.
 */
export function rememberField(): () => void {
  const control = document.activeElement;
  if (!isControl(control)) return () => undefined;
  const caret = caretOf(control);
  const before = control.getBoundingClientRect().top;
  return () => {
    const field = again(control);
    if (field === undefined) return;
    for (
      let fold = field.closest('details');
      fold !== null;
      fold = fold.parentElement?.closest('details') ?? null
    )
      fold.open = true;
    if (document.activeElement !== field) {
      field.focus({ preventScroll: true });
      if (caret !== undefined && caretOf(field) !== undefined) {
        if (!(field instanceof HTMLSelectElement)) field.setSelectionRange(...caret);
      }
    }
    // The field stays under the thumb; at the top of the page what has come above it is to be seen.
    if (scrollY > 0) scrollBy({ top: field.getBoundingClientRect().top - before, behavior: 'instant' });
  };
}
