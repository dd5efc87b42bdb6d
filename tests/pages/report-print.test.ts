import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type TestBrowser, testBrowser } from '../tools/browser.ts';
import { pagesOf } from '../tools/paper.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';
import { type WholeCall, wholeCall } from '../tools/whole-call.ts';

/** The sheets of a whole call on paper and on one screen, in a real Chromium. */
let service: TestService;
let person: Person;
let whole: WholeCall;
let browser: TestBrowser;
let base: string;
let page: Page;
beforeAll(async () => {
  service = await testService();
  person = await service.person({ name: 'Robin at the desk' });
  whole = await wholeCall(service, person);
  base = await service.listen();
  browser = await testBrowser();
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
  await context.addCookies([{ name: 'benchcall-desk', value: person.cookies['benchcall-desk'], url: base }]);
  page = await context.newPage();
});
afterAll(async () => {
  await browser?.close();
  await service?.close();
});

const open = (path: string) =>
  page.goto(`${base}/calls/${whole.callId}/${path}`, { waitUntil: 'networkidle' });

/** Width of the paper less the margins of the style sheet, in CSS pixels of 1/96 in. */
const PAPER = { A4: ((210 - 24) / 25.4) * 96, Letter: ((215.9 - 24) / 25.4) * 96 } as const;

describe.each(['A4', 'Letter'] as const)('on %s', (format) => {
  test('the answers of a whole call take two pages, and what they rest on begins a page of its own', {
    timeout: 120_000,
  }, async () => {
    await open('report');
    const all = pagesOf(await page.pdf({ format }));
    await page.locator('.report-behind').evaluate((each) => each.remove());
    const without = pagesOf(await page.pdf({ format }));
    expect(without).toBeGreaterThanOrEqual(1);
    expect(without).toBeLessThanOrEqual(2);
    expect(all).toBeGreaterThan(without);
  });

  test('nothing is cut off at the side of the paper', { timeout: 120_000 }, async () => {
    await page.setViewportSize({ width: Math.floor(PAPER[format]), height: 1000 });
    await page.emulateMedia({ media: 'print' });
    await open('report');
    const over = await page.evaluate(() =>
      [...document.querySelectorAll('.report *')]
        .filter((each) => !each.closest('.visually-hidden, svg'))
        .filter((each) => each.getBoundingClientRect().right > window.innerWidth + 1)
        .map((each) => `${each.tagName} ${each.className}: ${(each.textContent ?? '').slice(0, 40)}`),
    );
    expect(over).toEqual([]);
    await page.emulateMedia({ media: null });
    await page.setViewportSize({ width: 1280, height: 900 });
  });
});

test('on paper a table repeats its head, a row and a photograph stay whole, and no heading ends a page', {
  timeout: 120_000,
}, async () => {
  await page.emulateMedia({ media: 'print' });
  await open('report');
  const styles = await page.evaluate(() => {
    const of = (selector: string, name: string) => {
      const found = [...document.querySelectorAll(selector)];
      return [...new Set(found.map((each) => getComputedStyle(each).getPropertyValue(name)))];
    };
    return {
      heads: of('.report .table thead', 'display'),
      rows: of('.report .table tbody tr', 'break-inside'),
      photographs: of('.report-photograph', 'break-inside'),
      headings: of('.report h2', 'break-after'),
      behind: of('.report-behind', 'break-before'),
    };
  });
  await page.emulateMedia({ media: null });
  expect(styles).toEqual({
    heads: ['table-header-group'],
    rows: ['avoid'],
    photographs: ['avoid'],
    headings: ['avoid'],
    behind: ['page'],
  });
});

test('the takeover card stands on one screen of 1280 by 900', { timeout: 120_000 }, async () => {
  await open('takeover');
  const size = await page.evaluate(() => ({
    width: document.documentElement.scrollWidth,
    height: document.documentElement.scrollHeight,
  }));
  expect(size.width).toBeLessThanOrEqual(1280);
  expect(size.height).toBeLessThanOrEqual(900);
});

test('at 360 px the report spills over no side', { timeout: 120_000 }, async () => {
  await page.setViewportSize({ width: 360, height: 740 });
  await open('report');
  const spill = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  await page.setViewportSize({ width: 1280, height: 900 });
  expect(spill).toBeLessThanOrEqual(0);
});
