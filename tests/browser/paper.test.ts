import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { qrCode } from '../../server/call-pages/qr-code.ts';
import { type DemoCall, openDemoCall } from '../tools/demo-call.ts';
import { pagesOf, printedSizes } from '../tools/paper.ts';
import { sixteenValves } from '../tools/sixteen-valves.ts';

/** Sheets of a call on paper, as Chromium prints them. Sizes of paper: ISO 216 and ANSI/ASME Y14.1. */
let demo: DemoCall;
let page: Page;
let calls: Readonly<Record<'demo' | 'sixteen', string>>;
beforeAll(async () => {
  demo = await openDemoCall();
  calls = { demo: demo.callId, sixteen: await sixteenValves(demo.service) };
  page = await demo.desk();
}, 120_000);
afterAll(() => demo?.close());

const SHEETS = [
  ['demo', 'A4'],
  ['demo', 'Letter'],
  ['sixteen', 'A4'],
  ['sixteen', 'Letter'],
] as const;

const open = (call: 'demo' | 'sixteen', sheet: string) =>
  page.goto(`${demo.base}/calls/${calls[call]}/${sheet}`, { waitUntil: 'networkidle' });

/** Takes away all but what is looked for, so that the paper left is what that takes. */
const without = (selector: string) =>
  page.evaluate((taken) => {
    for (const each of document.querySelectorAll(taken)) each.remove();
  }, selector);

describe.each(SHEETS)('the report of the %s call on %s', (call, format) => {
  test('has its answers on two pages, and what they rest on begins a page of its own', async () => {
    await open(call, 'report');
    const whole = pagesOf(await page.pdf({ format }));
    await without('.report-behind');
    const front = pagesOf(await page.pdf({ format }));
    await open(call, 'report');
    await without('.report > :not(.report-behind)');
    const back = pagesOf(await page.pdf({ format }));
    expect(front).toBeLessThanOrEqual(2);
    expect(whole).toBe(front + back);
  });
});

test.each(['A4', 'Letter'] as const)('sixteen valves stand on one page of %s', async (format) => {
  await open('sixteen', 'report');
  const rows = await page.evaluate(() => {
    const tables = document.querySelector('.report-beside:has(> .table-frame + .table-frame)');
    const valves = [...(tables?.querySelectorAll('tbody tr') ?? [])].length;
    for (const each of document.querySelectorAll('.report > *, .report-beside'))
      if (tables !== null && !each.contains(tables) && !tables.contains(each)) each.remove();
    return valves;
  });
  expect(rows).toBe(16);
  expect(pagesOf(await page.pdf({ format }))).toBe(1);
  await page.emulateMedia({ media: 'print' });
  const breaks = await page.evaluate(() =>
    [...document.querySelectorAll('.report-beside > .table-frame')].map(
      (each) => getComputedStyle(each).breakInside,
    ),
  );
  await page.emulateMedia({ media: null });
  expect(breaks).toEqual(['avoid', 'avoid']);
});

test('the report is also printed without its back pages, and says the way back to them', async () => {
  await open('demo', 'report?pages=front');
  expect(pagesOf(await page.pdf({ format: 'A4' }))).toBeLessThanOrEqual(2);
  expect(await page.locator('.report-behind').count()).toBe(0);
  await page.getByRole('link', { name: 'With its back pages' }).click();
  expect(await page.locator('.report-behind .tape-line').count()).toBeGreaterThan(5);
});

describe.each(['demo', 'sixteen'] as const)('under print media the %s call', (call) => {
  test('has no letters under 9.5 pt on its report, and a result of three times that', async () => {
    await open(call, 'report');
    const { least, result } = await printedSizes(page);
    expect(least.size, least.text).toBeGreaterThanOrEqual(9.5);
    // Three times the size that the sheet's running text has.
    expect(result).toBeCloseTo(3 * 9.5, 5);
  });

  test.each(['worksheet', 'takeover'])('has no letters under 9.5 pt on its %s', async (sheet) => {
    await open(call, sheet);
    const { least } = await printedSizes(page);
    expect(least.size, least.text).toBeGreaterThanOrEqual(9.5);
  });

  test.each(['A4', 'Letter'] as const)('has its takeover card on one page of %s', async (format) => {
    await open(call, 'takeover');
    expect(pagesOf(await page.pdf({ format }))).toBe(1);
  });
});

test.each(['A4', 'Letter'] as const)(
  'on %s no heading of the takeover card stands at the foot of a column',
  async (format) => {
    // Paper less the margins of the style sheet, in CSS pixels of 1/96 in.
    const width = format === 'A4' ? ((210 - 24) / 25.4) * 96 : ((215.9 - 24) / 25.4) * 96;
    await page.setViewportSize({ width: Math.floor(width), height: 900 });
    await page.emulateMedia({ media: 'print' });
    await open('sixteen', 'takeover');
    const stranded = await page.evaluate(() =>
      [...document.querySelectorAll('.takeover-card')].flatMap((card) => {
        const [title, first] = [card.querySelector('h2'), card.querySelector('li')];
        if (title === null || first === null) return [];
        const apart = first.getBoundingClientRect().left - title.getBoundingClientRect().left;
        return Math.abs(apart) > 1 ? [title.textContent ?? ''] : [];
      }),
    );
    await page.emulateMedia({ media: null });
    await page.setViewportSize({ width: 1280, height: 900 });
    expect(stranded).toEqual([]);
  },
);

test('the worksheet says how the desk is reached; that of the builder has a code to the build', async () => {
  await open('demo', 'worksheet');
  const said = await page.locator('.worksheet-head').textContent();
  expect(said).toContain('extension 40 (demo)');
  expect(await page.locator('.worksheet-code').count()).toBe(0);
  const bench = await demo.bench({ viewport: { width: 360, height: 740 } });
  await bench.goto(`${demo.base}/bench/worksheet`);
  expect(await bench.locator('.worksheet-head').textContent()).toContain(`${demo.base}/bench`);
  // That such a code is one by ISO/IEC 18004 is tested in tests/pages/qr-code.test.ts.
  expect(await bench.locator('.worksheet-code .code-ink').getAttribute('d')).toBe(
    qrCode(`${demo.base}/bench`).dark,
  );
});
