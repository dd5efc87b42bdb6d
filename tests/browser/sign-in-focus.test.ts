import { afterAll, beforeAll, expect, test } from 'vitest';
import { type TestBrowser, testBrowser } from '../tools/browser.ts';
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
  await page.keyboard.type('robin@bench.invalid');
  expect(await page.getByLabel('E-mail address').inputValue()).toBe('robin@bench.invalid');
  await context.close();
});
