import { mkdir } from 'node:fs/promises';
import type { BrowserContextOptions, Page } from 'playwright-core';
import { type DemoCall, openDemoCall } from '../../tools/demo-call.ts';

/**
 * A call between two sides: the desk at 1280 px and the builder at 360 px, on the demo shop with its invented
 * catalogue. The builder opens the link each time as they are, with scripts or without; that the desk signs in without
 * scripts is seen in call-plain.test.ts. With CALL_PICTURES=folder every scene is also put there as a picture to be looked at.
 */
export interface TwoSides {
  readonly demo: DemoCall;
  readonly desk: Page;
  /** Opens the link that the desk made, as a tap on a text message does. */
  builderOpens(link: string, options?: BrowserContextOptions): Promise<Page>;
  picture(page: Page, name: string): Promise<void>;
  close(): Promise<void>;
}

export const PHONE: BrowserContextOptions = { viewport: { width: 360, height: 740 } };
export const SCRIPTS_OFF: BrowserContextOptions = { javaScriptEnabled: false };

/** One shop for all calls that a process plays: each opens a call of its own, and asks for nothing of the others. */
let shop: Promise<DemoCall> | undefined;

export async function twoSides(options: BrowserContextOptions = {}): Promise<TwoSides> {
  shop ??= openDemoCall();
  const demo = await shop;
  const desk = await demo.desk({ viewport: { width: 1280, height: 900 }, ...options });
  const contexts = [desk.context()];
  const folder = process.env.CALL_PICTURES;
  return {
    demo,
    desk,
    async builderOpens(link, phone = {}) {
      const context = await demo.browser.newContext({ ...PHONE, ...phone });
      contexts.push(context);
      context.setDefaultTimeout(15_000);
      const page = await context.newPage();
      await page.goto(link);
      await page.getByRole('button', { name: 'Open my build' }).click();
      await page.waitForURL(/\/bench\/steps\//);
      return page;
    },
    async picture(page, name) {
      if (folder === undefined) return;
      await mkdir(folder, { recursive: true });
      await page.screenshot({ path: `${folder}/${name}.png`, fullPage: true });
    },
    async close() {
      for (const context of contexts) await context.close();
    },
  };
}
