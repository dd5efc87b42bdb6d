import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type DemoCall, openDemoCall } from '../tools/demo-call.ts';

/** Desk and builder at the same form: what came in meanwhile is said and asked, and nothing moves under the hands. */
let demo: DemoCall;
beforeAll(async () => {
  demo = await openDemoCall();
});
afterAll(() => demo?.close());

const save = async (page: Page, figure: string) => {
  await page.locator('[name=peak]').fill(figure);
  await page.getByRole('button', { name: 'Save reading' }).click();
  await page.waitForURL(/kept=\d+/);
};

it('a pass that was typed while the other side saved one is asked about, and a stop takes the cursor off a choice', async () => {
  const desk = await demo.desk();
  const bench = await demo.bench();
  await desk.goto(`${demo.base}/calls/${demo.callId}/steps/ratio`);
  await desk.locator('[name=peak]').fill('.5');
  await bench.goto(`${demo.base}/bench/steps/ratio`);
  const said = await bench.locator('[data-keeps]').textContent();
  const pass = Number(/pass (\d+)/.exec(said ?? '')?.[1]);
  await save(bench, '.5613');
  await desk.locator('.tape-line', { hasText: '.5613' }).first().waitFor();
  await desk.locator('[name=peak]').press('Enter');
  await desk.locator('[data-focus-on-load]').waitFor();
  expect(await desk.locator('[data-focus-on-load]').textContent()).toMatch(
    new RegExp(`pass ${pass}, came in while this was typed`),
  );
  expect(await desk.locator('[name=peak]').inputValue()).toBe('.5');
  // Said once more it is kept.
  await desk.getByRole('button', { name: 'Save reading' }).click();
  await desk.waitForURL(/kept=\d+/);

  await desk.goto(`${demo.base}/calls/${demo.callId}/steps/notes`);
  await desk.locator('main select, main input[type=radio]').first().focus();
  await desk.evaluate(() => scrollTo(0, document.body.scrollHeight));
  await bench.locator('#stop-here summary').click();
  await bench.locator('#stop-here button').click();
  const box = desk.locator('main .hold');
  await box.waitFor();
  await desk.locator('main .hold:focus').waitFor();
  // Scrolled down, the stop is still seen, and no answer lies over it.
  await desk.evaluate(() => scrollTo(0, document.body.scrollHeight));
  expect(
    await box.evaluate((each) => {
      const { left, top } = each.getBoundingClientRect();
      return top >= 0 && each.contains(document.elementFromPoint(left + 40, top + 30));
    }),
  ).toBe(true);
});
