import { describe, expect, test } from 'vitest';
import { sendJson } from '../tools/call.ts';
import { inField, measuredPages, read } from './measured-pages.ts';

const { freshCall, open, page, post } = measuredPages();

describe('timing is a chain', () => {
  const working = (part: string, computation: string, fields: Record<string, string>) =>
    post('/workings/timing', { form: 'working', part, computation, ...fields });

  test('the stop gives the correction, and a pointer that was left is taken off the centreline and the events', async () => {
    await freshCall({ cam: { intake: { centreline: '106 deg' } } });
    // Printed degreeing text: 36.75 and 35.25 average 36, so the pointer is .75 out.
    await working('top-dead-centre', 'top-dead-centre', { before: '35.25', after: '36.75' });
    const opened = await page('timing');
    // Nobody has said yet whether it was shifted.
    expect(opened).toMatch(/<option value="" selected[^>]*>Not said/);
    expect(read(opened)).toContain('Centreline by equal drop');
    expect(read(opened)).toMatch(/From line \d+: the wheel reads \.75° too much after TDC/);
    expect([inField(opened, 'pointerOff'), inField(opened, 'card')]).toEqual(['0.75 deg', '106 deg']);
    // 60 and 145.5 give 102.75 (the same text); .75 more of each was read here.
    const chained = { before: '60.75', after: '146.25', side: 'intake', card: '106', pointerOff: '0.75 deg' };
    await working('centreline', 'centreline', { ...chained, pointer: 'left' });
    const kept = read(await page('timing?of=centreline'));
    expect(kept).toContain(
      'The intake peaks 102.75° after TDC, give or take 1°: 3.25° advanced against the card.',
    );
    expect(kept).toContain('Advance costs intake gap to the piston');
    expect(kept).toMatch(/By line \d+, the pointer left where it was: \.75° was taken off/);
    // What was said of the pointer stands in the next form.
    expect(await page('timing?of=events')).toMatch(/<option value="left" selected/);
    await working('centreline', 'centreline', { ...chained, pointer: 'moved' });
    expect(read(await page('timing?of=centreline'))).toContain('the intake peaks 103.5° after TDC');
  });

  test('the answer keeps what takes it back, on its own step and on every other', async () => {
    await freshCall({ cam: { intake: { centreline: '106 deg' } } });
    await working('centreline', 'centreline', { before: '64', after: '146', side: 'intake', card: '106' });
    const answerIn = (html: string) => /<p class="bar-answer[\s\S]*?<div/.exec(html)?.[0] ?? '';
    for (const at of ['timing', 'timing?of=centreline', 'notes']) {
      const answer = read(answerIn(await page(at)));
      expect(answer, at).toContain('the intake peaks 105° after TDC');
      expect(answer, at).toContain('But top dead centre is not proved');
    }
  });

  /* Within .25° a wheel is not read (common practice): page and assessment say the same of .1°. */
  test('a stop that reads alike to less than a wheel is read leaves nothing to shift or to say', async () => {
    await freshCall();
    await working('top-dead-centre', 'top-dead-centre', { before: '35.9', after: '36.1' });
    const kept = read(await page('timing?of=top-dead-centre'));
    expect(kept).toMatch(/Alike on both sides: the pointer stands right/);
    expect(kept).not.toMatch(/(shift|move) the pointer|° out/i);
    expect(await page('timing?of=centreline')).not.toContain('The pointer, since the stop was read');
  });

  test('of two readings at the stop the one that is empty is asked for, by its own name', async () => {
    await freshCall();
    const one = await working('top-dead-centre', 'top-dead-centre', { before: '36.75', after: '' });
    expect([one.statusCode, read(one.body).includes('After TDC, at the stop must not be empty')]).toEqual([
      422,
      true,
    ]);
    expect(read(one.body)).not.toContain('Before TDC, at the stop has');
  });

  test('a pointer that was shifted is said so, and nothing says for it that the stop read alike', async () => {
    await freshCall();
    await working('top-dead-centre', 'top-dead-centre', { before: '35', after: '37' });
    expect(read(await page('timing?of=top-dead-centre'))).toContain('right, it reads 36° on both sides');
    const form = await page('timing?of=centreline');
    expect(read(form)).toContain('Where it was shifted, read the stop again');
    expect(read(form)).not.toContain('read alike');
  });

  test('events are told from their side, and of a duration that is not the card’s no word is told yet', async () => {
    await freshCall({
      cam: { intake: { centreline: '110 deg', durations: [{ atLift: '.05 in', duration: '205 deg' }] } },
    });
    const html = await page('timing?of=events');
    expect([inField(html, 'card'), inField(html, 'cardDuration')]).toEqual(['110 deg', '205 deg']);
    // Printed degreeing text: opens 10 ATDC, closes 39 ABDC: 209 about 114.5.
    const events = { opens: '10 atdc', closes: '39 ABDC', side: 'intake', card: '110', cardDuration: '205' };
    expect((await working('events', 'centreline', events)).statusCode).toBe(303);
    const kept = read(await page('timing?of=events'));
    expect(kept).toContain('By what was read the intake peaks 114.5° after TDC.');
    expect(kept).toContain('The duration is 4° over the card’s');
    expect(kept).toContain('No word against the card yet');
    expect(kept).not.toContain('4.5° retarded against the card.');
    const bare = await working('events', 'centreline', { ...events, opens: '10' });
    expect([bare.statusCode, read(bare.body).includes('Opens needs an angle and its side: BTDC')]).toEqual([
      422,
      true,
    ]);
  });

  test('an exhaust is read before TDC, as the trade tells it', async () => {
    await freshCall();
    // 157 and 71 before TDC have their middle at 114.
    await working('centreline', 'centreline', { before: '157', after: '71 BTDC', side: 'exhaust' });
    const listed = await sendJson(
      open().service,
      open().person.bearer,
      'GET',
      `/api/v1/builds/${open().buildId}/workings`,
    );
    expect(listed.text).toMatch(/"centreline":\{[^}]*"value":114\b/);
  });

  test('a missing reading at the stop is named by its own field', async () => {
    await freshCall();
    const bad = await working('top-dead-centre', 'top-dead-centre', { before: '35', after: '' });
    expect([bad.statusCode, bad.body.includes('href="#working-f-')]).toEqual([422, true]);
    expect(inField(bad.body, 'before')).toBe('35');
  });
});
