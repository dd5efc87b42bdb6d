/** After a form came back the summary of its faults has the focus; on a new step its heading. */
export function keepFocus(): void {
  const summary = document.querySelector<HTMLElement>('[data-focus-on-load]');
  if (summary !== null) {
    summary.focus();
    return;
  }
  if (location.hash !== '' || document.querySelector('[autofocus]') !== null) return;
  document.querySelector<HTMLElement>('#step-title')?.focus({ preventScroll: true });
}
