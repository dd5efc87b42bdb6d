import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { frames } from '../../views/parts/registry.ts';
import { axeFaults } from '../tools/axe.ts';
import { type TestBrowser, testBrowser } from '../tools/browser.ts';
import { lowTargets, spill } from '../tools/looks.ts';
import { eta, partsBody, standalonePage } from '../tools/render-parts.ts';

const pages = ['parts', ...frames.map((frame) => frame.name)];
let browser: TestBrowser;
let folder: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'parts-'));
  await writeFile(join(folder, 'parts.html'), await standalonePage('Parts', partsBody()));
  for (const { name, template, data, side } of frames) {
    await writeFile(
      join(folder, `${name}.html`),
      await standalonePage('Frame', eta.render(template, data), side),
    );
  }
  browser = await testBrowser();
}, 60_000);

afterAll(async () => {
  await browser?.close();
  await rm(folder, { recursive: true, force: true });
});

async function open(name: string, width: number, colorScheme: 'light' | 'dark') {
  const context = await browser.newContext({ viewport: { width, height: 800 }, colorScheme });
  const page = await context.newPage();
  await page.goto(pathToFileURL(join(folder, `${name}.html`)).href);
  return { page, close: () => context.close() };
}

/** Every page is opened once, and its window changed. */
describe.each(pages)('page %s', (name) => {
  let page: Page;
  beforeAll(async () => {
    ({ page } = await open(name, 1280, 'dark'));
  });
  afterAll(() => page?.context().close());

  it.each([
    [1280, 'dark'],
    [320, 'light'],
  ] as const)('meets the access rules at %i px, %s', async (width, colorScheme) => {
    await page.setViewportSize({ width, height: 800 });
    await page.emulateMedia({ colorScheme });
    expect(await axeFaults(page)).toEqual([]);
  });

  it.each([320, 430, 1100, 1280])('spills nothing sideways at %i px', async (width) => {
    await page.setViewportSize({ width, height: 800 });
    expect(await spill(page)).toEqual([]);
  });
});

it('on the bench every button and field is at least 44 px high', { timeout: 30_000 }, async () => {
  const { page, close } = await open('builder', 360, 'light');
  const targets = '.builder .button, .builder .field-input, .builder summary';
  expect(await page.locator(targets).count()).toBeGreaterThan(3);
  expect(await lowTargets(page, targets)).toEqual([]);
  await close();
});

it('the tape opens at its newest line', { timeout: 30_000 }, async () => {
  const { page, close } = await open('desk', 1280, 'light');
  await page.setViewportSize({ width: 1280, height: 500 });
  const strip = await page.locator('.tape-window').boundingBox();
  const newest = await page.locator('.tape-line').last().boundingBox();
  const oldest = await page.locator('.tape-line').first().boundingBox();
  if (!strip || !newest || !oldest) throw new Error('the tape is not on the page');
  expect(oldest.y).toBeLessThan(strip.y);
  expect(newest.y + newest.height).toBeLessThanOrEqual(strip.y + strip.height + 1);
  await close();
});
