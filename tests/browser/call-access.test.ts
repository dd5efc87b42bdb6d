import type { BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { STEPS as STEPS_OF_CALL } from '../../server/steps/index.ts';
import { axeFaults } from '../tools/axe.ts';
import { type DemoCall, openDemoCall } from '../tools/demo-call.ts';

let demo: DemoCall;
beforeAll(async () => {
  demo = await openDemoCall();
});
afterAll(() => demo?.close());

const STEPS = [
  ...STEPS_OF_CALL.map(({ name }) => name),
  'ratio?new=1',
  'ratio?kind=valve-lift-at&atLobeLift=.200',
  'identify?ask=rings',
];
const BESIDE = ['report', 'worksheet', 'photographs'];
const AT_DESK = [...BESIDE, 'hold', 'close', 'share', 'takeover'];
/** Colours are the same few on every page, and looking at them takes longest: the pages with most of them are enough. */
const COLOURED: readonly string[] = [
  'steps/triage',
  'steps/ratio',
  'steps/sheet',
  'steps/consequences',
  'report',
];
const MINUTES = 60_000;

/** How far the page is wider than its window, and what sticks out. */
async function spill(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const over = document.documentElement.scrollWidth - window.innerWidth;
    if (over <= 0) return [];
    const out = [...document.querySelectorAll('main *')]
      .filter((each) => each.getBoundingClientRect().right > window.innerWidth + 0.5)
      .slice(0, 3)
      .map((each) => each.outerHTML.slice(0, 160));
    return [`${over} px too wide: ${out.join(' | ')}`];
  });
}

const darkFaults = (page: Page) => axeFaults(page, 'alone');
async function allFaults(page: Page): Promise<string[]> {
  const coloured = COLOURED.some((place) => page.url().endsWith(place));
  return [...(await axeFaults(page, coloured ? 'too' : 'left out')), ...(await spill(page))];
}

const WIDE = { width: 1280, height: 900 };
const NARROW = { width: 320, height: 640 };

interface Visit {
  readonly grow?: boolean;
  /** These pages alone. */
  readonly only?: readonly string[];
}

/** Visits every page of the call at the desk. */
async function atDesk(
  options: BrowserContextOptions,
  look: (page: Page) => Promise<string[]>,
  { grow = false, only }: Visit = {},
) {
  const page = await demo.desk({ viewport: WIDE, ...options });
  if (grow) await largeText(page);
  const call = `${demo.base}/calls/${demo.callId}`;
  const places = (only ?? [...STEPS.map((step) => `steps/${step}`), ...AT_DESK]).map(
    (place) => `${call}/${place}`,
  );
  const found: Record<string, string[]> = {};
  for (const url of [`${demo.base}/calls`, `${demo.base}/calls/new`, ...places]) {
    await page.goto(url);
    const faults = await look(page);
    if (faults.length > 0) found[url.replace(call, '')] = faults;
  }
  await page.context().close();
  return found;
}

/** Visits every page of the call as the builder. */
async function atBench(
  options: BrowserContextOptions,
  look: (page: Page) => Promise<string[]>,
  { grow = false, only }: Visit = {},
) {
  const page = await demo.bench({ viewport: NARROW, ...options });
  if (grow) await largeText(page);
  const found: Record<string, string[]> = {};
  for (const place of only ?? [...STEPS.map((step) => `steps/${step}`), ...BESIDE]) {
    await page.goto(`${demo.base}/bench/${place}`);
    const faults = await look(page);
    if (faults.length > 0) found[place] = faults;
  }
  await page.context().close();
  return found;
}

/** Text at twice its size, as a browser's own setting makes it; the style is put in past the content policy. */
async function largeText(page: Page): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send('Page.enable');
  await session.send('Page.setFontSizes', { fontSizes: { standard: 32, fixed: 26 } });
}

describe('every page of a call meets the access rules and fits its screen', () => {
  it('at the desk by day', { timeout: 5 * MINUTES }, async () => {
    expect(await atDesk({}, allFaults)).toEqual({});
  });
  it('at the desk in the dark', { timeout: 5 * MINUTES }, async () => {
    expect(await atDesk({ colorScheme: 'dark' }, darkFaults, { only: COLOURED })).toEqual({});
  });
  it('at the desk with text at twice its size', { timeout: 5 * MINUTES }, async () => {
    expect(await atDesk({}, spill, { grow: true })).toEqual({});
  });
  it('on the narrowest phone by day', { timeout: 5 * MINUTES }, async () => {
    expect(await atBench({}, allFaults)).toEqual({});
  });
  it('on the narrowest phone in the dark', { timeout: 5 * MINUTES }, async () => {
    expect(await atBench({ colorScheme: 'dark' }, darkFaults, { only: COLOURED })).toEqual({});
  });
  it('on the narrowest phone with text at twice its size', { timeout: 5 * MINUTES }, async () => {
    expect(await atBench({}, spill, { grow: true })).toEqual({});
  });
  it('on paper, at the width of A4', { timeout: 5 * MINUTES }, async () => {
    const printed = async (page: Page) => {
      await page.emulateMedia({ media: 'print' });
      return spill(page);
    };
    expect(await atDesk({ viewport: { width: 794, height: 1123 } }, printed)).toEqual({});
  });

  it('with faults shown', { timeout: 2 * MINUTES }, async () => {
    const page = await demo.desk();
    await page.goto(`${demo.base}/calls/${demo.callId}/steps/ratio`);
    await page.getByLabel('Reading at full lift').fill('4"; drop');
    await page.getByRole('button', { name: 'Keep reading' }).click();
    await page.locator('.error-summary').waitFor();
    expect(await allFaults(page)).toEqual([]);
    await page.context().close();
  });
});

it('the text is really twice its size in those tests', async () => {
  const page = await demo.desk({ viewport: WIDE });
  const size = () => page.evaluate(() => Number.parseFloat(getComputedStyle(document.body).fontSize));
  const before = await size();
  await largeText(page);
  await page.reload();
  expect(await size()).toBeCloseTo(2 * before, 1);
  await page.context().close();
});

it('at the bench every target of a step is at least 44 px high', { timeout: 2 * MINUTES }, async () => {
  const page = await demo.bench({ viewport: NARROW });
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
