import { afterAll, beforeAll, expect, it } from 'vitest';
import { type DemoCall, openDemoCall } from '../tools/demo-call.ts';

/** A phone under a thumb: figures from the pad of the step, and the dial that follows them. */
let demo: DemoCall;
beforeAll(async () => {
  demo = await openDemoCall();
});
afterAll(() => demo?.close());

const PHONE = { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true };

it('turns and needle are tapped, read as they are typed, shown on the dial, and kept', async () => {
  const bench = await demo.bench(PHONE);
  await bench.goto(`${demo.base}/bench/steps/ratio`);
  const field = bench.locator('#reading-f-peak');
  expect(await bench.locator('.dial h3').textContent()).toBe('The last pass on the dial');
  await field.tap();
  const pad = bench.getByRole('group', { name: 'Number pad' });
  for (const key of ['5', 'turns', '6', '7']) await pad.getByRole('button', { name: key, exact: true }).tap();
  await pad.getByRole('button', { name: 'Take one back' }).tap();
  await pad.getByRole('button', { name: '6', exact: true }).tap();
  expect(await field.inputValue()).toBe('5 turns 66');
  expect(await field.evaluate((each) => document.activeElement === each)).toBe(true);
  // The whole pad is on the screen with the button of the form as its last key, and the field stands above it.
  const [padBox, fieldBox] = await Promise.all([pad.boundingBox(), field.boundingBox()]);
  expect((padBox?.y ?? 0) + (padBox?.height ?? 0)).toBe(740);
  expect((fieldBox?.y ?? 740) + (fieldBox?.height ?? 0)).toBeLessThan(padBox?.y ?? 0);
  // A field is still to come: the large key goes there, and saving is that of the last one.
  expect(await pad.getByRole('button').last().textContent()).toBe('Next');
  // Trade practice 2.1, common practice, no published source: turns of .100 and the needle in thousandths.
  expect(await bench.locator('#reading-f-peak-echo').textContent()).toContain('5 turns 66 = .566 in');
  const dial = bench.locator('.dial');
  expect(await dial.locator('[data-dial-said]').textContent()).toBe('As typed: 5 turns 66 = .566 in');
  // Whatever is read out says what the needle shows: .566 of a hand that runs anticlockwise leaves 34 of the turn.
  expect(await dial.locator('h3').textContent()).toBe('The dial should look like this');
  expect(await dial.locator('[data-dial-line="total"]').textContent()).toBe('5 turns and 66 = .566 in');
  expect(await dial.locator('[data-dial-line="hand"]').textContent()).toBe('hand runs anticlockwise, on 34');
  expect(await dial.locator('desc').textContent()).toContain(
    'stands 5 turns and 66 past zero, .566 in in all',
  );
  expect(await dial.locator('tbody td').allTextContents()).toEqual(['5', '.066 in', '34', '.566 in']);
  // From where it was drawn: .847 less .566 is 2.81 turns back, and this hand runs anticlockwise.
  const turned = await dial.locator('[data-hand="needle"]').getAttribute('transform');
  expect(Number(/rotate\(([\d.-]+)/.exec(turned ?? '')?.[1])).toBeCloseTo(2.81 * 360, 0);
  await pad.getByRole('button', { name: 'Go to the next field' }).tap();
  expect(
    await bench.locator('#reading-f-zeroReturn').evaluate((each) => document.activeElement === each),
  ).toBe(true);
  expect(await pad.count()).toBe(1);
  expect(await pad.getByRole('button').last().textContent()).toBe('Save');
  await bench.getByRole('button', { name: 'Save reading' }).tap();
  await bench.waitForURL(/kept=\d+/);
  expect(await bench.locator('.bar-kept').textContent()).toContain('5 turns 66 = .566 in');
  expect(await bench.locator('.bar-kept a').getAttribute('href')).toMatch(/^\/bench\/readings\//);
});

it('the phone’s own keyboard is one key away, and stays for that field', async () => {
  const bench = await demo.bench(PHONE);
  await bench.goto(`${demo.base}/bench/steps/ratio`);
  const field = bench.locator('#reading-f-peak');
  await field.tap();
  expect(await field.getAttribute('inputmode')).toBe('none');
  await bench.getByRole('button', { name: 'Use the phone’s own keyboard' }).tap();
  expect(await field.getAttribute('inputmode')).toBe('text');
  expect(await field.evaluate((each) => document.activeElement === each)).toBe(true);
  expect(await bench.getByRole('group', { name: 'Number pad' }).count()).toBe(0);
});

it('at the desk there is no pad, and ? lists the keys of the page', async () => {
  const desk = await demo.desk();
  await desk.goto(`${demo.base}/calls/${demo.callId}/steps/ratio`);
  await desk.locator('#reading-f-peak').focus();
  expect(await desk.getByRole('group', { name: 'Number pad' }).count()).toBe(0);
  await desk.keyboard.press('Escape');
  await desk.keyboard.press('?');
  const keys = desk.getByRole('dialog', { name: 'Keys on this page' });
  expect(await keys.textContent()).toContain('Save reading');
  const letters = await keys.locator('kbd').allTextContents();
  expect(letters.length).toBe(new Set(letters).size);
  await desk.keyboard.press('Escape');
  expect(await keys.count()).toBe(0);
});
