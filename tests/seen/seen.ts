import type { Page } from 'playwright-core';

/** What a page shows, and how far down: pixels from its top; left out where the page has none of it. */
export interface Seen {
  readonly stop?: number;
  readonly next?: number;
  readonly answer?: number;
  readonly entry?: number;
  /** How many of its windows the page is high. */
  readonly screens: number;
  /** Different sizes of letters that are visible. */
  readonly sizes: number;
}

/** The places of a page that count: by what they are, not by where they happen to stand. */
const PLACES = {
  stop: '.hold',
  next: '.bar-next, .missing-next',
  answer: '.bar-answer, .headline, .result',
  entry:
    'main form :is(input:not([type=hidden], [type=search]), select, textarea), main .sheet-grid, main .empty .button',
};

/** Where the things that are looked for first stand on the page that is open. No function has a name in there. */
export function seenOn(page: Page): Promise<Seen> {
  return page.evaluate((places) => {
    const tops: Record<string, number> = {};
    for (const [name, selector] of Object.entries(places))
      for (const found of document.querySelectorAll(selector)) {
        if (name in tops || !found.checkVisibility({ visibilityProperty: true })) continue;
        tops[name] = Math.round(found.getBoundingClientRect().top + window.scrollY);
      }
    const sizes = new Set<string>();
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walker.nextNode(); node !== null; node = walker.nextNode()) {
      const parent = node.parentElement;
      if (parent === null || node.textContent?.trim() === '' || parent.closest('svg, math') !== null)
        continue;
      if (parent.checkVisibility({ visibilityProperty: true })) sizes.add(getComputedStyle(parent).fontSize);
    }
    return {
      ...tops,
      screens: Number((document.documentElement.scrollHeight / window.innerHeight).toFixed(1)),
      sizes: sizes.size,
    };
  }, PLACES);
}
