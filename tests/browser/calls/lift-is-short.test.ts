import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Hand, pointer } from './hand.ts';
import { read, readCard, recordArm, setUpAtDesk } from './measuring.ts';
import { MODES } from './modes.ts';
import { makeLink, openTheCall } from './opening.ts';
import { type TwoSides, twoSides } from './two-sides.ts';

/**
 * “Card says five sixty, I get five thirty-eight.”
 *
 * By hand: a lobe of .350 in with 1.6 gives .560 in, as the card says. Twelve thousandths of lash left in and ten of
 * flex on the running spring leave .538 in, 1.537 times the lobe. On a light spring at zero lash the valve moves
 * .560 in: 1.600. So the part is what it is stamped, and the set-up was short. How few keys this takes at the desk is
 * counted in keystrokes.test.ts.
 */
describe.each(MODES)('the lift is short, $name', (mode) => {
  let call: TwoSides;
  let desk: Hand;
  let bench: Hand;
  beforeAll(async () => {
    call = await twoSides(mode.desk);
    desk = mode.deskHand(call.desk);
  });
  afterAll(() => call?.close());
  const result = (hand: Hand) => hand.page.locator('.result').first();

  it('the desk opens the call: the arm, the card and its ratio, the method', async () => {
    await openTheCall(desk, {
      principal: 'Wren',
      build: 'Wren red',
      goal: 'Verify a ratio',
      engine: 'It is apart',
    });
    await recordArm(desk, { name: 'A', stamp: '1.6', sold: '1.6' });
    await readCard(desk, { ratio: '1.6', intake: '.350', exhaust: '.345', lash: '.012' });
    await desk.press(/^Ratio on the engine/);
    await setUpAtDesk(desk, {
      spring: 'Running spring',
      lifter: 'Solid lifter',
      lash: 'Set to its running lash',
    });
  });

  it('lobe before blame: three passes each, and the running spring is not set against the stamp', async () => {
    bench = pointer(await call.builderOpens(await makeLink(desk), mode.bench));
    await bench.page.goto(`${call.demo.base}/bench/steps/ratio`);
    await read(bench, '3 turns 50', '3 turns 50.5', '3 turns 49.5');
    await read(bench, '5 turns 38', '5 turns 38', '5 turns 38');
    expect(await result(bench).textContent()).toContain('Running-spring ratio, 1 intake');
    // Lash left in: no figure stands large, and no word.
    expect(await result(bench).locator('.result-none').textContent()).toContain('lash was left in');
    expect(await result(bench).locator('.result-value').count()).toBe(0);
    expect(await bench.page.locator('.bar-answer .headline-sentence').textContent()).toContain(
      'not yet set against the 1.6',
    );
  });

  it('the page asks for the lash; the builder answers on the phone, and the desk sees it', async () => {
    const asked = bench.page.locator('.call-pair', {
      hasText: 'How much lash was left in?',
    });
    await asked.getByLabel('Yes, the card’s .012 in').check();
    await asked.locator('summary', { hasText: 'Add what was said' }).click();
    await asked.getByLabel('In plain words').fill('the feeler was never taken out');
    await bench.at('.call-pair').press('Save the answer');
    await desk.press(/^Ratio on the engine/);
    expect(await desk.page.locator('.tape').textContent()).toContain(
      'Yes, as on the card, “the feeler was never taken out”, .012 in, to: How much lash was left in?',
    );
    await call.picture(desk.page, `lift-is-short ${mode.name} desk running`);
  });

  it('with the lash at zero the running spring leaves 1.571', async () => {
    await desk.press(/^Start another set-up/);
    await desk.choose('Lash', 'Taken up to zero');
    await desk.fill('Lash left in, if it is set', '');
    await desk.press(/^Start this set-up/);
    await bench.page.goto(`${call.demo.base}/bench/steps/ratio`);
    await read(bench, '5 turns 50', '5 turns 50', '5 turns 50');
    expect(await result(bench).locator('.result-value').textContent()).toBe('1.571');
  });

  it('the reading worth taking next is one press away: on a light spring the valve moves the whole .560: the part is what it is stamped', async () => {
    await desk.press(/^Ratio on the engine/);
    await desk.press(/^Ask for a light spring/);
    await desk.press(/^Start this set-up/);
    await bench.page.goto(`${call.demo.base}/bench/steps/ratio`);
    await read(bench, '5 turns 60', '5 turns 60.5', '5 turns 59.5');
    expect(await result(bench).textContent()).toContain('Light-spring ratio, 1 intake');
    expect(await result(bench).locator('.result-value').textContent()).toBe('1.600');
    expect(await bench.page.locator('.bar-answer .headline-sentence').textContent()).toContain(
      'agrees with the 1.6',
    );
    await call.picture(bench.page, `lift-is-short ${mode.name} phone`);
  });

  it('the report has both ratios by their names', async () => {
    await desk.press(/^Report/);
    const report = await desk.page.locator('.report').textContent();
    for (const text of ['Running-spring ratio, 1 intake', 'Light-spring ratio, 1 intake', 'never taken out'])
      expect(report).toContain(text);
    await call.picture(desk.page, `lift-is-short ${mode.name} report`);
  });
});
