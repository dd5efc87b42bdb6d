import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { loadComputations } from '../../server/compute/registry.ts';
import { axeFaults } from '../tools/axe.ts';
import { type TestBrowser, testBrowser } from '../tools/browser.ts';
import { spill } from '../tools/looks.ts';
import { type TestService, testService } from '../tools/service.ts';

const names = [...(await loadComputations()).keys()];
const pages = ['/reference', '/reference?q=coil+bind', '/reference/api', '/problems/invalid-input'];

let service: TestService;
let origin: string;
let browser: TestBrowser;
/** One page for all that is looked at in the dark: what they share is loaded once. */
let dark: Awaited<ReturnType<typeof open>>;

beforeAll(async () => {
  service = await testService({ COMPUTE_PER_MINUTE: '100000' });
  origin = await service.listen();
  browser = await testBrowser();
  dark = await open(pages[0] ?? '/reference', 1280, 'dark');
});
afterAll(async () => {
  await browser?.close();
  await service?.close();
});

async function open(url: string, width: number, colorScheme: 'light' | 'dark', javaScriptEnabled = true) {
  const context = await browser.newContext({
    viewport: { width, height: 800 },
    colorScheme,
    javaScriptEnabled,
  });
  const page = await context.newPage();
  const said: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error') said.push(message.text());
  });
  await page.goto(origin + url);
  return { page, said, close: () => context.close() };
}

/** The pages of the computations are made of the same parts: their colours are looked at on the first of them. */
const COLOURS_OF: ReadonlySet<string> = new Set([
  ...pages,
  ...names.slice(0, 4).map((name) => `/reference/${name}`),
]);

describe.each([...pages, ...names.map((name) => `/reference/${name}`)])('%s', (url) => {
  it('meets the access rules in the dark, the policy of the page blocks nothing, and nothing spills at 320 px', async () => {
    const { page, said } = dark;
    said.length = 0;
    await page.setViewportSize({ width: 1280, height: 800 });
    await page.goto(origin + url);
    expect(await axeFaults(page, COLOURS_OF.has(url) ? 'too' : 'left out')).toEqual([]);
    await page.setViewportSize({ width: 320, height: 800 });
    // Unfolded too.
    await page.evaluate(() => {
      for (const folded of document.querySelectorAll('details')) folded.open = true;
    });
    expect(await spill(page)).toEqual([]);
    expect(said).toEqual([]);
  });
});

describe('without scripts', () => {
  it('a form is found, filled, computed and put right', async () => {
    const { page, close } = await open('/reference', 360, 'light', false);
    await page.getByLabel('Find a computation').fill('coil bind');
    await page.getByRole('button', { name: 'Find' }).click();
    await page.getByRole('link', { name: 'Spring load and coil bind' }).click();
    await page.getByLabel('Net lift').fill('much');
    await page.getByRole('button', { name: 'Compute' }).click();
    await page.getByRole('link', { name: /^Net lift: / }).click();
    expect(await page.getByLabel('Net lift').inputValue()).toBe('much');
    // 1.900 − .700 − 1.150 = .050, under the usual .060.
    await page.getByLabel('Net lift').fill('.7');
    await page.getByRole('button', { name: 'Compute' }).click();
    expect(await page.locator('.gap-value').textContent()).toBe('.050 in');
    expect(await page.locator('.gap-bar').textContent()).toContain('short');
    await close();
  });
});
