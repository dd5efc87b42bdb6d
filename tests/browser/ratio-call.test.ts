import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type DemoCall, openDemoCall } from '../tools/demo-call.ts';

/**
 * The main job of a call, played by both sides on the demo: a running-spring ratio that is not set against a
 * stamp, a light spring asked for, passes read over the phone, one with a turn missed, and the record of it all.
 */
let demo: DemoCall;
let desk: Page;
let bench: Page;

beforeAll(async () => {
  demo = await openDemoCall();
  desk = await demo.desk();
  bench = await demo.bench();
});
afterAll(() => demo?.close());

const result = (page: Page) => page.locator('.result').first();
const keep = async (page: Page, reading: string) => {
  await page.getByLabel('Reading at full lift').fill(reading);
  await page.getByLabel('Hand back on the base circle at').fill('0');
  const answered = page.waitForEvent('load');
  await page.getByRole('button', { name: 'Save reading' }).click();
  await answered;
};

it('the desk opens the call at the step that is next, by keys alone', async () => {
  await desk.getByRole('link', { name: 'Demo small block, blue' }).press('Enter');
  await desk.waitForURL(/\/steps\/ratio(\?|$)/);
  await expect.poll(() => desk.evaluate(() => document.activeElement?.id)).toBe('reading-f-peak');
  expect(await result(desk).textContent()).toContain('Running-spring ratio, 1 intake');
  // .847 / .482 = 1.757, the mean of the demo's passes.
  expect(await result(desk).locator('.result-value').textContent()).toBe('1.757');
  expect(
    await desk.locator('.bar-answer .headline-sentence, .bar-rest').allTextContents(),
    'no word on a running spring',
  ).toEqual([
    '1 intake: 1.757 ± .009 on the running spring, not yet set against the 1.75 stamped on it.',
    'First: a reading on a light spring with a solid lifter, at zero lash.',
  ]);
});

it('a question is answered where it is asked, and stays answered', async () => {
  const card = desk.locator('.call-pair').filter({ hasText: 'Where does .842 in come from?' });
  await card.getByLabel('Read on the dial here').check();
  await card.locator('summary', { hasText: 'Add what was said' }).click();
  await card.getByLabel('In plain words').fill('Read off an older sheet.');
  await card.getByRole('button', { name: 'Save the answer' }).click();
  await expect
    .poll(() => desk.locator('.question-answered').textContent())
    .toContain('Read on the dial here, “Read off an older sheet.”');
});

it('a light spring is a new set-up; the older one keeps its method', async () => {
  await desk.keyboard.press('Escape');
  await desk.keyboard.press('u');
  await desk.waitForURL(/new=yes/);
  await desk.getByLabel('Light checking spring').check();
  await desk.getByRole('button', { name: 'Start this set-up' }).click();
  await desk.waitForURL(/set-up=/);
  // The lobe was read in the older set-up and serves this one too, until it is read again.
  expect(await result(desk).textContent()).toContain('Not yet: a pass of the valve lift.');
});

it('the builder reads the lobe; the desk sees each pass as it is kept, and by whom', async () => {
  await bench.goto(`${demo.base}/bench`);
  await bench.waitForURL(/\/bench\/steps\/ratio/);
  for (const reading of ['4 turns 82', '4 turns 82.5', '4 turns 81.5']) {
    await bench.locator('#reading summary').click();
    await bench.getByRole('radio', { name: /^Lobe lift 1 intake, pass/ }).check();
    await keep(bench, reading);
  }
  await expect.poll(() => desk.locator('.tape').textContent()).toContain('4 turns 81.5 = .4815 in');
  expect(await desk.locator('.tape-line').last().textContent()).toContain('Builder (demo)');
});

it('says how an entry is read while it is typed, by the dial of the set-up', async () => {
  await bench.getByLabel('Reading at full lift').fill('8 turns 55');
  expect(await bench.locator('#reading-f-peak-echo').textContent()).toBe('read as 8 turns 55 = .855 in');
  await bench.getByLabel('Reading at full lift').fill('55.5.5');
  expect(await bench.locator('#reading-f-peak-echo').textContent()).toBe('');
  expect(await bench.locator('[aria-invalid]').count(), 'no fault before it is sent').toBe(0);
});

