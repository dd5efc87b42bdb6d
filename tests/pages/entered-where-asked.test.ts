import { describe, expect, test } from 'vitest';
import { METHOD, sendJson, startSetUp } from '../tools/call.ts';
import { at } from '../tools/numbers.ts';
import { inField, measuredPages, read } from './measured-pages.ts';

/** What is asked has its place where it is asked, and what came back stands where it was sent from. */
const { freshCall, open, page, post, sheet } = measuredPages();

const assessment = async () => {
  const { service, person, buildId } = open();
  return (await sendJson(service, person.bearer, 'GET', `/api/v1/builds/${buildId}/assessment`)).json;
};

describe('timing is shown as it counts', () => {
  const working = (part: string, fields: Record<string, string>) =>
    post('/workings/timing', { form: 'working', part, computation: part, ...fields });

  test('figure, drawing and report are of what the answer about the pointer made of it', async () => {
    await freshCall();
    await working('top-dead-centre', { before: '36.75', after: '35.25' });
    await working('centreline', { before: '60', after: '145.5', side: 'intake', card: '' });
    const unsaid = await page('timing?of=centreline');
    // (60 + 145.5)/2 = 102.75; nobody has said yet whether the pointer was left .75 out.
    expect(read(unsaid)).toContain('102.75');
    expect(unsaid).not.toContain('id="answer-leading-label"');
    const questions = at(await assessment(), 'questions');
    const asked = (Array.isArray(questions) ? questions : []).find(
      (each: unknown) => at(each, 'code') === 'pointer-out',
    );
    await post('/answers', {
      form: 'answer-0',
      step: 'timing',
      question: String(at(asked, 'ask')),
      code: 'pointer-out',
      questionId: String(at(asked, 'id')),
      answer: 'left',
    });
    // The wheel read .75 too little after TDC: 102.75 + .75 = 103.5.
    const answered = await page('timing?of=centreline');
    const large = answered.slice(answered.indexOf('id="answer-leading-label"')).slice(0, 400);
    expect(read(large)).toMatch(/103\.5/);
    expect(read(answered)).not.toContain('102.75 deg');
    const report = read(await sheet('report'));
    expect(report).toContain('103.5 deg');
    expect(report).not.toContain('102.75 deg');
  });
});

describe('one entry that both sides changed', () => {
  test('is asked for at its field until somebody says which one stands', async () => {
    await freshCall();
    const first = { form: 'cam', part: '', revision: '1', 'cam.intake.lobeLift': '.350 in' };
    expect((await post('/spec/cam', first)).statusCode).toBe(303);
    const mine = { ...first, 'cam.intake.lobeLift': '.352 in' };
    const back = await post('/spec/cam', mine);
    expect([back.statusCode, read(back.body)]).toEqual([422, expect.stringContaining('which one stands?')]);
    expect(inField(back.body, 'cam.intake.lobeLift')).toBe('.352 in');
    const again = {
      ...mine,
      revision: inField(back.body, 'revision') ?? '',
      asked: inField(back.body, 'asked') ?? '',
    };
    // Pressed once more without a pick, nothing is replaced.
    const still = await post('/spec/cam', again);
    expect([still.statusCode, read(still.body)]).toEqual([422, expect.stringContaining('which one stands?')]);
    const lobe = async () => inField(await page('cam'), 'cam.intake.lobeLift');
    expect(await lobe()).toBe('.350 in');
    const stands = 'cam.intake.lobeLift~stands';
    expect((await post('/spec/cam', { ...again, [stands]: 'theirs' })).statusCode).toBe(303);
    expect(await lobe()).toBe('.350 in');
    expect((await post('/spec/cam', { ...again, [stands]: 'own' })).statusCode).toBe(303);
    expect(await lobe()).toBe('.352 in');
    // The tape reads the figures back.
    expect(read(await page('cam'))).toContain('Lobe lift, intake .352 in (was .350 in)');
  });
});

describe('a form comes back where it was sent from', () => {
  test('a lash from its log to the log, one from the shims to the shims', async () => {
    await freshCall();
    const lash = { form: 'lash', cylinder: '1', valve: 'exhaust', lash: '18', moment: 'set' };
    const log = await post('/lash', { ...lash, part: 'lash' });
    expect([log.statusCode, log.body.includes('Lash log')]).toEqual([422, true]);
    expect(read(log.body)).not.toContain('No shims in stock are on record');
    const shims = await post('/lash', { ...lash, part: 'shims' });
    expect(read(shims.body)).toContain('No shims in stock are on record');
    const kept = await post('/lash', { ...lash, part: 'shims', lash: '.018 in' });
    expect(kept.headers.location).toContain('of=shims');
  });
});

describe('what is next has its field', () => {
  test('a gap that is judged on the page of the change is entered there', async () => {
    await freshCall({
      cam: { intake: { lobeLift: '.350 in' }, exhaust: { lobeLift: '.350 in' } },
      rockers: { nominalRatio: 1.5, plannedRatio: 1.6 },
    });
    const asked = await page('consequences');
    expect(asked).toContain('name="figures.retainer-to-seal"');
    const kept = await post('/sheet', {
      form: 'gap',
      step: 'consequences',
      cylinder: '1',
      valve: 'exhaust',
      'figures.retainer-to-seal': 'more than .060, less than .064',
      spring: 'light',
    });
    expect([kept.statusCode, kept.headers.location]).toEqual([
      303,
      expect.stringMatching(/steps\/consequences\?kept=/),
    ]);
    const empty = await post('/sheet', {
      form: 'gap',
      step: 'consequences',
      cylinder: '1',
      valve: 'exhaust',
    });
    expect([empty.statusCode, empty.body.includes('id="gap"')]).toEqual([422, true]);
  });

  test('the sheet asks how many cylinders there are before it has a table', async () => {
    await freshCall();
    expect(await page('sheet')).toContain('name="engine.cylinders"');
    const kept = await post('/spec/cylinders', {
      form: 'cylinders',
      part: 'sheet',
      revision: '1',
      'engine.cylinders': '4',
    });
    expect(kept.headers.location).toContain('/steps/sheet');
    const table = await page('sheet');
    expect(table).toContain('name="grid.4-exhaust.lobe-lift"');
    expect(table).not.toContain('name="engine.cylinders"');
    // Lobe first, then the valve.
    expect(/<input[^>]*autofocus/.exec(table)?.[0]).toContain('lobe-lift');
  });

  test('the form of a pass says what it is of, and only the first set-up gives way to it', async () => {
    await freshCall();
    const { service, person, buildId } = open();
    expect(await page('ratio')).toContain('data-gives-way');
    await startSetUp(service, person, buildId, METHOD);
    const reading = await page('ratio');
    expect(reading).toMatch(/data-picked>Lobe lift 1 intake, pass 1</);
    const another = await page('ratio?new=yes');
    expect(another).not.toContain('data-gives-way');
  });
});
