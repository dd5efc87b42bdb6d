import { beforeEach, describe, expect, it } from 'vitest';
import { axeFaults } from '../tools/axe.ts';
import { inTheDark, lowTargets, spill } from '../tools/looks.ts';
import { tellsToTurn } from '../tools/tells-to-turn.ts';
import {
  enterInVain,
  entriesOf,
  PHONE,
  READING,
  shownLines,
  soon,
  titleOf,
  weakPhone,
} from '../tools/weak-phone.ts';

/**
 * The builder's phone where the signal comes and goes, with a real line that breaks. What must come of it is said by
 * no standard: an entry is kept once, in the order it was made in, or is still in front of whoever made it.
 */

const at = weakPhone();
const readings = () => at.readings();

describe('without a signal', () => {
  beforeEach(async () => {
    at.line.set('down');
    await soon(() => titleOf(at.bench).textContent()).toBe('No signal.');
  });

  it('a step that was never opened opens, says from when it is, and can be entered into', async () => {
    await at.bench.goto(`${at.line.base}/bench/steps/notes`);
    await soon(() => titleOf(at.bench).textContent()).toBe('No signal.');
    expect(await at.bench.locator('.unsent-hint').textContent()).toMatch(/This page is from \d\d:\d\d\.$/);
    await at.bench.goto(`${at.line.base}/bench`);
    expect(new URL(at.bench.url()).pathname).toBe('/bench/steps/notes');
    await at.bench.goto(`${at.line.base}/bench/report`);
    await at.bench.getByText('This page is not on the phone yet').waitFor();
  });

  it('the line and the list are in the upper half of the first screen, and meet the access rules', async () => {
    await enterInVain(at.bench, '.561', 1);
    await enterInVain(at.bench, '.562', 2);
    expect(await titleOf(at.bench).textContent()).toBe('No signal. 2 not sent yet.');
    const list = await at.bench.locator('.unsent').boundingBox();
    expect(list?.y).toBeGreaterThan(0);
    expect((list?.y ?? 0) + (list?.height ?? PHONE.height)).toBeLessThan(PHONE.height / 2);
    expect(await axeFaults(at.bench)).toEqual([]);
    expect(await inTheDark(at.bench)).toEqual([]);
    expect(await spill(at.bench)).toEqual([]);
    expect(await lowTargets(at.bench, '.unsent button:visible')).toEqual([]);
  });

  it('a stop that was said stops every page of this phone at once, and goes out before all else', async () => {
    await enterInVain(at.bench, '.561', 1);
    await at.bench.getByText('Say stop').click();
    await at.bench.fill('input[name=reason]', 'It binds at the top');
    await at.bench.getByRole('button', { name: 'Stop: nobody turns it' }).click();
    const box = at.bench.locator('.own-stop:not(.known-stop)');
    await box.waitFor();
    expect(await box.textContent()).toContain('You said stop: “It binds at the top”');
    expect(await box.textContent()).toMatch(/The desk has not heard this yet: phone them/);
    await soon(() => entriesOf(at.bench).count()).toBe(2);
    for (const step of ['ratio', 'notes']) {
      await at.bench.goto(`${at.line.base}/bench/steps/${step}`);
      await box.waitFor();
      expect((await shownLines(at.bench)).flatMap(tellsToTurn)).toEqual([]);
      expect(await at.bench.locator('.bar-next:visible, .bar-answer:visible').count()).toBe(0);
    }
    expect(await at.bench.locator('form#note').isVisible()).toBe(true);
    expect(await axeFaults(at.bench)).toEqual([]);
    expect(await spill(at.bench)).toEqual([]);
    at.line.set('up');
    await at.bench.reload();
    await soon(() => box.isVisible()).toBe(false);
    await soon(() => at.bench.locator('main .hold').isVisible()).toBe(true);
    // Read before the stop or after it: nobody can see that from here, so whoever read it says so.
    await soon(() => titleOf(at.bench).textContent()).toBe('1 was not taken.');
    expect(await readings()).toEqual([]);
    await entriesOf(at.bench)
      .first()
      .getByRole('button', { name: 'It was read before the stop: send it' })
      .click();
    await soon(() => readings().then((all) => all.length)).toBe(1);
  });

  it('what waits can be changed and deleted, and goes out as it then is', async () => {
    await enterInVain(at.bench, '.561', 1);
    await enterInVain(at.bench, '.562', 2);
    await enterInVain(at.bench, '.563', 3);
    await at.bench.goto(`${at.line.base}/bench/steps/cam`);
    await entriesOf(at.bench).first().getByRole('button', { name: 'Change' }).click();
    await soon(() => at.bench.locator(READING).inputValue()).toBe('.561');
    await soon(() => entriesOf(at.bench).first().textContent()).toContain('held back while you change it');
    // Left and opened again it waits as it was, in its place; so it does where the change is called off.
    await at.bench.reload();
    const first = entriesOf(at.bench).first();
    await soon(() => first.textContent()).toMatch(/not sent yet|may have arrived/);
    await first.getByRole('button', { name: 'Change' }).click();
    await soon(() => at.bench.inputValue(READING)).toBe('.561');
    await first.getByRole('button', { name: 'Send as it was' }).click();
    await soon(() => at.bench.inputValue(READING)).toBe('');
    await soon(() => first.textContent()).toMatch(/not sent yet|may have arrived/);
    await first.getByRole('button', { name: 'Change' }).click();
    await soon(() => at.bench.inputValue(READING)).toBe('.561');
    await enterInVain(at.bench, '.571', 3);
    const second = entriesOf(at.bench).nth(1);
    await second.getByRole('button', { name: 'Delete' }).click();
    await second.getByRole('button', { name: 'Delete for good' }).click();
    await soon(() => entriesOf(at.bench).count()).toBe(2);
    at.line.set('up');
    await at.bench.reload();
    await soon(readings).toEqual(['.571', '.563']);
    await soon(() => at.bench.locator('.unsent').isVisible()).toBe(false);
  });
});
