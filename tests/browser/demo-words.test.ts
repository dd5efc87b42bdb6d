import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { STEP_NAMES } from '../../shared/steps.ts';
import { linesOf } from '../tools/call-faces.ts';
import { type DemoCall, openDemoCall } from '../tools/demo-call.ts';
import { neverSaid } from '../tools/told-texts.ts';

/** Every page of the demo as it is read, the call’s and all others: no word that is never said, no exclamation. */
let call: DemoCall;
beforeAll(async () => {
  call = await openDemoCall();
}, 120_000);
afterAll(() => call.close());

/** An exclamation, and what a program says where it has nothing to say. */
const SLIPS = /[a-z]!(\s|$)|\bNaN\b|\bundefined\b|\[object /;

const WHOLE = ['report', 'worksheet', 'photographs'];

async function wordsOn(page: Page, home: string, places: readonly string[]): Promise<string[]> {
  const found: string[] = [];
  for (const place of places) {
    await page.goto(`${call.base}${home}/${place}`);
    const lines = linesOf(await page.content());
    expect(lines.length, place).toBeGreaterThan(5);
    const said = [...lines.flatMap(neverSaid), ...lines.filter((line) => SLIPS.test(line))];
    found.push(...said.map((word) => `${home}/${place}: ${word}`));
  }
  return found;
}

/** Pages beside those of a call, of people who are signed in and of those who are not. */
const BESIDE = [
  'calls',
  'calls/new',
  'catalogue',
  'desk',
  'desk/limits',
  'account',
  'reference',
  'sign-in?out=1',
  'no-such-page',
];

test('no page of the demo call says a word that is never said', async () => {
  const steps = STEP_NAMES.map((name) => `steps/${name}`);
  const desk = await call.desk();
  const bench = await call.bench();
  const atDesk = [...steps, ...WHOLE, 'takeover', 'share', 'hold', 'close'];
  const found = await Promise.all([
    wordsOn(desk, `/calls/${call.callId}`, atDesk),
    wordsOn(bench, '/bench', [...steps, ...WHOLE]),
  ]);
  expect(found.flat()).toEqual([]);
}, 180_000);

test('no page beside the call says one either, at the desk and on a phone', async () => {
  const computations = [...call.service.deps.computations.keys()].map((name) => `reference/${name}`);
  expect(computations.length).toBeGreaterThan(30);
  const desk = await call.desk();
  const phone = await call.bench();
  const places = [...BESIDE, ...computations];
  const found = await Promise.all([wordsOn(desk, '', places), wordsOn(phone, '', [...places, 'bench/none'])]);
  expect(found.flat()).toEqual([]);
}, 180_000);

test('the takeover card of the demo call stands on one screen of 1280 × 800', async () => {
  const desk = await call.desk({ viewport: { width: 1280, height: 800 } });
  await desk.goto(`${call.base}/calls/${call.callId}/takeover`);
  const box = await desk.locator('.takeover-cards').boundingBox();
  expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThanOrEqual(800);
}, 60_000);
