import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openCall, sendJson } from '../tools/call.ts';
import { htmlFaults } from '../tools/html-faults.ts';
import { postForm } from '../tools/post-form.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

/** The steps of marks, timing and adjusters as a browser without scripts has them: forms posted, pages read. */
let service: TestService;
let person: Person;
let callId: string;
let buildId: string;

beforeAll(async () => {
  service = await testService();
  person = await service.person();
});
afterAll(() => service.close());

async function freshCall(spec?: object): Promise<void> {
  ({ callId, buildId } = await openCall(service, person));
  if (spec === undefined) return;
  const url = `/api/v1/builds/${buildId}/spec`;
  const put = await sendJson(
    service,
    person.bearer,
    'PUT',
    url,
    { spec, reason: 'test' },
    { 'if-match': '"1"' },
  );
  if (put.status !== 200) throw new Error(`${put.status} ${put.text}`);
}

const post = (path: string, fields: Record<string, string>) =>
  postForm(
    service,
    `/calls/${callId}${path}`,
    { key: crypto.randomUUID(), ...fields },
    { cookies: person.cookies },
  );

async function page(at: string): Promise<string> {
  const answer = await service.request({ url: `/calls/${callId}/steps/${at}`, cookies: person.cookies });
  expect(answer.statusCode).toBe(200);
  expect(htmlFaults(answer.body)).toEqual([]);
  return answer.body;
}

/** What a person reads of a page. */
const read = (html: string) =>
  html
    .replace(/<svg[\s\S]*?<\/svg>/g, ' ')
    .replace(/<[^>]+>/g, ' ')
    .replace(/\s+/g, ' ');
/** On record in a field of the page. */
const inField = (html: string, name: string) =>
  new RegExp(`name="${name}"[^>]*value="([^"]*)"`).exec(html)?.[1];

describe('before anything is kept', () => {
  test.each([
    ['geometry', 'The mark on the stem’s end'],
    ['geometry?of=roller-sweep', 'Where to measure: pivot to tip'],
    ['timing', 'The stop in the plug hole'],
    ['timing?of=centreline', 'Equal drop on either side'],
    ['timing?of=events', 'Where the intake opens'],
    ['adjuster', 'What a turn of the adjuster does'],
    ['adjuster?of=lash', 'Lash cold and hot'],
    ['adjuster?of=lash-hot-cold', 'Lash cold and hot'],
  ])('%s has its drawing', async (at, title) => {
    await freshCall();
    expect(await page(at)).toContain(`>${title}`);
  });

  test('the least sweep says what it lacks, and where to work it out', async () => {
    await freshCall();
    const html = await page('geometry');
    expect(read(html)).toContain('missing: pivot to tip of the arm, lobe lift of the intake and a ratio');
    expect(html).toContain('/steps/geometry?of=roller-sweep');
  });
});

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
      `/calls/${callId}/steps/geometry?of=marks`,
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
      service,
      person.bearer,
      'GET',
      `/api/v1/builds/${buildId}/tip-marks`,
    );
    expect(JSON.stringify(json.valves)).toContain(
      '"advice":"Raise the stands by .050 in, to .080 in of shims: the marks get narrower that way.',
    );
    expect(text).toContain('.07 in wide, .03 in toward the exhaust side, .03 in of shims');
    expect(read(await page('geometry'))).toContain('raise the stands by .050 in, to .080 in of shims');
    const report = await service.request({ url: `/calls/${callId}/report`, cookies: person.cookies });
    expect(read(report.body)).toContain('Raise the stands by .050 in');
  });

  test('put right from its own page, the old one stays with the reason', async () => {
    await freshCall();
    await post('/tip-marks', { ...mark, width: '.06', side: 'valley', off: '.03' });
    const at = /\/tip-marks\/([0-9a-f-]{36})/.exec(await page('geometry'))?.[1] ?? '';
    const form = await service.request({
      url: `/calls/${callId}/tip-marks/${at}`,
      cookies: person.cookies,
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
    const other = await service.person();
    const stranger = await service.request({
      url: `/calls/${callId}/tip-marks/${at}`,
      cookies: other.cookies,
    });
    expect(stranger.statusCode).toBe(404);
  });
});

