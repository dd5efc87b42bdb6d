import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Hand, pointer } from './hand.ts';
import { read, readCard, recordArm, setUpAtDesk } from './measuring.ts';
import { MODES } from './modes.ts';
import { makeLink, openTheCall } from './opening.ts';
import { type TwoSides, twoSides } from './two-sides.ts';

/**
 * “Four seventy-eight, then seventy-one, then sixty-two.” A hydraulic lifter leaks down under the running spring.
 *
 * By hand: a lobe of .300 in with 1.6 moves the valve .480 in. The passes fall by .007 and .009 in, over the .003 in
 * a pass that says sinking (common practice, no published source), so no mean of them is a ratio. On a light spring
 * with a solid lifter the valve moves .480 in: 1.600.
 */
describe.each(MODES)('hydraulic readings that sink, $name', (mode) => {
  let call: TwoSides;
  let desk: Hand;
  let bench: Hand;
  beforeAll(async () => {
    call = await twoSides(mode.desk);
    desk = mode.deskHand(call.desk);
  });
  afterAll(() => call?.close());
  const step = (hand: Hand) => hand.page.locator('main').textContent();

  it('the desk opens the call, with the arm, the card and the method', async () => {
    await openTheCall(desk, {
      principal: 'Dunlin',
      build: 'White V8',
      goal: 'Verify a ratio',
      engine: 'It is apart',
    });
    await recordArm(desk, { name: 'A', stamp: '1.6', sold: '1.6' });
    await readCard(desk, { ratio: '1.6', intake: '.300', exhaust: '.305' });
    await desk.press(/^Ratio on the engine/);
    await setUpAtDesk(desk, {
      spring: 'Running spring',
      lifter: 'Hydraulic, not locked',
      lash: 'Taken up to zero',
    });
  });

  it('the builder reads lobe and valve on the phone', async () => {
    const ratio = desk.page.url();
    bench = pointer(await call.builderOpens(await makeLink(desk), mode.bench));
    await bench.page.goto(`${call.demo.base}/bench/steps/ratio`);
    await read(bench, '.300', '.300', '.300');
    await read(bench, '4 turns 78', '4 turns 71', '4 turns 62');
    await desk.page.goto(ratio);
    await call.picture(bench.page, `sinking ${mode.name} phone`);
    await call.picture(desk.page, `sinking ${mode.name} desk`);
  });

  it('it is called sinking on both sides, and no mean of it is shown as a ratio', async () => {
    for (const hand of [bench, desk]) {
      expect(await step(hand)).toContain('Could the lifter be sinking? Every pass is under the last.');
      const result = hand.page.locator('.result').first();
      expect(await result.textContent()).toContain('Not yet: passes that don’t sink');
      expect(await result.locator('.result-value').count()).toBe(0);
    }
  });

  it('the desk asks for a light spring and a solid lifter by the button that stands there', async () => {
    await desk.press(/^Ask for a light spring/);
    expect(await desk.page.getByLabel('Light checking spring').isChecked()).toBe(true);
    expect(await desk.page.getByLabel('Solid lifter').isChecked()).toBe(true);
    await desk.press(/^Start this set-up/);
  });

  it('with the lifter solid the passes stand: 1.600, and the lobe need not be read again', async () => {
    await bench.page.goto(`${call.demo.base}/bench/steps/ratio`);
    await read(bench, '4 turns 80', '4 turns 80.5', '4 turns 79.5');
    const result = bench.page.locator('.result').first();
    expect(await result.locator('.result-value').textContent()).toBe('1.600');
    expect(await bench.page.locator('.bar-answer .headline-sentence').textContent()).toContain('agrees with');
    await call.picture(bench.page, `sinking ${mode.name} phone light`);
  });

  it('the last minute: every pass stays on record, and what was taken on the sinking lifter is to be taken again', async () => {
    await desk.press(/^Notes and promises/);
    await desk.choose('What it is', 'Advice given');
    await desk.fill(
      'What was said',
      'Any piston gap taken on the sinking lifter reads too big. Take it again.',
    );
    await desk.press(/^Save it/);
    await desk.press(/^Report/);
    const report = await desk.page.locator('.report').textContent();
    for (const text of [
      '4 turns 78',
      '4 turns 71',
      '4 turns 62',
      'Not yet: passes that don’t sink',
      'reads too big',
    ])
      expect(report).toContain(text);
    await call.picture(desk.page, `sinking ${mode.name} report`);
  });
});
