import { describe, expect, test } from 'vitest';
import { sendJson } from '../tools/call.ts';
import { inField, measuredPages, read } from './measured-pages.ts';

const { freshCall, open, page, post } = measuredPages();

describe('tip marks', () => {
  const mark = { form: 'mark', cylinder: '3', valve: 'exhaust' };

  test('a mark is kept, drawn to scale beside the others, and the next length is asked', async () => {
    await freshCall({ engine: { rockerMounting: 'stud' } });
    const first = await post('/tip-marks', {
      ...mark,
      width: '.06',
      side: 'valley',
      off: '.03',
      pushrod: '7.8',
      stem: '11/32',
    });
    expect([first.statusCode, first.headers.location]).toEqual([
      303,
      `/calls/${open().callId}/steps/geometry?of=marks&kept=3`,
    ]);
    await post('/tip-marks', { ...mark, width: '.05', side: 'valley', off: '.01', pushrod: '7.85' });
    const html = await page('geometry');
    expect(read(html)).toContain('Would 7.875 in bring the mark to the middle?');
    expect(html).toContain('Marks on 3 exhaust, by pushrod length');
    expect(read(html)).toMatch(/Marks on 3 exhaust, by pushrod length to scale/);
    expect(read(html)).toContain('Tip mark 3 exhaust');
  });

  test('what came wrong stays typed, with its field named', async () => {
    await freshCall();
    const bad = await post('/tip-marks', { ...mark, width: '.06', side: 'valley', off: '2' });
    expect(bad.statusCode).toBe(422);
    expect(bad.body).toContain('href="#mark-f-off"');
    expect(inField(bad.body, 'width')).toBe('.06');
  });

  test('its side alone is taken: the width is judged, and the direction told', async () => {
    await freshCall({ engine: { rockerMounting: 'stud' } });
    const kept = await post('/tip-marks', { ...mark, width: '.06', side: 'valley', off: '', pushrod: '7.8' });
    expect(kept.statusCode).toBe(303);
    const text = read(await page('geometry'));
    expect(text).toContain('Would 7.850 in bring the mark to the middle? That is .050 in longer.');
    expect(text).toContain('.06 in wide, toward the valley, pushrod 7.8 in');
  });

  test('on a shaft the shims are asked for, and two heights give one direction, which JSON has too', async () => {
    await freshCall({
      engine: { rockerMounting: 'shaft' },
      cam: { exhaust: { lobeLift: '.375 in' } },
      rockers: { nominalRatio: 1.6, pivotToTip: '1.6 in' },
    });
    expect(await page('geometry')).toMatch(/name="shims"[\s\S]*name="pushrod"/);
    await post('/tip-marks', { ...mark, width: '.09', side: 'exhaust', off: '.02', shims: '0' });
    await post('/tip-marks', { ...mark, width: '.07', side: 'exhaust', off: '.03', shims: '.03' });
    const { json, text } = await sendJson(
      open().service,
      open().person.bearer,
      'GET',
      `/api/v1/builds/${open().buildId}/tip-marks`,
    );
    expect(JSON.stringify(json.valves)).toContain(
      '"advice":"Raise the stands by .030 in, to .060 in of shims. The marks get narrower that way.',
    );
    expect(text).toContain('.07 in wide, .03 in toward the exhaust side, .03 in of shims');
    expect(read(await page('geometry'))).toMatch(/[Rr]aise the stands by \.030 in, to \.060 in of shims/);
    const report = await open().service.request({
      url: `/calls/${open().callId}/report`,
      cookies: open().person.cookies,
    });
    expect(read(report.body)).toContain('Raise the stands by .030 in');
  });

  test('put right from its own page, the old one stays with the reason', async () => {
    await freshCall();
    await post('/tip-marks', { ...mark, width: '.06', side: 'valley', off: '.03' });
    const at = /\/tip-marks\/([0-9a-f-]{36})/.exec(await page('geometry'))?.[1] ?? '';
    const form = await open().service.request({
      url: `/calls/${open().callId}/tip-marks/${at}`,
      cookies: open().person.cookies,
    });
    expect(inField(form.body, 'width')).toBe('.06 in');
    const fields = {
      form: 'correct-mark',
      act: 'replace',
      width: '.066',
      side: 'centred',
      off: '',
      reason: 'read again',
    };
    expect((await post(`/tip-marks/${at}`, fields)).statusCode).toBe(303);
    expect(read(await page('geometry'))).toMatch(
      /replaced: \.06 in.*\.06 in wide, \.03 in toward the valley/,
    );
    const other = await open().service.person();
    const stranger = await open().service.request({
      url: `/calls/${open().callId}/tip-marks/${at}`,
      cookies: other.cookies,
    });
    expect(stranger.statusCode).toBe(404);
  });
});