describe('timing is a chain', () => {
  const working = (part: string, computation: string, fields: Record<string, string>) =>
    post('/workings/timing', { form: 'working', part, computation, ...fields });

  test('the stop gives the correction, and a pointer that was left is taken off the centreline and the events', async () => {
    await freshCall({ cam: { intake: { centreline: '106 deg' } } });
    // Printed degreeing text: 36.75 and 35.25 average 36, so the pointer is .75 out.
    await working('top-dead-centre', 'top-dead-centre', { before: '35.25', after: '36.75' });
    const opened = await page('timing');
    expect(read(opened)).toContain('Centreline by equal drop');
    expect(read(opened)).toMatch(/From line \d+: the wheel reads \.75° too much after TDC/);
    expect([inField(opened, 'pointerOff'), inField(opened, 'card')]).toEqual(['0.75 deg', '106 deg']);
    // 60 and 145.5 give 102.75 (the same text); .75 more of each was read here.
    const chained = { before: '60.75', after: '146.25', side: 'intake', card: '106', pointerOff: '0.75 deg' };
    await working('centreline', 'centreline', { ...chained, pointer: 'left' });
    const kept = read(await page('timing?of=centreline'));
    expect(kept).toContain(
      'The intake peaks 102.75° after TDC: 3.25° advanced against the card. Advance costs intake gap to the piston',
    );
    expect(kept).toMatch(/The \.75° of line \d+ were taken off/);
    // What was said of the pointer stands in the next form.
    expect(await page('timing?of=events')).toMatch(/<option value="left" selected/);
    await working('centreline', 'centreline', { ...chained, pointer: 'moved' });
    expect(read(await page('timing?of=centreline'))).toContain('The intake peaks 103.5° after TDC');
  });

  test('events are told from their side, against the card, and retard costs exhaust', async () => {
    await freshCall({
      cam: { intake: { centreline: '110 deg', durations: [{ atLift: '.05 in', duration: '205 deg' }] } },
    });
    const html = await page('timing?of=events');
    expect([inField(html, 'card'), inField(html, 'cardDuration')]).toEqual(['110 deg', '205 deg']);
    // Printed degreeing text: opens 10 ATDC, closes 39 ABDC: 209 about 114.5.
    const events = { opens: '10 atdc', closes: '39 ABDC', side: 'intake', card: '110', cardDuration: '205' };
    expect((await working('events', 'centreline', events)).statusCode).toBe(303);
    const kept = read(await page('timing?of=events'));
    expect(kept).toContain(
      'The intake peaks 114.5° after TDC: 4.5° retarded against the card. Retard costs exhaust gap',
    );
    expect(kept).toContain('The duration is 4° over the card’s');
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
    const listed = await sendJson(service, person.bearer, 'GET', `/api/v1/builds/${buildId}/workings`);
    expect(listed.text).toMatch(/"centreline":\{[^}]*"value":114\b/);
  });

  test('a missing reading at the stop is named by its own field', async () => {
    await freshCall();
    const bad = await working('top-dead-centre', 'top-dead-centre', { before: '35', after: '' });
    expect([bad.statusCode, bad.body.includes('href="#working-f-')]).toEqual([422, true]);
    expect(inField(bad.body, 'before')).toBe('35');
  });
});

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
      `/calls/${callId}/steps/adjuster?of=lash`,
    ]);
    const text = read(await page('adjuster?of=lash'));
    expect(text).toContain('Is something wearing on this valve?');
    expect(text).toContain('Lash is read on the base circle, where a worn nose never shows');
    expect(text).toContain('It grew by .007 in, where .004 in is ordinary');
    expect(text).toMatch(/Lash 6 exhaust set, hot, on 2026-03-02, by the owner, nut had not moved/);
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
      expect(text, at).toContain('Nothing is turned or read on the engine while the stop stands.');
      expect(text, at).not.toMatch(/two turns by hand|Turn in running direction|Turn gently/);
    }
  });

  test('a day that is none is refused where it was typed', async () => {
    await freshCall();
    const bad = await post('/lash', { ...lash, lash: '.018', moment: 'set', nut: 'held', readOn: 'Tuesday' });
    expect(bad.statusCode).toBe(422);
    expect(bad.body).toContain('href="#lash-f-readOn"');
    expect(bad.body).toMatch(/<details class="call-fold" open>/);
  });
});

test('while nobody turns it, the three steps take what was found before, and nothing that is read now', async () => {
  await freshCall();
  await post('/hold', { form: 'stop', act: 'hold', reason: 'a tight spot', holdReason: 'a tight spot' });
  const held = await sendJson(service, person.bearer, 'GET', `/api/v1/calls/${callId}`);
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
  const refused = await sendJson(service, person.bearer, 'POST', `/api/v1/builds/${buildId}/lash`, {
    cylinder: 1,
    valve: 'intake',
    lash: '.018 in',
  });
  expect(refused.status).toBe(409);
});
