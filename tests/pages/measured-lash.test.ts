import { describe, expect, test } from 'vitest';
import { measuredPages, read } from './measured-pages.ts';

const { freshCall, open, page, post, sheet } = measuredPages();

describe('the lash log', () => {
  const lash = { form: 'lash', cylinder: '6', valve: 'exhaust', engine: 'hot' };

  test('a gap that grew names the test, and that the base circle hides a worn nose', async () => {
    await freshCall();
    await post('/lash', {
      ...lash,
      lash: '.018',
      moment: 'set',
      nut: 'held',
      readOn: '2026-03-02',
      doneBy: 'the owner',
    });
    const kept = await post('/lash', {
      ...lash,
      lash: '.025',
      moment: 'found',
      nut: 'held',
      readOn: '2026-03-14',
    });
    expect([kept.statusCode, kept.headers.location]).toEqual([
      303,
      `/calls/${open().callId}/steps/adjuster?of=lash&kept=3`,
    ]);
    const text = read(await page('adjuster?of=lash'));
    expect(text).toContain('Is something wearing on this valve?');
    expect(text).toContain('Lash is read on the base circle, where a worn nose never shows');
    expect(text).toContain('It grew by .007 in, where .004 in is ordinary');
    expect(text).toMatch(
      /Lash 6 exhaust set, hot, on 2 Mar( \d{4})?, by the owner, adjuster’s lock had not moved/,
    );
  });

  test('grown again after it was set again stops it', async () => {
    await freshCall();
    for (const [gap, moment] of [
      ['.018', 'set'],
      ['.025', 'found'],
      ['.018', 'set'],
      ['.024', 'found'],
    ] as const)
      await post('/lash', { ...lash, lash: gap, moment, nut: 'held' });
    expect(read(await page('adjuster?of=lash'))).toContain(
      'Do not turn it: the lash of 6 exhaust grew again after it was set again.',
    );
  });

  test('its question is answered on its own step, and the answer stands there', async () => {
    await freshCall();
    await post('/lash', { ...lash, lash: '.018', moment: 'set', nut: 'held' });
    await post('/lash', { ...lash, lash: '.025', moment: 'found', nut: 'held' });
    const html = await page('adjuster?of=lash');
    const hidden = (name: string) =>
      new RegExp(`name="${name}" value="(question[^"]*)"`).exec(html)?.[1] ?? '';
    const form = /name="form" value="(answer-[^"]*)"/.exec(html)?.[1] ?? '';
    const answered = await post('/answers', {
      form,
      questionId: hidden('questionId'),
      question: 'Is something wearing on this valve?',
      code: 'lash-grew',
      step: 'adjuster',
      answer: 'found',
      words: 'the tip is dished',
    });
    expect([answered.statusCode, String(answered.headers.location).includes('/steps/adjuster')]).toEqual([
      303,
      true,
    ]);
    expect(read(await page('adjuster?of=lash'))).toContain('the tip is dished');
  });

  test('under a stop no part of these steps tells anybody to turn it', async () => {
    await freshCall();
    for (const moment of ['set', 'found', 'set', 'found'])
      await post('/lash', { ...lash, lash: moment === 'set' ? '.018' : '.025', moment, nut: 'held' });
    for (const at of ['geometry', 'timing', 'timing?of=centreline', 'adjuster?of=lash', 'adjuster']) {
      const text = read(await page(at));
      expect(text, at).toContain('Stop: nobody turns it');
      expect(text, at).not.toMatch(/two turns by hand|Turn in running direction|Turn gently/);
    }
  });

  /* What sets the gap of each engine: how it is made, from memory. */
  test.each([
    ['Nut', { rockerMounting: 'stud' }],
    ['Bolt', { rockerMounting: 'pedestal' }],
    ['Lock nut', { valveGear: 'cam-rocker' }],
    ['Pivot', { valveGear: 'finger-follower' }],
    ['Adjuster’s lock', {}],
  ])('form, log, report and card say %s where the engine has it', async (word, engine) => {
    await freshCall({ engine: { cylinders: 8, ...engine } });
    await post('/lash', { ...lash, lash: '.018', moment: 'set', nut: 'held' });
    const step = await page('adjuster?of=lash');
    expect(step).toMatch(new RegExp(`<legend[^>]*>\\s*${word}\\s*<`));
    const small = word.charAt(0).toLowerCase() + word.slice(1);
    expect(read(step)).toContain(`set, hot ${small} had not moved`);
    expect(read(step)).toContain(`Lash 6 exhaust set, hot, ${small} had not moved`);
    expect(read(await sheet('report'))).toMatch(new RegExp(`Day Lash ${word} Who .*${small}|${word} Who`));
    expect(read(await sheet('takeover'))).toContain(`the ${small} had not moved`);
  });

  test('a day that is none is refused where it was typed', async () => {
    await freshCall();
    const bad = await post('/lash', { ...lash, lash: '.018', moment: 'set', nut: 'held', readOn: 'Tuesday' });
    expect(bad.statusCode).toBe(422);
    expect(bad.body).toContain('href="#lash-f-readOn"');
    expect(bad.body).toMatch(/<details class="call-fold" open>/);
  });
});
