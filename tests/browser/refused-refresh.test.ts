import type { BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type DemoCall, openDemoCall } from '../tools/demo-call.ts';

/** With scripts off: a form that was refused, then Refresh, the address once more, and Back. Nothing typed is lost. */
let demo: DemoCall;
beforeAll(async () => {
  demo = await openDemoCall();
}, 120_000);
afterAll(() => demo?.close());

const OFF: BrowserContextOptions = { viewport: { width: 360, height: 740 }, javaScriptEnabled: false };

async function expectKept(
  page: Page,
  label: string | RegExp,
  typed: string,
  elsewhere: string,
): Promise<void> {
  const value = () => page.getByLabel(label, { exact: true }).inputValue();
  const refused = await page.title();
  expect(refused).toMatch(/^Error: /);
  expect(await value()).toBe(typed);
  await page.reload();
  expect([await page.title(), await value()]).toEqual([refused, typed]);
  await page.goto(page.url());
  expect([await page.title(), await value()]).toEqual([refused, typed]);
  await page.goto(`${demo.base}${elsewhere}`);
  await page.goBack();
  expect([await page.title(), await value()]).toEqual([refused, typed]);
}

test('at the desk, the cam card', { timeout: 120_000 }, async () => {
  const page = await demo.desk(OFF);
  await page.goto(`${demo.base}/calls/${demo.callId}/steps/cam`);
  await page.getByLabel('Lobe lift, intake', { exact: true }).fill('round about so');
  await page.getByRole('button', { name: 'Save as a new revision' }).click();
  await expectKept(page, 'Lobe lift, intake', 'round about so', '/calls');
  // Put right there, it is kept once.
  await page.getByLabel('Lobe lift, intake', { exact: true }).fill('.484');
  await page.getByRole('button', { name: 'Save as a new revision' }).click();
  expect(await page.title()).not.toMatch(/^Error: /);
  await page.goto(`${demo.base}/calls/${demo.callId}/steps/cam`);
  expect(await page.getByLabel('Lobe lift, intake', { exact: true }).inputValue()).toContain('.484');
  await page.context().close();
});

test('on a phone, a reading', { timeout: 120_000 }, async () => {
  const page = await demo.bench(OFF);
  await page.goto(`${demo.base}/bench/steps/ratio`);
  await page.getByLabel('Reading at full lift').fill('round about so');
  await page.getByRole('button', { name: 'Save reading' }).click();
  await expectKept(page, /Reading at full lift$/, 'round about so', '/bench/report');
  await page.context().close();
});
