function mark(event: Event): void {
  const { target } = event;
  const link = target instanceof Element ? target.closest('[data-line], [data-rests-on]') : null;
  for (const line of document.querySelectorAll('.is-pointed')) line.classList.remove('is-pointed');
  if (link === null) return;
  const lines = link.getAttribute('data-line') ?? link.getAttribute('data-rests-on') ?? '';
  for (const line of lines.split(' ')) document.getElementById(`line-${line}`)?.classList.add('is-pointed');
}

/** Pointing at a result marks the lines of the tape that it rests on. */
export function markRests(): void {
  document.addEventListener('pointerover', mark);
  document.addEventListener('focusin', mark);
}