it('a reading that cannot be read comes back with what was typed, its summary first', async () => {
  await keep(bench, 'about nine');
  expect(await bench.title()).toMatch(/^Error: /);
  expect(await bench.getByLabel('Reading at full lift').inputValue()).toBe('about nine');
  await expect.poll(() => bench.evaluate(() => document.activeElement?.id)).toBe('error-summary');
  await bench.locator('.error-summary a').first().press('Enter');
  expect(await bench.evaluate(() => document.activeElement?.id)).toBe('reading-f-peak');
});

it('a turn missed is asked about, put right with a reason, and stays on the record', async () => {
  for (const reading of ['8 turns 55', '8 turns 55.5', '7 turns 54.5']) await keep(bench, reading);
  const asked = bench.locator('.question', { hasText: 'one turn of the dial be missing' });
  expect(await asked.count()).toBe(1);
  await bench.locator('#behind > summary').click();
  await bench.getByText(/^Every pass/).click();
  await bench.getByRole('link', { name: 'Correct it' }).last().click();
  await bench.getByLabel('Reading as it should be').fill('8 turns 54.5');
  await bench.getByLabel('Why', { exact: true }).fill('one turn missed, small hand read again');
  await bench.getByRole('button', { name: 'Correct it' }).click();
  await bench.waitForURL(/\/bench\/steps\/ratio/);
  expect(await asked.count()).toBe(0);
  // .855 / .482 = 1.77386
  expect(await result(bench).locator('.result-value').textContent()).toBe('1.774');
  expect(await result(bench).textContent()).toContain('Light-spring ratio, 1 intake');
  // The demo's arm A is stamped 1.75; 1.774 is 1.4 % over it, within the 2 % of common practice.
  expect(await bench.locator('.bar-answer .headline-sentence').textContent()).toMatch(
    /^1 intake: 1\.77.*: agrees with the 1\.75 stamped on it\.$/,
  );
});

it('stop said at the bench closes the step on both sides until the desk lifts it with a reason', async () => {
  await bench.locator('#stop-here > summary').click();
  await bench.locator('#stop').getByLabel('What was felt or seen').fill('tight at 30 after top');
  await bench.getByRole('button', { name: 'Stop: nobody turns it' }).click();
  await bench.waitForURL(/steps\/triage/);
  await expect.poll(() => desk.locator('.hold').textContent()).toContain('tight at 30 after top');
  await bench.goto(`${demo.base}/bench/steps/ratio`);
  expect(await bench.getByRole('button', { name: 'Save reading' }).count()).toBe(0);
  expect(await bench.getByRole('link', { name: 'Lift the stop' }).count()).toBe(0);
  await desk.getByRole('link', { name: 'Lift the stop' }).click();
  await desk.getByRole('button', { name: 'Lift the stop' }).click();
  expect(await desk.locator('.error-summary').textContent()).toContain(
    'Why it may be turned again must not be empty',
  );
  await desk.getByLabel('Why it may be turned again').fill('Plug wrench taken off the pulley, turns freely');
  await desk.getByRole('button', { name: 'Lift the stop' }).click();
  await expect.poll(() => bench.locator('.hold:not(.own-stop)').count()).toBe(0);
});

it('the report has both ratios by name and the struck reading; the export has every line', async () => {
  await desk.goto(`${demo.base}/calls/${demo.callId}/report`);
  const sheet = await desk.locator('.report').textContent();
  expect(sheet).toContain('Running-spring ratio, 1 intake');
  expect(sheet).toContain('Light-spring ratio, 1 intake');
  expect(sheet).toContain('(7 turns 54.5 = .7545 in)');
  expect(sheet).toContain('one turn missed, small hand read again');
  expect(sheet).toContain('Plug wrench taken off the pulley, turns freely');
  await desk.goto(`${demo.base}/calls/${demo.callId}/steps/ratio`);
  const [download] = await Promise.all([
    desk.waitForEvent('download'),
    desk
      .locator('#more > summary')
      .click()
      .then(() => desk.getByRole('link', { name: 'Export as JSON' }).click()),
  ]);
  const document: unknown = JSON.parse(await readFile(await download.path(), 'utf8'));
  expect(document).toMatchObject({ format: 'benchcall-build-1' });
  expect(JSON.stringify(document)).toContain('7 turns 54.5');
});
