import type { Locator, Page } from 'playwright-core';

/**
 * A person at the desk who has no mouse: only keys are sent, and each one is counted. What is typed into a field
 * counts a key a character, a capital, a bracket or a way back one more for the shift.
 */
export interface Keyboard {
  /** Presses keys one after the other, named as the browser names them. */
  press(...keys: string[]): Promise<void>;
  /** Types into the field that has the focus. */
  type(text: string): Promise<void>;
  /** Goes on with Tab until the element that the label names has the focus. */
  tabTo(label: string): Promise<void>;
  /** Goes on with Tab until the element itself has the focus. */
  walkTo(element: Locator): Promise<void>;
  /** Goes on with Tab until one of the elements has the focus. */
  walkInto(elements: Locator): Promise<void>;
  /** Leaves the field, presses the key that stands on the page, and waits for the page it leads to. */
  key(key: string, to: RegExp): Promise<void>;
  /** Sends the form with Enter from the field that has the focus. */
  send(to: RegExp): Promise<void>;
  count(): number;
}

/** The words a person hears for the element that has the focus: its own label, or that of its group. */
const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const { activeElement: at } = document;
    if (
      at instanceof HTMLInputElement ||
      at instanceof HTMLSelectElement ||
      at instanceof HTMLTextAreaElement
    )
      return [at.labels?.[0]?.textContent, at.closest('fieldset')?.querySelector('legend')?.textContent]
        .map((text) => text?.trim() ?? '')
        .join(' | ');
    return at?.textContent?.trim() ?? '';
  });

const MOST_TABS = 160;

export function keyboardOf(page: Page): Keyboard {
  let count = 0;
  const press = async (key: string) => {
    count += key.startsWith('Shift+') ? 2 : 1;
    await page.keyboard.press(key);
  };
  const leadsTo = async (key: string, to: RegExp) => {
    // A form may lead back to the same address, so the page that is left is marked.
    await page.evaluate(() => document.documentElement.setAttribute('data-left', ''));
    await press(key);
    await page.waitForFunction(
      () => document.readyState === 'complete' && !document.documentElement.hasAttribute('data-left'),
    );
    await page.waitForURL(to);
  };
  const walkInto = async (elements: Locator) => {
    await elements.first().waitFor({ state: 'attached' });
    const all = await elements.elementHandles();
    const isHere = () => page.evaluate((each) => each.some((one) => one === document.activeElement), all);
    for (let tabs = 0; tabs < MOST_TABS; tabs += 1) {
      if (await isHere()) return;
      await press('Tab');
    }
    throw new Error(`no way to ${String(elements)} by Tab`);
  };
  return {
    walkInto,
    walkTo: (element) => walkInto(element.first()),
    async press(...keys) {
      for (const key of keys) await press(key);
    },
    async type(text) {
      for (const letter of text) {
        count += /[A-Z"()?:]/.test(letter) ? 2 : 1;
        await page.keyboard.type(letter);
      }
    },
    async tabTo(label) {
      const passed: string[] = [];
      for (let tabs = 0; tabs < MOST_TABS; tabs += 1) {
        const at = await focused(page);
        if (at.includes(label)) return;
        passed.push(at);
        await press('Tab');
      }
      throw new Error(`no way to “${label}” by Tab; past ${passed.join(' / ')}`);
    },
    async key(key, to) {
      const typing = await page.evaluate(
        () =>
          document.activeElement?.matches('input:not([type=radio], [type=checkbox]), textarea, select') ??
          false,
      );
      if (typing) await press('Escape');
      await leadsTo(key, to);
    },
    async send(to) {
      await leadsTo('Enter', to);
    },
    count: () => count,
  };
}
