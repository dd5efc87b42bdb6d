import { openField } from './focus.ts';
import { showKeys } from './key-list.ts';

const TYPING = 'input:not([type=radio], [type=checkbox]), textarea, select, [contenteditable]';

function act(target: HTMLElement): void {
  if (target instanceof HTMLInputElement) {
    target.focus();
    return;
  }
  if (target.tagName === 'SUMMARY') {
    const fold = target.closest('details');
    if (fold !== null) fold.open = true;
    fold?.querySelector<HTMLElement>('input:not([type=hidden]), button')?.focus();
    return;
  }
  const isHere = target instanceof HTMLAnchorElement && target.hash !== '';
  target.click();
  const place = isHere ? openField(target.hash.slice(1)) : undefined;
  if (place?.matches('input, select, textarea') === true) {
    place.focus();
    return;
  }
  place?.querySelector<HTMLElement>('input:not([type=hidden]), button')?.focus();
}

/**
 * Single keys do what the button beside them says. Not while somebody types, not with another key held, and not where
 * they are turned off (WCAG 2.2, 2.1.4); the bench, which has no account to turn them off in, has none. Escape leaves a field, so that a key can be used after typing.
 */
export function listenToKeys(): void {
  const { keys, side } = document.documentElement.dataset;
  if (keys === 'off' || side === 'builder') return;
  document.addEventListener('keydown', (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.defaultPrevented || event.isComposing) return;
    const { activeElement } = document;
    const typing = activeElement instanceof HTMLElement && activeElement.matches(TYPING);
    if (event.key === 'Escape' && typing) {
      activeElement.blur();
      return;
    }
    if (typing || event.key.length !== 1) return;
    if (event.key === '?') {
      event.preventDefault();
      showKeys();
      return;
    }
    const target = document.querySelector<HTMLElement>(`[data-key="${CSS.escape(event.key)}"]`);
    if (target === null) return;
    event.preventDefault();
    act(target);
  });
}
