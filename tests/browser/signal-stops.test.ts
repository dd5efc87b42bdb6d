import { beforeEach, expect, it } from 'vitest';
import { tellsToTurn } from '../tools/tells-to-turn.ts';
import { entriesOf, shownLines, soon, titleOf, weakPhone } from '../tools/weak-phone.ts';

/** What a phone without a signal knows of a stop. What must come of it is said by no standard: a stop that was seen stands. */
const at = weakPhone();
const box = () => at.bench.locator('.own-stop:visible');

/** Nothing on the page sends anybody to turn it, and no reading can be entered. */
async function isShut(step: string): Promise<void> {
  await at.step(step);
  await box().first().waitFor();
  expect((await shownLines(at.bench)).flatMap(tellsToTurn)).toEqual([]);
  expect(await at.bench.locator('.bar-next:visible, .bar-answer:visible').count()).toBe(0);
  expect(await at.bench.locator('form#reading:visible').count()).toBe(0);
  expect(await at.bench.locator('main .hold:visible, .own-stop:visible').count()).toBe(1);
}

beforeEach(async () => {
  const steps = ['scan', 'adjuster', 'sheet'];
  for (const step of steps) await at.step(step);
  await at.step('ratio');
});

it('a stop of the desk stands over every page that was kept before it, until it is seen lifted', async () => {
  const { desk, call, bench, line } = at;
  await desk('POST', `/api/v1/calls/${call.callId}/hold`, { reason: 'It binds near the top' });
  await soon(() => bench.locator('main .hold').isVisible()).toBe(true);
  await at.noSignal();
  for (const step of ['scan', 'adjuster', 'ratio', 'sheet']) {
    await isShut(step);
    expect(await box().textContent()).toContain('It binds near the top');
    expect(await box().textContent()).not.toContain('phone them');
  }
  line.set('up');
  await at.step('scan');
  await bench.locator('main .hold').waitFor();
  await soon(() => titleOf(bench).textContent()).toBe('');
  await desk('POST', `/api/v1/calls/${call.callId}/hold/lift`, { reason: 'The spring was looked at' });
  await soon(() => bench.locator('main .hold').count()).toBe(0);
  await at.noSignal();
  for (const step of ['scan', 'ratio']) {
    await at.step(step);
    await soon(() => titleOf(bench).textContent()).toContain('No signal.');
    expect(await bench.locator('main .hold:visible, .own-stop:visible').count()).toBe(0);
  }
  await bench.locator('form#reading').waitFor();
});

it('a stop that was heard of alone stands, though its page never came', async () => {
  const { desk, call, bench, line } = at;
  // The page is asked for after its event: what is in the way of it is all but the stream.
  await at.phone.route(/\/bench\/steps\//, (route) => route.abort());
  await desk('POST', `/api/v1/calls/${call.callId}/hold`, { reason: 'It binds near the top' });
  await box().waitFor();
  expect(await box().textContent()).toContain('said stop: “It binds near the top”');
  expect(await bench.locator('form#reading:visible').count()).toBe(0);
  line.set('up');
});

it('one’s own stop stands on after it was answered, though no page of it came', async () => {
  const { bench, line } = at;
  await at.noSignal();
  await bench.getByText('Say stop').click();
  await bench.fill('input[name=reason]', 'It binds at the top');
  await bench.getByRole('button', { name: 'Stop: nobody turns it' }).click();
  await box().waitFor();
  line.set('posts alone');
  await at.step('notes');
  await soon(() => entriesOf(bench).count()).toBe(0);
  for (const step of ['ratio', 'scan']) {
    await isShut(step);
    expect(await box().textContent()).toContain('It binds at the top');
  }
});
