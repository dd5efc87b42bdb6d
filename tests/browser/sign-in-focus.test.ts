import { afterAll, beforeAll, expect, test } from 'vitest';
import { type TestBrowser, testBrowser } from '../tools/browser.ts';
import { lowTargets, spill } from '../tools/looks.ts';
import { type TestService, testService } from '../tools/service.ts';

let service: TestService;
let browser: TestBrowser;
let base: string;
beforeAll(async () => {
  service = await testService();
  base = await service.listen();
  browser = await testBrowser();
});
afterAll(async () => {
  await browser?.close();
  await service?.close();
});

test.each([true, false])('with scripts %s the sign-in is typed into at once', async (javaScriptEnabled) => {
  const context = await browser.newContext({ javaScriptEnabled });
  const page = await context.newPage();
  await page.goto(`${base}/sign-in`);
  // A page is there a moment before its first field has the focus.
  await page.locator('input:focus').waitFor();
  await page.keyboard.type('robin@bench.invalid');
  expect(await page.getByLabel('E-mail address').inputValue()).toBe('robin@bench.invalid');
  await context.close();
});

// The 44 px are those of WCAG 2.2, SC 2.5.5 (target size, enhanced), whose exception for links in a sentence is not used.
test.each(['/sign-in', '/none', '/bench', `/b/bcl_${'a'.repeat(43)}`])(
  'on a phone %s fits, and what is tapped is high enough',
  async (path) => {
    const context = await browser.newContext({ viewport: { width: 360, height: 740 } });
    const page = await context.newPage();
    await page.goto(`${base}${path}`);
    expect(await spill(page)).toEqual([]);
    expect(await lowTargets(page, ':is(a:not(.skip), button, input):visible')).toEqual([]);
    await context.close();
  },
);
