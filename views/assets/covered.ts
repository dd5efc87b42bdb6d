/** What stays at the top of the screen while the page scrolls under it. */
const STAYS = '.bar-answer, main > .hold';

/** Tells the style sheet how much of the top is covered, so that nothing that gets the focus comes to stand under it. */
function measure(): void {
  const heights = [...document.querySelectorAll<HTMLElement>(STAYS)]
    .filter((each) => getComputedStyle(each).position === 'sticky')
    .map(({ offsetHeight }) => offsetHeight);
  document.documentElement.style.setProperty('--covered', `${Math.max(0, ...heights)}px`);
}

/** Keeps what has the focus clear of what stays in sight, as that grows and goes. */
export function keepClear(): void {
  measure();
  addEventListener('resize', measure);
  for (const each of ['page-merged', 'focusin', 'focusout']) document.addEventListener(each, measure);
}
