import { describe, expect, test } from 'vitest';
import { sendJson } from '../tools/call.ts';
import { measuredPages, read } from './measured-pages.ts';

const { freshCall, open, page, post } = measuredPages();

describe('before anything is kept', () => {
  test.each([
    ['geometry', 'The mark on the stem’s end'],
    ['geometry?of=roller-sweep', 'Where to measure: pivot to tip'],
    ['timing', 'The stop in the plug hole'],
    ['timing?of=centreline', 'Equal drop on either side'],
    ['timing?of=events', 'Where the intake opens'],
    ['adjuster?of=lash', 'Lash cold and hot'],
    ['adjuster?of=lash-hot-cold', 'Lash cold and hot'],
  ])('%s has its drawing', async (at, title) => {
    await freshCall();
    expect(await page(at)).toContain(`>${title}`);
  });

  test('no adjuster is drawn before it is told where it is, and then that one', async () => {
    const title = '>What a turn of the adjuster does';
    await freshCall();
    expect(await page('adjuster')).not.toContain(title);
    await freshCall({ engine: { rockerMounting: 'stud', lifter: 'solid-flat' } });
    const html = await page('adjuster');
    expect(html).toContain(title);
    expect(html).toContain('gap: pitch × (1 + ratio)');
  });

  test('the least sweep says what it lacks, and where to work it out', async () => {
    await freshCall();
    const html = await page('geometry');
    expect(read(html)).toContain('missing: pivot to tip of the arm, lobe lift of the intake and a ratio');
    expect(html).toContain('/steps/geometry?of=roller-sweep');
  });
});

test('while nobody turns it, the three steps take what was found before, and nothing that is read now', async () => {
  await freshCall();
  await post('/hold', { form: 'stop', act: 'hold', reason: 'a tight spot', holdReason: 'a tight spot' });
  const held = await sendJson(open().service, open().person.bearer, 'GET', `/api/v1/calls/${open().callId}`);
  expect(held.json.held).toBe(true);
  expect(await page('timing')).not.toContain('name="form" value="working"');
  const marks = await page('geometry');
  expect(marks).toContain('A mark that was found after running');
  expect(marks).not.toContain('value="fresh-ink"');
  expect(await page('adjuster?of=lash')).toContain('What was found or set on an earlier day');
  const lash = {
    form: 'lash',
    cylinder: '6',
    valve: 'exhaust',
    engine: 'hot',
    lash: '.019',
    moment: 'found',
  };
  const now = await post('/lash', { ...lash, nut: 'held', readOn: '' });
  expect([now.statusCode, now.body.includes('Do not turn it: a tight spot.')]).toEqual([422, true]);
  expect((await post('/lash', { ...lash, nut: 'held', readOn: '2026-03-02' })).statusCode).toBe(303);
  const refused = await sendJson(
    open().service,
    open().person.bearer,
    'POST',
    `/api/v1/builds/${open().buildId}/lash`,
    {
      cylinder: 1,
      valve: 'intake',
      lash: '.018 in',
    },
  );
  expect(refused.status).toBe(409);
});
