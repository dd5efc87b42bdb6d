import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Hand, pointer } from './hand.ts';
import { MODES } from './modes.ts';
import { makeLink, openTheCall } from './opening.ts';
import { type TwoSides, twoSides } from './two-sides.ts';

/**
 * “The others read alike, five intake doesn’t.” Eight intakes of .350 lobes read .560 in, within a thousandth; the
 * fifth reads .525 in on a lobe of .350. It is over .008 in from its siblings’ median and its lobe is like theirs
 * (common practice, no published source), so it is the arm or the place, and swapping two arms tells which. After
 * the swap the low lift has gone to valve four with the arm: the part.
 */
const LIFTS = ['.560', '.561', '.560', '.559', '.525', '.560', '.561', '.560'];
const ROWS = [
  'cylinder\tvalve\tlobe lift\tvalve lift',
  ...LIFTS.map((lift, index) => `${index + 1}\tintake\t.350\t${lift}`),
].join('\n');

describe.each(MODES)('one valve differs, $name', (mode) => {
  let call: TwoSides;
  let desk: Hand;
  let bench: Hand;
  beforeAll(async () => {
    call = await twoSides(mode.desk);
    desk = mode.deskHand(call.desk);
  });
  afterAll(() => call?.close());

  async function recordArm(name: string, cylinder: string): Promise<void> {
    await desk.at('form#arm').fill('Name of this arm on the call', name);
    await desk.at('form#arm').press(/^Save this arm/);
    const place = desk.at('form#place');
    await place.select('Which arm', name);
    await place.fill('Cylinder', cylinder);
    await place.press(/^Save this place/);
  }

  it('the desk opens the call and puts the two arms on record, with the valves they sit on', async () => {
    await openTheCall(desk, {
      principal: 'Curlew',
      build: 'Red V8',
      goal: 'Verify a ratio',
      engine: 'It is apart',
    });
    await desk.press(/^Rocker arms/);
    await recordArm('arm E', '5');
    await recordArm('arm D', '4');
  });

  it('the rows of the builder’s spreadsheet are looked at before they are kept', async () => {
    await desk.press(/^Per-valve sheet/);
    await desk.unfold('Paste rows of a spreadsheet');
    const paste = desk.at('form#paste');
    await paste.fill('Rows of the spreadsheet', ROWS);
    await paste.select('Spring on the valve', 'Light checking spring');
    await paste.select('Lifter', 'Solid lifter');
    await paste.press(/^Look at the rows/);
    await desk.press(/^Save all of them/);
    await call.picture(desk.page, `one-valve ${mode.name} desk`);
  });

  it('the odd one is marked, its lobe is like the others, and the swap that settles it is named', async () => {
    expect(await desk.page.locator('.bar-answer').textContent()).toContain('5 intake is the odd one');
    expect(await desk.page.locator('.desk-step').textContent()).toContain(
      'arm E (5 intake) and arm D (4 intake) swapped',
    );
    expect(await desk.page.locator('main').textContent()).not.toContain('the lobe of 5 intake');
  });

  it('the builder swaps the two arms, says so on the phone, and reads both again', async () => {
    bench = pointer(await call.builderOpens(await makeLink(desk), mode.bench));
    await bench.page.goto(`${call.demo.base}/bench/steps/parts`);
    for (const [arm, cylinder] of [
      ['arm E', '4'],
      ['arm D', '5'],
    ] as const) {
      const place = bench.at('form#place');
      await place.select('Which arm', arm);
      await place.fill('Cylinder', cylinder);
      await place.fill('Why it sits there now', 'swap test');
      await place.press(/^Save this place/);
    }
    for (const [cylinder, lift] of [
      ['4', '.525'],
      ['5', '.560'],
    ] as const) {
      await bench.page.goto(`${call.demo.base}/bench/steps/sheet`);
      const valve = bench.at('form#valve');
      await valve.fill('Cylinder', cylinder);
      await valve.select('Valve', 'Intake');
      await valve.fill('Valve lift', lift);
      await valve.press(/^Save this valve/);
    }
    await call.picture(bench.page, `one-valve ${mode.name} phone`);
  });

  it('the low lift has gone with the arm: the part, not the place, and one arm is not sixteen', async () => {
    await desk.press(/^Per-valve sheet/);
    const swaps = desk.page.locator('table', { hasText: 'Swap tests' });
    expect(await swaps.textContent()).toMatch(/part/);
    expect(await desk.page.locator('.headline', { hasText: '4 intake is the odd one' }).count()).toBe(1);
    await call.picture(desk.page, `one-valve ${mode.name} desk swapped`);
  });

  it('the last minute: who sits where now, and what is promised', async () => {
    await desk.press(/^Notes and promises/);
    await desk.choose('What it is', 'A promise');
    await desk.fill('What was said', 'Send arm E in; do not condemn the set on one arm.');
    await desk.fill('Who does it', 'Curlew');
    await desk.press(/^Save it/);
    await desk.press(/^Report/);
    const report = await desk.page.locator('.report').textContent();
    for (const text of ['swap test', 'arm E', 'do not condemn the set']) expect(report).toContain(text);
    await call.picture(desk.page, `one-valve ${mode.name} report`);
  });
});
