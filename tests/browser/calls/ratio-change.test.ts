import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Hand, pointer } from './hand.ts';
import { read, readCard, recordArm, setUpAtDesk } from './measuring.ts';
import { MODES } from './modes.ts';
import { makeLink, openTheCall } from './opening.ts';
import { type TwoSides, twoSides } from './two-sides.ts';

/**
 * “One five to one six, springs are fine, right?” An engine that ran, with one new arm tried on one valve.
 *
 * By hand: a lobe of .350 in with 1.5 and .020 in of lash opens the valve .505 in net; with the measured 1.600 it is
 * .540 in. Springs of 1.850 in installed and 1.269 in solid leave .076 in before and .041 in after, against .060 in
 * (common practice, no published source). Spring load at full lift: 130 + 350 × .505 = 307 lbf before,
 * 130 + 350 × .540 = 319 lbf after.
 */
describe.each(MODES)('a ratio change on an engine that ran, $name', (mode) => {
  let call: TwoSides;
  let desk: Hand;
  let bench: Hand;
  beforeAll(async () => {
    call = await twoSides(mode.desk);
    desk = mode.deskHand(call.desk);
  });
  afterAll(() => call?.close());

  it('the desk opens the call: what it is about, the arm, the card', async () => {
    await openTheCall(desk, {
      principal: 'Avocet',
      build: 'Green V8',
      goal: 'Clearances after a change',
      engine: 'It has run, it stands',
    });
    await recordArm(desk, { name: 'new arm', stamp: '1.6', sold: '1.6' });
    await readCard(desk, { ratio: '1.5', intake: '.350', exhaust: '.350', lash: '.020' });
  });

  it('the springs, as the caller has them on paper', async () => {
    await desk.press(/^Engine and springs/);
    await desk.select('Lifter type', 'Solid, flat');
    await desk.fill('Installed height', '1.850');
    await desk.fill('Seat load', '130');
    await desk.fill('Rate', '350');
    await desk.fill('Coil-bind height', '1.269');
    await desk.press(/^Save as a new revision/);
  });

  it('the builder reads one valve with the new arm on a light spring', async () => {
    await desk.press(/^Ratio on the engine/);
    await setUpAtDesk(desk, {
      spring: 'Light checking spring',
      lifter: 'Solid lifter',
      lash: 'Taken up to zero',
    });
    bench = pointer(await call.builderOpens(await makeLink(desk), mode.bench));
    await bench.page.goto(`${call.demo.base}/bench/steps/ratio`);
    await read(bench, '3 turns 50', '3 turns 50', '3 turns 50');
    await read(bench, '5 turns 60', '5 turns 60', '5 turns 60');
    const result = bench.page.locator('.result').first();
    expect(await result.textContent()).toContain('Light-spring ratio, 1 intake');
    expect(await bench.page.locator('.bar-answer').first().textContent()).toContain('1.6');
  });

  it('before and after side by side on both screens: the exhausts’ bind would be .021 against .060, short', async () => {
    await desk.press(/^What the ratio does/);
    await bench.page.goto(`${call.demo.base}/bench/steps/consequences`);
    for (const { page } of [desk, bench]) {
      const row = page
        .locator('table', { hasText: 'Gaps, before and after' })
        .first()
        .locator('tr', { hasText: 'Room to coil bind' });
      const text = await row.textContent();
      // The worst is open: the exhausts, with no lash on the card. .581 − .350 × 1.5 = .056; .581 − .350 × 1.6 = .021.
      expect(text).toContain('.056');
      expect(text).toContain('.021');
      expect(text).toContain('.060');
      expect(text).toContain('short');
      expect(await page.locator('main').textContent()).toContain('Do not run it: room to coil bind');
    }
    await call.picture(desk.page, `ratio-change ${mode.name} desk`);
    await call.picture(bench.page, `ratio-change ${mode.name} phone`);
  });

  it('what was never measured is said to be lacking, and is never clear', async () => {
    const table = desk.page.locator('table', { hasText: 'Gaps, before and after' }).first();
    const piston = await table.locator('tr', { hasText: 'Piston to valve' }).textContent();
    expect(piston).toContain('lacks');
    expect(await table.textContent()).not.toContain('clear');
  });

  it('the figures go on the tape, with what was advised on them; nothing is fitted', async () => {
    await desk.press(/^Put these figures on the tape/);
    await desk.press(/^Notes and promises/);
    await desk.choose('What it is', 'Advice given');
    await desk.fill('What was said', 'Bind would be .041 against .060. Do not fit them on these springs.');
    await desk.press(/^Save it/);
    await desk.press(/^Report/);
    const report = await desk.page.locator('.report').textContent();
    for (const text of ['short: coil bind', 'Do not fit them', '1.600', '1.5'])
      expect(report).toContain(text);
    await call.picture(desk.page, `ratio-change ${mode.name} report`);
  });
});
