import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { type Hand, pointer } from './hand.ts';
import { MODES } from './modes.ts';
import { makeLink, openTheCall } from './opening.ts';
import { type TwoSides, twoSides } from './two-sides.ts';

/**
 * “Used set, box says one six, arms say nothing I trust.”
 *
 * The arm was made as the invented family Yarrow 160-B: hole .4375, width 1.600, roller .450, body .780, pivot to tip
 * 1.440, pivot to cup .903. A caliper reads the hole and the roller a few thousandths small (common practice, no
 * published source), and that is how they are read here.
 */
const READ: Readonly<Record<string, readonly string[]>> = {
  'hole-across-trunnion': ['.4355', '.435'],
  'width-across-trunnion': ['1.598'],
  'roller-diameter': ['.446'],
  'body-width': ['.781'],
  'pivot-to-tip': ['1.437'],
  'pivot-to-cup': ['.901'],
};
const SEEN: Readonly<Record<string, readonly [string, string]>> = {
  rings: ['Retaining rings', 'Rings visible'],
  tip: ['Tip', 'Roller'],
  mount: ['Mount', 'Stud'],
};

describe.each(MODES)('an unmarked rocker, $name', (mode) => {
  let call: TwoSides;
  let desk: Hand;
  let bench: Hand;
  let identify: string;
  beforeAll(async () => {
    call = await twoSides(mode.desk);
    desk = mode.deskHand(call.desk);
  });
  afterAll(() => call?.close());

  it('the desk opens the call; what the part is comes first', async () => {
    await openTheCall(desk, {
      principal: 'Heron',
      build: 'Grey set',
      goal: 'Find out what a part is',
      engine: 'It has run, it stands',
    });
    identify = desk.page.url();
    expect(new URL(identify).pathname).toMatch(/steps\/identify(\?|$)/);
  });

  it('the marks first, each asked apart: the box is not the part', async () => {
    const marks = desk.page.locator('form#marks');
    await marks.getByLabel('Word for word').nth(1).fill('K7');
    await marks.getByLabel('Word for word').nth(2).fill('one six');
    await desk.press(/^Save these marks/);
    const tape = await desk.page.locator('.tape').textContent();
    expect(tape).toContain('K7');
    expect(tape).toContain('one six');
  });

  it('the builder opens the link and measures what the page asks for, one thing at a time', async () => {
    bench = pointer(await call.builderOpens(await makeLink(desk), mode.bench));
    const { page } = bench;
    await page.goto(`${call.demo.base}/bench/steps/identify`);
    const left = new Map(Object.entries(READ).map(([kind, sizes]) => [kind, [...sizes]]));
    const asked: string[] = [];
    for (let most = 12; most > 0; most -= 1) {
      const kind = await page.locator('form#part input[name=kind]').inputValue();
      asked.push(kind);
      const seen = SEEN[kind];
      const size = left.get(kind)?.shift();
      if (seen !== undefined) await bench.choose(...seen);
      else if (size !== undefined) await page.locator('form#part').getByRole('textbox').first().fill(size);
      else break;
      await bench.press('Save reading');
    }
    expect(asked.slice(0, 2), 'the hole both ways').toEqual(['hole-across-trunnion', 'hole-across-trunnion']);
    expect(new Set(asked).size).toBe(9);
    await call.picture(page, `unmarked-rocker ${mode.name} phone`);
  });

  it('the family it was made as stands first, none of these among them, and the fastener it takes', async () => {
    for (const page of [bench.page, desk.page]) {
      await page.goto(page === bench.page ? `${call.demo.base}/bench/steps/identify` : identify);
      const candidates = page.locator('.candidate');
      expect(await candidates.first().textContent()).toContain('Yarrow 160-B');
      expect(await page.locator('.candidates').textContent()).toContain('None of these');
      const step = await page.locator('main').textContent();
      expect(step).toContain('7/16-20 UNF');
      expect(step).toContain('ratio is still unknown until a valve moves');
    }
    await call.picture(desk.page, `unmarked-rocker ${mode.name} desk`);
  });

  it('the last minute: what is promised, by whom, by when; the report says it all', async () => {
    await desk.press(/^Notes and promises/);
    await desk.choose('What it is', 'A promise');
    await desk.fill(
      'What was said',
      'Takes a 7/16 stud. Ratio on the engine, light spring, before parts are sold',
    );
    await desk.fill('Who does it', 'Heron');
    // A day of another year than that of the call is told with its year.
    const nextYear = new Date().getUTCFullYear() + 1;
    await desk.fill('By when', `${nextYear}-01-08`);
    await desk.press(/^Save it/);
    await desk.press(/^Report/);
    const report = await desk.page.locator('.report').textContent();
    for (const text of ['“one six”', '“K7”', '.4355 in', `Heron, by 8 Jan ${nextYear}`])
      expect(report).toContain(text);
    await call.picture(desk.page, `unmarked-rocker ${mode.name} report`);
  });
});
