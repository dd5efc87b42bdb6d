import type { Page } from 'playwright-core';

/** Pages of a PDF: each has one object of the type Page (ISO 32000-1, table 30). */
export const pagesOf = (pdf: Buffer): number =>
  (pdf.toString('latin1').match(/\/Type\s*\/Page\b/g) ?? []).length;

interface PrintedSizes {
  /** The smallest letters of running text, drawings left out: theirs follow the drawing's scale. */
  readonly least: { readonly size: number; readonly text: string };
  /** The result in figures. */
  readonly result: number;
}

/** Sizes of letters in points as the print style sheet gives them; 1 pt is 1/72 in, 1 px 1/96 in (CSS Values 4, 6.2). */
export async function printedSizes(page: Page): Promise<PrintedSizes> {
  await page.emulateMedia({ media: 'print' });
  const sizes = await page.evaluate(() => {
    const points = (each: Element) => Number.parseFloat(getComputedStyle(each).fontSize) * 0.75;
    const shown: { size: number; text: string }[] = [];
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (walker.nextNode()) {
      const text = (walker.currentNode.textContent ?? '').trim();
      const parent = walker.currentNode.parentElement;
      if (text === '' || parent === null || parent.closest('svg, script, style, .visually-hidden')) continue;
      if (parent.getClientRects().length > 0) shown.push({ size: points(parent), text: text.slice(0, 60) });
    }
    const results = [...document.querySelectorAll('.result-value:not(.result-words)')].map(points);
    return { shown, result: Math.max(0, ...results) };
  });
  await page.emulateMedia({ media: null });
  const [least = { size: 0, text: 'nothing is shown' }] = sizes.shown.toSorted((a, b) => a.size - b.size);
  return { least, result: sizes.result };
}
