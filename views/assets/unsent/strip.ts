/** Keeps the line of what waits in sight: where the list is scrolled away, it stands at the upper edge. */
export function keepInSight(section: HTMLElement, strip: HTMLElement): { show(text: string): void } {
  let text = '';
  let away = false;
  function paint(): void {
    strip.hidden = text === '' || !away;
    strip.textContent = text;
  }
  new IntersectionObserver(([seen]) => {
    away = seen !== undefined && !seen.isIntersecting && seen.boundingClientRect.top < 0;
    paint();
  }).observe(section);
  return {
    show(next) {
      text = next;
      paint();
    },
  };
}
