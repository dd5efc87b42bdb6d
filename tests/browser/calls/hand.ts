import type { Locator, Page } from 'playwright-core';
import { keyboardOf } from './keyboard.ts';

/** What a person does to a page, by the words they see on it. */
export interface Hand {
  readonly page: Page;
  /** The same hand, looking at one part of the page alone. */
  at(selector: string): Hand;
  /** Puts text into the field with this label. */
  fill(label: string, text: string): Promise<void>;
  /** Takes one of the choices of a group. */
  choose(group: string, choice: string): Promise<void>;
  /** Takes an entry of a drop-down. */
  select(label: string, entry: string): Promise<void>;
  /** Presses a button, or follows a link, and waits for the page it leads to. */
  press(name: string | RegExp): Promise<void>;
  /** Opens what is folded away under this title. */
  unfold(title: string): Promise<void>;
}

type Place = Page | Locator;

/** A label as it stands, whether or not the page says first what is read, or adds that the field may be left empty. */
function field(page: Place, label: string): Locator {
  const words = label.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
  return page.getByLabel(new RegExp(`^\\s*(?:.*, pass \\d+\\s+)?${words}\\s*(\\(if known\\))?\\s*$`)).first();
}
const group = (page: Place, legend: string): Locator =>
  page.getByRole('group', { name: legend, includeHidden: true }).first();

const target = (page: Place, name: string | RegExp): Locator =>
  page.getByRole('button', { name }).or(page.getByRole('link', { name })).filter({ visible: true }).first();

const fold = (place: Place, title: string): Locator => place.locator('summary', { hasText: title }).first();

/** The summaries of what is folded away over an element, the outermost first: a person opens them to get at it. */
async function foldsOver(element: Locator): Promise<Locator[]> {
  await element.waitFor({ state: 'attached' });
  const shut = element.locator('xpath=ancestor::details[not(@open)]');
  return (await shut.all()).map((each) => each.locator('xpath=summary'));
}

/** Runs what leads to another page, even to one at the same address, and waits until it is there. */
async function leaving(page: Page, act: () => Promise<void>): Promise<void> {
  const navigated = page.waitForEvent('framenavigated', (frame) => frame === page.mainFrame());
  await act();
  await navigated;
  await page.waitForLoadState();
}

/** Opens what is folded over it with a press each. */
async function inSight(element: Locator): Promise<Locator> {
  for (const summary of await foldsOver(element)) await summary.click();
  return element;
}

/** With a pointer or a finger. It works with scripts off as well. */
export function pointer(page: Page, place: Place = page): Hand {
  return {
    page,
    at: (selector) => pointer(page, page.locator(selector)),
    fill: async (label, text) => (await inSight(field(place, label))).fill(text),
    choose: async (legend, choice) =>
      (await inSight(group(place, legend).getByLabel(choice).first())).check(),
    async select(label, entry) {
      await (await inSight(field(place, label))).selectOption({ label: entry });
    },
    unfold: (title) => fold(place, title).click(),
    press: (name) => leaving(page, () => target(place, name).click()),
  };
}

const DAY = /^(\d{4})-(\d{2})-(\d{2})$/;
const isDay = async (element: Locator): Promise<boolean> => (await element.getAttribute('type')) === 'date';

/** With Tab, arrows, Space, Enter and letters alone. */
export function keysOnly(page: Page, place: Place = page): Hand {
  const keys = keyboardOf(page);
  const open = async (locator: Locator) => {
    for (const summary of await foldsOver(locator)) {
      await keys.walkTo(summary);
      await keys.press('Enter');
    }
  };
  const walkTo = async (locator: Locator) => {
    await open(locator);
    await keys.walkTo(locator);
  };
  return {
    page,
    at: (selector) => keysOnly(page, page.locator(selector)),
    async fill(label, text) {
      await walkTo(field(place, label));
      // A day is typed as the field has it: month, day, year.
      const [, year, month, day] = (await isDay(field(place, label))) ? (DAY.exec(text) ?? []) : [];
      if (day === undefined) await keys.press('ControlOrMeta+a');
      await keys.type(day === undefined ? text : `${month}${day}${year}`);
    },
    async choose(legend, choice) {
      const options = group(place, legend).getByRole('radio', { includeHidden: true });
      await open(options.first());
      await keys.walkInto(options);
      const wanted = group(place, legend).getByLabel(choice).first();
      const isHere = () => wanted.evaluate((each) => each === document.activeElement);
      for (let at = await options.count(); at > 0 && !(await isHere()); at -= 1)
        await keys.press('ArrowDown');
      if (!(await wanted.isChecked())) await keys.press('Space');
    },
    async select(label, entry) {
      await walkTo(field(place, label));
      await keys.type(entry);
    },
    async unfold(title) {
      await walkTo(fold(place, title));
      await keys.press('Enter');
    },
    async press(name) {
      await walkTo(target(place, name));
      await leaving(page, () => keys.press('Enter'));
    },
  };
}
