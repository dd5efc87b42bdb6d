import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { STEP_NAMES } from '../../shared/steps.ts';
import { linesOf } from '../tools/call-faces.ts';
import { type DemoCall, openDemoCall } from '../tools/demo-call.ts';
import { neverSaid } from '../tools/told-texts.ts';

/** Every page of the demo call as it is read: no word that is never said, and the takeover card on one screen. */
let call: DemoCall;
beforeAll(async () => {
  call = await openDemoCall();
}, 120_000);
afterAll(() => call.close());

const WHOLE = ['report', 'worksheet', 'photographs'];

async function wordsOn(page: Page, home: string, places: readonly string[]): Promise<string[]> {
  const found: string[] = [];
  for (const place of places) {
    await page.goto(`${call.base}${home}/${place}`);
    const lines = linesOf(await page.content());
    expect(lines.length, place).toBeGreaterThan(5);
    found.push(...lines.flatMap(neverSaid).map((word) => `${home}/${place}: ${word}`));
  }
  return found;
}

test('no page of the demo call says a word that is never said', async () => {
  const steps = STEP_NAMES.map((name) => `steps/${name}`);
  const desk = await call.desk();
  const ofDesk = await wordsOn(desk, `/calls/${call.callId}`, [
    ...steps,
    ...WHOLE,
    'takeover',
    'share',
    'hold',
    'close',
  ]);
  const bench = await call.bench();
  expect([...ofDesk, ...(await wordsOn(bench, '/bench', [...steps, ...WHOLE]))]).toEqual([]);
}, 180_000);

test('the takeover card of the demo call stands on one screen of 1280 × 800', async () => {
  const desk = await call.desk({ viewport: { width: 1280, height: 800 } });
  await desk.goto(`${call.base}/calls/${call.callId}/takeover`);
  const box = await desk.locator('.takeover-cards').boundingBox();
  expect((box?.y ?? 0) + (box?.height ?? 0)).toBeLessThanOrEqual(800);
}, 60_000);
