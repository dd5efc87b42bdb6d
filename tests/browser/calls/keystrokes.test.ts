import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { type Keyboard, keyboardOf } from './keyboard.ts';
import { type TwoSides, twoSides } from './two-sides.ts';

/**
 * “Card says five sixty, I get five thirty-eight.” The desk has no mouse, and every key is counted.
 *
 * The numbers of the call, worked by hand: a lobe of .350 in with 1.6 gives .560 in, as the card says. Twelve
 * thousandths of lash left in and ten of flex on the running spring leave .538 in, 1.537 times the lobe. On a light
 * spring at zero lash the valve moves .560 in: 1.600. So the part is what it is stamped, and the set-up was short.
 */
let call: TwoSides;
let desk: Page;
let bench: Page;
let keys: Keyboard;

/** Two minutes at forty words of five letters a minute, an ordinary pace: common practice, no source. */
const TWO_MINUTES = 2 * 40 * 5;

beforeAll(async () => {
  call = await twoSides();
  desk = call.desk;
  keys = keyboardOf(desk);
});
afterAll(() => call?.close());

const result = (page: Page) => page.locator('.result').first();

it('the first minute: who, whether anything hit, one goal', async () => {
  await keys.key('n', /calls\/new$/);
  await keys.type('Wren');
  await keys.press('Tab', 'Tab');
  await keys.type('ext 4');
  await keys.press('Tab', 'Tab');
  await keys.type('Wren red');
  await keys.send(/steps\/triage(\?|$)/);
  // It is apart; nothing hit.
  await keys.press('ArrowDown', 'ArrowDown', 'Tab', 'Space');
  await keys.key('k', /steps\/parts(\?|$)/);
  expect(await desk.locator('.tape').textContent()).toContain('It is apart. Nothing hit');
});

it('the arm and its stamp, the card and the ratio it assumes', async () => {
  await keys.type('A');
  await keys.press('Tab');
  await keys.type('1.6');
  await keys.send(/steps\/parts(\?|$)/);
  await keys.type('1');
  await keys.send(/steps\/parts(\?|$)/);
  await keys.tabTo('Ratio the rockers are sold as');
  await keys.type('1.6');
  await keys.send(/steps\/parts(\?|$)/);
  await keys.key('n', /steps\/cam(\?|$)/);
  // The cursor stands in the field that is next, with the ratio that the card assumes before it.
  expect(
    await desk
      .locator('input[name="cam.intake.lobeLift"]')
      .evaluate((each) => document.activeElement === each),
  ).toBe(true);
  await keys.press('Shift+Tab');
  await keys.type('1.6');
  await keys.tabTo('Lobe lift, intake');
  await keys.type('.35');
  await keys.tabTo('Lash on the card, intake');
  await keys.type('.012');
  await keys.tabTo('Lobe lift, exhaust');
  await keys.type('.345');
  await keys.send(/steps\/cam(\?|$)/);
  expect(await desk.locator('.bar-next').textContent()).toContain('how it is measured');
});

it('the desk makes a link with one key, and the builder opens it on the phone', async () => {
  await keys.key('b', /share$/);
  await keys.send(/share$/);
  bench = await call.builderOpens((await desk.locator('.call-link code').textContent()) ?? '');
  await bench.goto(`${call.demo.base}/bench/steps/ratio`);
  await keys.key('6', /steps\/ratio(\?|$)/);
});

it('method first: running spring, solid lifter, the running lash left in, how much not said', async () => {
  await keys.tabTo('Spring on the valve');
  await keys.press('ArrowDown', 'ArrowDown', 'Tab', 'ArrowDown', 'Tab', 'ArrowDown', 'ArrowDown', 'Tab');
  // Past the amount of lash and the tool, which is a dial indicator.
  await keys.press('Tab', 'Tab', 'ArrowDown', 'Tab', 'ArrowDown');
  await keys.key('k', /set-up=/);
  expect(await desk.locator('#method .facts').textContent()).toContain('Set to its running lash');
});

