import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { entriesOf, READING, soon, titleOf, weakPhone } from '../tools/weak-phone.ts';

/** Forms of a phone whose signal comes and goes. What must come of it is said by no standard: they say what they keep. */
const at = weakPhone(true);
const keeps = (page: Page) => page.locator('form#reading [data-keeps]');
const summary = (page: Page) => page.locator('form#reading summary');

async function noSignal(): Promise<void> {
  at.line.set('down');
  await soon(() => titleOf(at.bench).textContent()).toContain('No signal.');
}

/** Enters a reading that stays on the phone. */
async function enterInVain(page: Page, peak: string, all: number): Promise<void> {
  await page.fill(READING, peak);
  await page.getByRole('button', { name: 'Keep reading' }).click();
  await soon(() => entriesOf(page).count()).toBe(all);
  await soon(() => page.inputValue(READING)).toBe('');
}

it('what is picked to be kept is said beside the button, stays, and is what is kept', async () => {
  const { bench } = at;
  expect(await keeps(bench).textContent()).toBe('Keeps: Lobe lift 1 intake, pass 1');
  await noSignal();
  await enterInVain(bench, '.330', 1);
  await soon(() => keeps(bench).textContent()).toBe('Keeps: Lobe lift 1 intake, pass 2');
  await summary(bench).click();
  await bench.getByLabel('Valve lift 1 intake, pass 1').check();
  expect(await keeps(bench).textContent()).toBe('Keeps: Valve lift 1 intake, pass 1');
  expect(await summary(bench).textContent()).toBe('Valve lift 1 intake, pass 1; change');
  await enterInVain(bench, '.561', 2);
  await soon(() => keeps(bench).textContent()).toBe('Keeps: Valve lift 1 intake, pass 2');
  await bench.reload();
  await soon(() => keeps(bench).textContent()).toBe('Keeps: Valve lift 1 intake, pass 2');
  await enterInVain(bench, '.562', 3);
  // What is changed says what it is itself.
  await entriesOf(bench).first().getByRole('button', { name: 'Change' }).click();
  await soon(() => keeps(bench).textContent()).toBe('Keeps: Lobe lift 1 intake, pass 1');
  await enterInVain(bench, '.331', 3);
  at.line.set('up');
  await bench.reload();
  const kept = async () => {
    const { rows } = await at.service.database.asOwner(
      'select kind, pass, typed from reading where build_id = $1 order by seq',
      [at.call.buildId],
    );
    return rows.map((row) => `${row.kind} ${row.pass} ${row.typed}`);
  };
  await soon(kept).toEqual(['lobe-lift 1 .331', 'valve-lift 1 .561', 'valve-lift 2 .562']);
});

it('a set-up in parts keeps what the service filled, whatever was typed on the part before', async () => {
  const { bench, line } = at;
  await bench.goto(`${line.base}/bench/steps/ratio?new=1`);
  await bench.locator('select[name=valve]').selectOption('exhaust');
  const on = () => bench.getByRole('button', { name: 'Go on' }).click();
  await on();
  await bench.locator('input[name="method.lashSetting"]').fill('.010 in');
  await bench.locator('input[name="method.spring"]').first().check();
  await on();
  const tool = bench.locator('input[name="method.tool"]:checked');
  await tool.waitFor();
  expect(await bench.locator('.form-draft').count()).toBe(0);
  expect(await tool.getAttribute('value')).toBe('indicator');
  await on();
  const dial = bench.locator('input[name="method.perTurn"]');
  await dial.waitFor();
  expect(await dial.inputValue()).toBe('0.1 in');
  expect(await bench.locator('input[name="method.graduation"]').inputValue()).toBe('0.001 in');
  // Gone back, the part has what was typed there.
  await bench.goto(`${line.base}/bench/steps/ratio?new=2`);
  expect(await bench.locator('input[name="method.lashSetting"]').inputValue()).toBe('.010 in');
});

it('the keypad opens again in a field that kept its focus, and sending is said at once', async () => {
  const { bench, line } = at;
  const field = bench.locator(READING);
  const pad = bench.getByRole('group', { name: 'Number pad' });
  await field.tap();
  await pad.getByRole('button', { name: '5', exact: true }).tap();
  line.set('hangs');
  await pad.getByRole('button', { name: 'Keep' }).tap();
  await bench.getByText('Sending. No need to press again.').waitFor();
  await soon(() => entriesOf(bench).count()).toBe(1);
  await soon(() => bench.inputValue(READING)).toBe('');
  await bench.getByText('Sending. No need to press again.').waitFor({ state: 'detached' });
  await field.tap();
  await pad.waitFor();
});
