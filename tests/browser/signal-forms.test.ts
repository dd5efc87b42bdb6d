import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { enterInVain, entriesOf, READING, soon, titleOf, weakPhone } from '../tools/weak-phone.ts';

/** Forms of a phone whose signal comes and goes. What must come of it is said by no standard: they say what they keep. */
const at = weakPhone(true);
const keeps = (page: Page) => page.locator('form#reading [data-keeps]');
const summary = (page: Page) => page.locator('form#reading summary');

it('what is picked to be kept is said beside the button, stays, and is what is kept', async () => {
  const { bench } = at;
  expect(await keeps(bench).textContent()).toBe('Saves: Lobe lift 1 intake, pass 1');
  await at.noSignal();
  await enterInVain(bench, '.330', 1);
  await soon(() => keeps(bench).textContent()).toBe('Saves: Lobe lift 1 intake, pass 2');
  await summary(bench).click();
  await bench.getByLabel('Valve lift 1 intake, pass 1').check();
  expect(await keeps(bench).textContent()).toBe('Saves: Valve lift 1 intake, pass 1');
  expect(await summary(bench).textContent()).toBe('Valve lift 1 intake, pass 1; change');
  await enterInVain(bench, '.561', 2);
  await soon(() => keeps(bench).textContent()).toBe('Saves: Valve lift 1 intake, pass 2');
  await bench.reload();
  await soon(() => keeps(bench).textContent()).toBe('Saves: Valve lift 1 intake, pass 2');
  await enterInVain(bench, '.562', 3);
  // What is changed says what it is itself.
  await entriesOf(bench).first().getByRole('button', { name: 'Change' }).click();
  await soon(() => keeps(bench).textContent()).toBe('Saves: Lobe lift 1 intake, pass 1');
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
  // The key of the last field saves: that is the one that keeps its focus.
  const last = bench.locator('#reading-f-zeroReturn');
  await field.tap();
  await pad.getByRole('button', { name: '5', exact: true }).tap();
  await pad.getByRole('button', { name: 'Go to the next field' }).tap();
  line.set('hangs');
  await pad.getByRole('button', { name: 'Save' }).tap();
  await bench.getByText('Sending. No need to press again.').waitFor();
  await soon(() => entriesOf(bench).count()).toBe(1);
  await soon(() => bench.inputValue(READING)).toBe('');
  await bench.getByText('Sending. No need to press again.').waitFor({ state: 'detached' });
  expect(await pad.count()).toBe(0);
  expect(await last.evaluate((each) => document.activeElement === each)).toBe(true);
  await last.tap();
  await pad.waitFor();
});

it('what waited under a link that has ended is sent under another of its build when somebody says so', async () => {
  const { bench, line, call, phone } = at;
  await at.noSignal();
  await phone.setOffline(true);
  await enterInVain(bench, '.330', 1);
  await phone.setOffline(false);
  await at.desk('DELETE', `/api/v1/calls/${call.callId}/share-links/${call.linkId}`);
  const links = `/api/v1/calls/${call.callId}/share-links`;
  const { secret } = await at.desk('POST', links, { holder: 'Pat at the engine', days: 1 });
  line.set('up');
  await bench.goto(`${line.base}/b/${String(secret)}`);
  await bench.getByRole('button', { name: 'Open my build' }).click();
  await soon(() => titleOf(bench).textContent()).toBe('1 of another link not sent.');
  const entry = entriesOf(bench).first();
  expect(await entry.locator('.unsent-pressed').textContent()).toBe('Lobe lift 1 intake, pass 1');
  const arrived = line.arrived.length;
  const send = entry.getByRole('button', { name: 'Send under this link' });
  await send.click();
  // It was sent before the desk ended the link, or never: where nobody knows it takes a second press.
  if (await send.isVisible()) await send.click();
  await soon(() => entriesOf(bench).count()).toBe(0);
  expect(line.arrived.length).toBe(arrived + 1);
});

it('the list stands below a stop, begins with what goes out first, and its words can be taken along', async () => {
  const { bench, line, call } = at;
  await at.noSignal();
  for (const [index, peak] of ['.330', '.331', '.332', '.333'].entries())
    await enterInVain(bench, peak, index + 1);
  expect(await bench.locator('.unsent-list').evaluate((list) => list.scrollTop)).toBe(0);
  expect(await bench.locator('.presence-person').count()).toBe(0);
  await at.desk('POST', `/api/v1/calls/${call.callId}/hold`, { reason: 'It binds near the top' });
  line.set('up');
  await bench.reload();
  await soon(() => titleOf(bench).textContent()).toBe('4 were not taken.');
  const [hold, list] = await Promise.all([
    bench.locator('main .hold').boundingBox(),
    bench.locator('.unsent').boundingBox(),
  ]);
  expect(hold?.y ?? 0).toBeLessThan(list?.y ?? 0);
  expect(await bench.getByRole('button', { name: 'Copy the words' }).isVisible()).toBe(true);
  await at.desk('POST', `/api/v1/calls/${call.callId}/hold/lift`, { reason: 'The spring was looked at' });
  await soon(() => bench.locator('main .hold').count()).toBe(0);
  expect(await titleOf(bench).textContent()).toBe('4 were not taken.');
  await entriesOf(bench).first().getByRole('button', { name: 'Send again' }).click();
  await soon(() => titleOf(bench).textContent()).toBe('3 were not taken.');
});