/** Reads a pass to the desk: turns and needle, and the zero that came back. */
async function pass(reading: string): Promise<void> {
  await keys.type(reading);
  await keys.press('Tab');
  await keys.type('0');
  await keys.send(/set-up=/);
}

it('lobe first, three passes, then the valve: with lash left in no figure stands, and no word', async () => {
  for (const reading of ['3t50', '3t50.5', '3t49.5']) await pass(reading);
  for (const reading of ['.538', '.538', '.538']) await pass(reading);
  await expect.poll(() => result(desk).locator('.result-none').textContent()).toContain('lash was left in');
  expect(await result(desk).textContent()).toContain('Running-spring ratio, 1 intake');
  expect(await result(desk).locator('.verdict').count()).toBe(0);
  await call.picture(desk, 'lift-is-short-1-desk-running');
});

it('the page asks how much lash was left in, and the builder answers on the phone', async () => {
  const asked = bench.locator('.call-pair', { hasText: 'How much lash was left in?' });
  await asked.getByLabel('How much lash was in it').fill('.012');
  await asked.locator('summary', { hasText: 'Add what was said' }).click();
  await asked.getByLabel('In plain words').fill('set with the feeler, never taken out');
  await call.picture(bench, 'lift-is-short-2-phone-question');
  await asked.getByRole('button', { name: 'Save the answer' }).click();
  await expect
    .poll(() => desk.locator('.tape').textContent())
    .toContain('Left in, “set with the feeler, never taken out”, .012 in, to: How much lash was left in?');
});

it('the lash goes to zero; the lobe need not be read again: 1.571', async () => {
  await keys.key('u', /new=yes/);
  await keys.tabTo('Lash');
  await keys.press('ArrowUp');
  expect(await desk.getByLabel('Taken up to zero').isChecked()).toBe(true);
  await keys.key('k', /set-up=/);
  for (const reading of ['.55', '.55', '.55']) await pass(reading);
  // .550 / .350 = 1.571
  await expect.poll(() => result(desk).locator('.result-value').textContent()).toBe('1.571');
  expect(await desk.locator('.desk-step').textContent()).toContain('the lobe was read in set-up 1');
});

it('a light spring is one key away, and there the valve moves the whole .560: 1.600 agrees with the stamp', async () => {
  await keys.key('l', /new=yes/);
  expect(await desk.getByLabel('Light checking spring').isChecked()).toBe(true);
  await keys.key('k', /set-up=/);
  for (const reading of ['.56', '.5605', '.5595']) await pass(reading);
  await expect.poll(() => result(desk).locator('.result-value').textContent()).toBe('1.600');
  expect(await result(desk).textContent()).toContain('Light-spring ratio, 1 intake');
  expect(await desk.locator('.bar-answer .headline-sentence').textContent()).toContain('agrees with the 1.6');
  await call.picture(desk, 'lift-is-short-3-desk-light');
  await bench.goto(`${call.demo.base}/bench/steps/ratio`);
  await call.picture(bench, 'lift-is-short-4-phone-light');
});

it('the last minute: what is found, what was advised on which figures, and who does what by when', async () => {
  await keys.key('0', /steps\/notes(\?|$)/);
  await keys.tabTo('What it is');
  await keys.press('ArrowRight', 'Tab');
  await keys.type('1.6 arm. Set lash last; calculate with 1.60.');
  await keys.key('k', /steps\/notes(\?|$)/);
  expect(await desk.locator('.desk-step').textContent()).toContain('Light-spring ratio 1 intake 1.600 ±');
  await keys.key('r', /report$/);
  const report = await desk.locator('.report').textContent();
  for (const text of [
    'Running-spring ratio, 1 intake',
    'Light-spring ratio, 1 intake',
    'never taken out',
    'Set lash last',
  ])
    expect(report).toContain(text);
  await call.picture(desk, 'lift-is-short-5-report');
});

it('the whole of it took less than two minutes of typing at the desk', () => {
  expect(keys.count()).toBeLessThan(TWO_MINUTES);
  process.stdout.write(`a whole ratio call at the desk: ${keys.count()} keystrokes\n`);
});
