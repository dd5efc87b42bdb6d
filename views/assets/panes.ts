/** What of the desk's page stands beside the step, and is looked at without scrolling the page. */
const PANES = '.desk-missing, .desk-tape .tape-window';

/** Ends each of them with the screen, wherever it begins: a stop, or a line that tells of an entry, may stand above. */
function endWithScreen(): void {
  for (const pane of document.querySelectorAll<HTMLElement>(PANES))
    pane.style.setProperty('--begins', `${Math.max(0, Math.round(pane.getBoundingClientRect().top))}px`);
}

/** The newest line of the tape is the last of its window: that is never below the screen. */
export function fitPanes(): void {
  if (document.documentElement.dataset.side !== 'desk') return;
  endWithScreen();
  let asked = false;
  const again = () => {
    if (asked) return;
    asked = true;
    requestAnimationFrame(() => {
      asked = false;
      endWithScreen();
    });
  };
  addEventListener('resize', again);
  addEventListener('scroll', again, { passive: true });
  // What is above them grows and shrinks with the page: the line that tells, a stop, who is here.
  new ResizeObserver(again).observe(document.body);
  document.addEventListener('page-merged', again);
}
