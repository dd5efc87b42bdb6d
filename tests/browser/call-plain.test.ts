import type { BrowserContextOptions } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type DemoCall, openDemoCall } from '../tools/demo-call.ts';

/** Pages of a call without the browser's script, and two people at one form. */
let demo: DemoCall;
beforeAll(async () => {
  demo = await openDemoCall();
});
afterAll(() => demo?.close());

const OFF: BrowserContextOptions = { viewport: { width: 320, height: 640 }, javaScriptEnabled: false };

it('with scripts off a call is opened, asked, set up on five screens and read', {
  timeout: 240_000,
}, async () => {
  const desk = await demo.desk(OFF);
  await desk.goto(`${demo.base}/calls/new`);
  await desk.getByLabel('Who is calling').fill('A caller');
  await desk.getByRole('button', { name: 'Open the call' }).click();
  expect(await desk.locator('.error-summary').textContent()).toContain(
    'A name for the build must not be empty',
  );
  expect(await desk.getByLabel('Who is calling').inputValue()).toBe('A caller');
  await desk.getByLabel('A name for the build').fill('Red block');
  await desk.getByRole('button', { name: 'Open the call' }).click();
  await desk.waitForURL(/steps\/triage(\?|$)/);
  await desk.getByLabel('It is apart').check();
  await desk.getByLabel('Nothing hit, bent, tight or loose').check();
  await desk.getByRole('button', { name: 'Save this answer' }).click();
  await desk.waitForURL(/steps\/parts(\?|$)/);

  const bench = await demo.bench(OFF);
  await bench.goto(`${demo.base}/bench/steps/ratio?new=1`);
  await bench.getByLabel('Cylinder').fill('5');
  for (let screen = 1; screen < 5; screen += 1) await bench.getByRole('button', { name: 'Go on' }).click();
  await bench.getByRole('button', { name: 'Start this set-up' }).click();
  // The form begins with the arm of the last set-up, which sits on 1 intake.
  expect(await bench.locator('.error-summary').textContent()).toContain(
    'arm A sits on 1 intake by the record, and arm B on 5 intake. Pick the arm that is there',
  );
  expect(await bench.getByLabel('Cylinder').inputValue()).toBe('5');
  await bench.getByLabel('Which arm sits on it').selectOption({ label: 'arm B, on 5 intake now' });
  await bench.getByRole('button', { name: 'Start this set-up' }).click();
  await bench.getByLabel('Reading at full lift').fill('4 turns 82');
  await bench.getByRole('button', { name: 'Save reading' }).click();
  expect(await bench.locator('.dial-reading').textContent()).toBe('Lobe lift, pass 1: 4 turns 82 = .482 in');
  expect(await bench.getByLabel('Lobe lift 5 intake, pass 2', { exact: true }).isChecked()).toBe(true);
  await desk.context().close();
  await bench.context().close();
});

it('two who change the card at one time: the second is shown both, and loses nothing', {
  timeout: 240_000,
}, async () => {
  const first = await demo.desk();
  const second = await demo.desk(OFF);
  const url = `${demo.base}/calls/${demo.callId}/steps/cam`;
  await second.goto(url);
  await first.goto(url);
  await first.getByLabel('Lobe lift, intake', { exact: true }).fill('.480');
  await first.getByLabel('Lash on the card, intake').fill('.015');
  await first.getByRole('button', { name: 'Save as a new revision' }).click();
  await second.getByLabel('Lobe lift, intake', { exact: true }).fill('.484');
  await second.getByRole('button', { name: 'Save as a new revision' }).click();
  expect(await second.title()).toMatch(/^Error: /);
  expect(await second.getByLabel('Lobe lift, intake', { exact: true }).inputValue()).toBe('.484');
  expect(await second.locator('.field-other').textContent()).toContain('has put .480 in here');
  // What the second person never touched stands as the first has it now.
  expect(await second.getByLabel('Lash on the card, intake').inputValue()).toBe('.015');
  // Neither replaces the other until it is said which stands.
  await second.getByRole('button', { name: 'Save as a new revision' }).click();
  expect(await second.title()).toMatch(/^Error: /);
  await second.getByLabel(/as typed here/).check();
  await second.getByRole('button', { name: 'Save as a new revision' }).click();
  expect(await second.getByLabel('Lobe lift, intake', { exact: true }).inputValue()).toBe('.484');
  expect(await second.locator('.field-other').count()).toBe(0);
  await first.context().close();
  await second.context().close();
});
