import type { Page } from 'playwright-core';
import { axeFaults, type Colours } from './axe.ts';

/** A way to look at the page that is open: what is wrong with it. It leaves the page as it found it. */
export type Look = (place: string) => Promise<string[]>;

export const nothing = (): Promise<string[]> => Promise.resolve([]);

/** What was found, by the name of the look and then by place: nothing at all where all is well. */
export type Found = ReadonlyMap<string, Readonly<Record<string, string[]>>>;

/** Opens each place once and looks at it in every way. */
export async function visit(
  page: Page,
  places: readonly (readonly [name: string, url: string])[],
  looks: Readonly<Record<string, Look>>,
): Promise<Found> {
  const found = new Map<string, Record<string, string[]>>(Object.keys(looks).map((name) => [name, {}]));
  for (const [place, url] of places) {
    await page.goto(url);
    for (const [name, look] of Object.entries(looks)) {
      const faults = await look(place);
      if (faults.length > 0) Object.assign(found.get(name) ?? {}, { [place]: faults });
    }
  }
  await page.context().close();
  return found;
}

/** How far the page is wider than its window, and what sticks out. */
export function spill(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const over = document.documentElement.scrollWidth - window.innerWidth;
    if (over <= 0) return [];
    const out = [...document.querySelectorAll('main *')]
      .filter((each) => each.getBoundingClientRect().right > window.innerWidth + 0.5)
      .slice(0, 3)
      .map((each) => each.outerHTML.slice(0, 160));
    return [`${over} px too wide: ${out.join(' | ')}`];
  });
}

/** The rules of access as the page is, and whether it fits its window. */
export async function asShown(page: Page, colours: Colours): Promise<string[]> {
  return [...(await axeFaults(page, colours)), ...(await spill(page))];
}

export async function inTheDark(page: Page): Promise<string[]> {
  await page.emulateMedia({ colorScheme: 'dark' });
  const faults = await axeFaults(page, 'alone');
  await page.emulateMedia({ colorScheme: null });
  return faults;
}

/** At the width of A4 paper, as it is printed. */
export async function onPaper(page: Page): Promise<string[]> {
  const window = page.viewportSize();
  if (window === null) throw new Error('a page without a window');
  await page.emulateMedia({ media: 'print' });
  await page.setViewportSize({ width: 794, height: 1123 });
  const faults = await spill(page);
  await page.setViewportSize(window);
  await page.emulateMedia({ media: null });
  return faults;
}

const textSize = (page: Page) =>
  page.evaluate(() => Number.parseFloat(getComputedStyle(document.body).fontSize));

/** Text at twice its size, as a browser's own setting makes it. */
export async function twiceTheText(page: Page): Promise<string[]> {
  const session = await page.context().newCDPSession(page);
  const before = await textSize(page);
  await session.send('Page.enable');
  await session.send('Page.setFontSizes', { fontSizes: { standard: 32, fixed: 26 } });
  const grown = await textSize(page);
  const faults = await spill(page);
  await session.send('Page.setFontSizes', { fontSizes: { standard: 16, fixed: 13 } });
  await session.detach();
  // Otherwise nothing was tried.
  return Math.abs(grown - 2 * before) < 0.1
    ? faults
    : [`text of ${grown} px is not twice that of ${before} px`];
}

/** What a finger must hit and is under 44 px high. */
export function lowTargets(page: Page, targets: string): Promise<string[]> {
  return page
    .locator(targets)
    .evaluateAll((all) =>
      all
        .filter((each) => each.getBoundingClientRect().height < 44)
        .map((each) => `${each.getBoundingClientRect().height} px: ${each.outerHTML.slice(0, 160)}`),
    );
}
