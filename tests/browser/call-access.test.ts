import { AxeBuilder } from '@axe-core/playwright';
import type { BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type DemoCall, openDemoCall } from '../tools/demo-call.ts';

let demo: DemoCall;
beforeAll(async () => {
  demo = await openDemoCall();
});
afterAll(() => demo?.close());

const STEPS = ['triage', 'build', 'cam', 'parts', 'ratio', 'ratio?new=1', 'notes'];
const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

async function faultsOf(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).withTags(RULES).analyze();
  const spill = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  return [
    ...violations.map((fault) => `${fault.id}: ${fault.nodes.map((node) => node.html).join(' | ')}`),
    ...(spill > 0 ? [`${spill} px too wide`] : []),
  ];
}

const DARK: BrowserContextOptions = { viewport: { width: 1280, height: 900 }, colorScheme: 'dark' };
const PHONE: BrowserContextOptions = { viewport: { width: 320, height: 640 } };

describe('every page of a call meets the access rules and fits its screen', () => {
  it('desk, dark', { timeout: 300_000 }, async () => {
    const page = await demo.desk(DARK);
    const call = `${demo.base}/calls/${demo.callId}`;
    const steps = STEPS.map((step) => `${call}/steps/${step}`);
    const more = ['hold', 'close', 'share', 'report', 'worksheet'].map((each) => `${call}/${each}`);
    for (const url of [`${demo.base}/calls`, `${demo.base}/calls/new`, ...steps, ...more]) {
      await page.goto(url);
      expect(await faultsOf(page), url).toEqual([]);
    }
    await page.context().close();
  });

  it('bench, on a phone', { timeout: 300_000 }, async () => {
    const page = await demo.bench(PHONE);
    for (const path of [...STEPS.map((step) => `steps/${step}`), 'report', 'worksheet']) {
      await page.goto(`${demo.base}/bench/${path}`);
      expect(await faultsOf(page), path).toEqual([]);
    }
    await page.context().close();
  });

  it('with faults shown', { timeout: 120_000 }, async () => {
    const page = await demo.desk();
    await page.goto(`${demo.base}/calls/${demo.callId}/steps/ratio`);
    await page.getByLabel('Reading at full lift').fill('4"; drop');
    await page.getByRole('button', { name: 'Keep reading' }).click();
    await page.locator('.error-summary').waitFor();
    expect(await faultsOf(page)).toEqual([]);
    await page.context().close();
  });
});

it('at the bench every target of a step is at least 44 px high', { timeout: 120_000 }, async () => {
  const page = await demo.bench(PHONE);
  for (const step of STEPS) {
    await page.goto(`${demo.base}/bench/steps/${step}`);
    for (const target of await page
      .locator('.builder > .form .button, .builder .field-input:visible')
      .all()) {
      expect(
        (await target.boundingBox())?.height,
        `${step}: ${await target.innerHTML()}`,
      ).toBeGreaterThanOrEqual(44);
    }
  }
  await page.context().close();
});
