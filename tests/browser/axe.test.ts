import { afterAll, beforeAll, expect, it } from 'vitest';
import { axeFaults } from '../tools/axe.ts';
import { type TestBrowser, testBrowser } from '../tools/browser.ts';

/** The look at the rules of access that the other tests take for their word must find what is wrong. */
let browser: TestBrowser;
beforeAll(async () => {
  browser = await testBrowser();
});
afterAll(() => browser?.close());

const FAULTY =
  '<html lang="en"><title>Faulty</title><main><h1>Faulty</h1><input><p style="color:#999;background:#fff">Pale</p>';
const codes = (faults: string[]) => faults.map((fault) => fault.split(':')[0]).sort();

it('finds a field without a label and a pale text, each where it is asked for', async () => {
  const page = await (await browser.newContext()).newPage();
  await page.setContent(FAULTY);
  expect(codes(await axeFaults(page))).toEqual(['color-contrast', 'label']);
  expect(codes(await axeFaults(page, 'left out'))).toEqual(['label']);
  expect(codes(await axeFaults(page, 'alone'))).toEqual(['color-contrast']);
});

it('does not pass over a frame', async () => {
  const page = await (await browser.newContext()).newPage();
  await page.setContent(`${FAULTY}<iframe srcdoc="<input>"></iframe>`);
  await expect(axeFaults(page)).rejects.toThrow('a frame on the page');
});
