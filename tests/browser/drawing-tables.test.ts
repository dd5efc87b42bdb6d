import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type DemoCall, openDemoCall } from '../tools/demo-call.ts';

/** The sheet of the demo call, whose drawings have their figures as a table too. */
let demo: DemoCall;
beforeAll(async () => {
  demo = await openDemoCall();
});
afterAll(() => demo?.close());

const heads = async (page: Page): Promise<boolean> => {
  await page.goto(`${demo.base}/calls/${demo.callId}/steps/sheet`);
  await page.evaluate(() => {
    for (const fold of document.querySelectorAll('details')) fold.open = true;
  });
  return page.locator('.drawing-table thead').first().isVisible();
};

it('the table of a drawing is one at the desk, and a list on a phone', async () => {
  expect(await heads(await demo.desk())).toBe(true);
  expect(await heads(await demo.desk({ viewport: { width: 360, height: 740 } }))).toBe(false);
});

it('a figure and its unit stand in one line on a phone; a narrower page may break them before it runs over its edge', async () => {
  const page = await demo.desk({ viewport: { width: 360, height: 740 } });
  for (const step of ['ratio', 'sheet', 'consequences']) {
    await page.goto(`${demo.base}/calls/${demo.callId}/steps/${step}`);
    const lines = await page
      .locator('main .num')
      .evaluateAll((all) => all.filter((each) => each.getClientRects().length > 1).length);
    expect(await page.locator('main .num').count()).toBeGreaterThan(5);
    expect(lines).toBe(0);
  }
});
