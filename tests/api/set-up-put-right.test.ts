import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { keepReading, METHOD, openCall, sendJson, startSetUp } from '../tools/call.ts';
import { makeLink } from '../tools/filled-call.ts';
import { at } from '../tools/numbers.ts';
import { textOf as text } from '../tools/page-text.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

/** What is told of a set-up later holds for the readings already there, by JSON and by form. Figures by hand. */
let service: TestService;
let desk: Person;
beforeAll(async () => {
  service = await testService();
  desk = await service.person();
});
afterAll(() => service.close());

const UNSAID = { spring: 'not-said', lifter: 'not-said', lash: 'not-said', alignment: 'not-said' };

/** A call with lifts read, and nothing said of how: .540 and .520 short lash, over .350: 1.600. */
async function read(method: object = UNSAID) {
  const opened = await openCall(service, desk);
  const url = `/api/v1/builds/${opened.buildId}`;
  const send = (path: string, body: object) => sendJson(service, desk.bearer, 'POST', `${url}${path}`, body);
  const get = async (path: string) => (await sendJson(service, desk.bearer, 'GET', `${url}${path}`)).json;
  await send('/arms', { name: 'A', ratioStamp: '1.6' });
  const setUpId = await startSetUp(service, desk, opened.buildId, { ...METHOD, ...method });
  const keep = (kind: string, peak: string) =>
    keepReading(service, desk, opened.buildId, setUpId, kind, peak);
  for (const lobe of ['.350 in', '.350 in', '.3505 in']) await keep('lobe-lift', lobe);
  for (const lift of ['.540 in', '.5405 in', '.540 in']) await keep('valve-lift', lift);
  const right = (body: object) => send(`/set-ups/${setUpId}/corrections`, { reason: 'told later', ...body });
  const page = async (path = `/steps/ratio?set-up=${setUpId}`) =>
    (await service.app.inject({ url: `/calls/${opened.callId}${path}`, cookies: desk.cookies })).body;
  const post = (path: string, fields: Record<string, string>) =>
    service.app.inject({
      method: 'POST',
      url: `/calls/${opened.callId}${path}`,
      cookies: desk.cookies,
      headers: { 'content-type': 'application/x-www-form-urlencoded', 'sec-fetch-site': 'same-origin' },
      payload: new URLSearchParams({ key: crypto.randomUUID(), ...fields }).toString(),
    });
  const ratio = () => get(`/set-ups/${setUpId}/ratio`);
  const setUp = async () => at(await get('/set-ups'), 'setUps', 0);
  const question = async (code: string) => {
    const { questions } = await get(`/assessment`);
    if (!Array.isArray(questions)) throw new Error('no questions');
    return questions.find((each: unknown) => at(each, 'code') === code);
  };
  return { ...opened, url, setUpId, send, get, keep, right, page, post, ratio, setUp, question };
}

/** The fields of the form that a page has under this name, as a browser would post them. */
function fieldsOf(html: string, name: string): Record<string, string> {
  const form = html.match(new RegExp(`<form[^>]*id="${name}"[\\s\\S]*?</form>`))?.[0] ?? '';
  const attribute = (tag: string, key: string) =>
    new RegExp(`\\b${key}="([^"]*)"`).exec(tag)?.[1]?.replaceAll('&quot;', '"');
  const fields: Record<string, string> = {};
  for (const [tag] of form.matchAll(/<input\b[^>]*>/g)) {
    const key = attribute(tag, 'name');
    const isPicked = !/type="(radio|checkbox)"/.test(tag) || /\bchecked\b/.test(tag);
    if (key !== undefined && isPicked) fields[key] = attribute(tag, 'value') ?? '';
  }
  for (const [, key, options] of form.matchAll(/<select\b[^>]*name="([^"]*)"[^>]*>([\s\S]*?)<\/select>/g)) {
    const picked = /<option\b[^>]*\bselected\b[^>]*>/.exec(options ?? '')?.[0] ?? '';
    if (key !== undefined) fields[key] = attribute(picked, 'value') ?? '';
  }
  expect(Object.keys(fields).length, `a form ${name}`).toBeGreaterThan(0);
  return fields;
}

describe('a set-up put right in JSON', () => {
  test('says what it was and what it is, and the readings are judged by what it is', async () => {
    const { right, ratio, setUp, get } = await read();
    expect(at(await ratio(), 'missing', 0)).toBe('which spring is on the valve');
    const method = { spring: 'light', lifter: 'solid', lash: 'set', lashSetting: '20 thou' };
    const { status, json } = await right({ method });
    expect(status).toBe(201);
    expect(at(json, 'started', 'method', 'spring')).toBe('not-said');
    expect(at(json, 'method', 'spring')).toBe('light');
    expect(at(json, 'corrections', 0, 'reason')).toBe('told later');
    expect(await setUp()).toEqual(json);
    const told = await ratio();
    expect(at(told, 'known', 'lashSetting', 'value')).toBeCloseTo(0.02, 9);
    // (.54017 + .020)/.35017
    expect(Number(at(told, 'result', 'ratio'))).toBeCloseTo(1.5997, 3);
    expect(at(told, 'missing')).toEqual(['a reading at zero lash, since lash was left in']);
    const exported = at(await get('/export'), 'setUps', 0);
    expect(exported).toEqual(json);
  });

  test('a valve that was kept wrongly: the readings are of the other one, without being typed again', async () => {
    const { right, get } = await read({ spring: 'light' });
    await right({ cylinder: 3, valve: 'exhaust' });
    const { headlines } = await get('/assessment');
    expect(JSON.stringify(headlines)).toContain('3 exhaust: ');
    expect(JSON.stringify(headlines)).not.toContain('1 intake');
  });

  test('the new dial counts for turns that are typed from then on', async () => {
    const { right, post, setUpId, get } = await read();
    await right({ method: { perTurn: '.200 in' } });
    const fields = { form: 'reading', setUpId, kind: 'valve-lift', peak: '2 turns 140' };
    expect((await post('/readings', fields)).statusCode).toBe(303);
    expect(at(await get('/readings'), 'readings', 6, 'peak', 'value')).toBeCloseTo(0.54, 9);
  });

  test.each([
    ['nothing', {}, '/method'],
    ['an empty method', { method: {} }, '/method'],
    ['a word it does not have', { method: { spring: 'soft' } }, '/method/spring'],
    ['a field it does not have', { method: { colour: 'red' } }, '/method/colour'],
    ['no reason', { valve: 'exhaust', reason: ' ' }, '/reason'],
  ])('%s is refused at its field', async (_, body, pointer) => {
    const { right } = await read();
    const { status, json } = await right(body);
    expect(status).toBe(422);
    expect(at(json, 'errors', 0, 'pointer')).toBe(pointer);
  });

  test('an arm or a set-up of another build is not found, nor is another shop’s', async () => {
    const [mine, other] = [await read(), await read()];
    const armId = at(await other.get('/arms'), 'arms', 0, 'id');
    expect((await mine.right({ armId })).status).toBe(404);
    const foreign = `${mine.url}/set-ups/${other.setUpId}/corrections`;
    const body = { valve: 'exhaust', reason: 'told' };
    expect((await sendJson(service, desk.bearer, 'POST', foreign, body)).status).toBe(404);
    const stranger = await service.person();
    const url = `${mine.url}/set-ups/${mine.setUpId}/corrections`;
    expect((await sendJson(service, stranger.bearer, 'POST', url, body)).status).toBe(404);
  });

  test('under a hold it stays open: nothing is turned for it', async () => {
    const { right, callId, ratio } = await read();
    await sendJson(service, desk.bearer, 'POST', `/api/v1/calls/${callId}/hold`, {
      reason: 'it turns tight',
    });
    expect((await right({ method: { spring: 'light' } })).status).toBe(201);
    expect(at(await ratio(), 'known', 'spring')).toBe('light');
  });
});

describe('a set-up put right on its page', () => {
  test('filled in as it stands; only what was changed is said', async () => {
    const { page, post, setUp, setUpId } = await read();
    expect(await page()).toContain(`/set-ups/${setUpId}"`);
    const html = await page(`/set-ups/${setUpId}`);
    const fields = fieldsOf(html, 'put-right');
    expect(fields['method.perTurn']).toBe('0.1 in');
    const changed = {
      ...fields,
      'method.lash': 'set',
      'method.lashSetting': '.020',
      reason: 'he found the feeler',
    };
    expect((await post(`/set-ups/${setUpId}/correct`, changed)).statusCode).toBe(303);
    const json = await setUp();
    expect(Object.keys(Object(at(json, 'corrections', 0, 'method')))).toEqual(['lash', 'lashSetting']);
    const shown = text(await page());
    expect(shown).toContain('Set to its running lash');
    expect(shown).toContain('.020 in, entered as: Not said');
    expect(shown).toContain(
      'Set-up 1 on 1 intake put right: set to its running lash, lash left in .020 in; he found the feeler',
    );
  });

  test('nothing that was typed is lost where nothing was changed, or the reason is missing', async () => {
    const { page, post, setUpId } = await read();
    const fields = fieldsOf(await page(`/set-ups/${setUpId}`), 'put-right');
    const same = await post(`/set-ups/${setUpId}/correct`, { ...fields, reason: 'told' });
    expect(same.statusCode).toBe(422);
    expect(text(same.body)).toContain('nothing is put right yet');
    const unsaid = await post(`/set-ups/${setUpId}/correct`, { ...fields, 'method.travel': '1.000' });
    expect(unsaid.statusCode).toBe(422);
    expect(fieldsOf(unsaid.body, 'put-right')['method.travel']).toBe('1.000');
  });

  test('a field that is emptied is not known after all', async () => {
    const { page, post, setUpId, right, setUp } = await read();
    await right({ method: { travel: '1.000 in' } });
    const fields = fieldsOf(await page(`/set-ups/${setUpId}`), 'put-right');
    await post(`/set-ups/${setUpId}/correct`, { ...fields, 'method.travel': '', reason: 'not measured' });
    expect(at(await setUp(), 'method', 'travel')).toBeUndefined();
    expect(at(await setUp(), 'corrections', 1, 'notKnown')).toEqual(['travel']);
  });

  test('the builder may too', async () => {
    const { callId, setUpId, setUp } = await read();
    const { bench } = await makeLink(service, desk, callId);
    const cookies = { 'benchcall-bench': bench };
    const { body } = await service.app.inject({ url: `/bench/set-ups/${setUpId}`, cookies });
    const fields = { ...fieldsOf(body, 'put-right'), 'method.spring': 'light', reason: 'I looked' };
    const answer = await service.app.inject({
      method: 'POST',
      url: `/bench/set-ups/${setUpId}/correct`,
      cookies,
      headers: { 'content-type': 'application/x-www-form-urlencoded', 'sec-fetch-site': 'same-origin' },
      payload: new URLSearchParams(fields).toString(),
    });
    expect(answer.statusCode).toBe(303);
    expect(at(await setUp(), 'corrections', 0, 'byKind')).toBe('builder');
  });
});

describe('how far the plunger leans, as the answer to its question', () => {
  const leaning = async () => {
    const call = await read({ spring: 'light', alignment: 'leaning' });
    const asked = await call.question('plunger-tilted');
    const said = { question: 'plunger-tilted', code: 'plunger-tilted', setUpId: call.setUpId };
    return { ...call, asked, said };
  };

  test('in degrees, in JSON', async () => {
    const { send, asked, said, question } = await leaning();
    expect(at(asked, 'answers', 1)).toMatchObject({ code: 'leaning', takesLean: true, takesValue: false });
    const { json, status } = await send('/answers', { ...said, answer: 'leaning', lean: '12 deg' });
    expect(status).toBe(201);
    expect(at(json, 'value')).toMatchObject({ value: 12, unit: 'deg' });
    const now = await question('plunger-tilted');
    expect(at(now, 'answered', 'answer')).toBe('leaning, 12 deg');
    expect(at(now, 'size')).toMatch(/^12 deg makes \.540 in of /);
  });

  test('on the page an angle alone says that it leans', async () => {
    const { page, post, question } = await leaning();
    const html = await page();
    const name =
      /<form[^>]*id="(answer-\d+)"(?:(?!<\/form>)[\s\S])*?value="plunger-tilted"/.exec(html)?.[1] ?? '';
    const fields = { ...fieldsOf(html, name), answer: '', lean: '12' };
    expect((await post('/answers', fields)).statusCode).toBe(303);
    expect(at(await question('plunger-tilted'), 'answered', 'answer')).toBe('leaning, 12 deg');
  });

  test('one that cannot be is refused at its field', async () => {
    const { send, said } = await leaning();
    for (const [answer, lean] of [
      ['leaning', '60 deg'],
      ['parallel', '5 deg'],
      ['leaning', '.5 in'],
    ]) {
      const refused = await send('/answers', { ...said, answer, lean });
      expect([refused.status, at(refused.json, 'errors', 0, 'pointer')]).toEqual([422, '/lean']);
    }
    const elsewhere = await send('/answers', {
      ...said,
      code: 'zero-not-returned',
      answer: 'found',
      lean: '5 deg',
    });
    expect(at(elsewhere.json, 'errors', 0, 'pointer')).toBe('/lean');
  });
});

describe('the lash as the answer to its question', () => {
  test('with its amount, in JSON', async () => {
    const { send, question, ratio } = await read({ spring: 'light', lash: 'not-said' });
    const asked = await question('lash-not-said');
    expect(at(asked, 'answers', 1)).toMatchObject({ code: 'set', takesValue: true });
    const { json, status } = await send('/answers', {
      question: at(asked, 'ask'),
      questionId: at(asked, 'id'),
      setUpId: at(asked, 'about', 'setUpId'),
      code: 'lash-not-said',
      answer: 'set',
      value: '20 thou',
    });
    expect(status).toBe(201);
    expect(at(json, 'value', 'readAs')).toBe('20 thou = .020 in');
    expect(at(await ratio(), 'known', 'lashSetting', 'value')).toBeCloseTo(0.02, 9);
  });

  test('an amount in words alone is asked back, in JSON and on the page, with what was typed', async () => {
    const { send, setUpId, page, post, ratio } = await read({ spring: 'light', lash: 'not-said' });
    const said = { question: 'lash-not-said', setUpId, code: 'lash-not-said', answer: 'left in, .020 in' };
    const refused = await send('/answers', said);
    expect(refused.status).toBe(422);
    expect(at(refused.json, 'errors', 0, 'pointer')).toBe('/value');
    expect(at(refused.json, 'errors', 0, 'detail')).toContain('Is that the lash: .020 in?');
    const html = await page();
    const name =
      /<form[^>]*id="(answer-\d+)"(?:(?!<\/form>)[\s\S])*?value="lash-not-said"/.exec(html)?.[1] ?? '';
    const back = await post('/answers', { ...fieldsOf(html, name), words: 'he says .020 in' });
    expect(back.statusCode).toBe(422);
    expect(text(back.body)).toContain('Is that the lash: .020 in?');
    const again = fieldsOf(back.body, name);
    expect([again.answer, again.value, again.words]).toEqual(['set', '.020 in', 'he says .020 in']);
    expect((await post('/answers', again)).statusCode).toBe(303);
    expect(at(await ratio(), 'known', 'lashSetting', 'value')).toBeCloseTo(0.02, 9);
  });

  test('the log’s lash is offered, and kept when it is confirmed', async () => {
    const { send, page, post, ratio } = await read({ spring: 'light', lash: 'not-said' });
    await send('/lash', {
      cylinder: 1,
      valve: 'intake',
      lash: '.018 in',
      moment: 'set',
      readOn: '2020-03-12',
    });
    expect(at(await ratio(), 'known', 'lash')).toBe('not-said');
    const html = await page();
    expect(text(html)).toContain('Yes, the .018 in that was set on 2020-03-12');
    const name =
      /<form[^>]*id="(answer-\d+)"(?:(?!<\/form>)[\s\S])*?value="lash-not-said"/.exec(html)?.[1] ?? '';
    const fields = { ...fieldsOf(html, name), answer: 'as-logged' };
    expect((await post('/answers', fields)).statusCode).toBe(303);
    expect(at(await ratio(), 'known', 'lashSetting', 'value')).toBeCloseTo(0.018, 9);
  });

  test('zero with an amount beside it is refused', async () => {
    const { send, setUpId } = await read();
    const said = {
      question: 'lash-not-said',
      setUpId,
      code: 'lash-not-said',
      answer: 'zero',
      value: '.02 in',
    };
    expect((await send('/answers', said)).status).toBe(422);
  });
});

describe('a pass that was kept as something else', () => {
  test('in JSON: its figure stays, its number is the next of its kind', async () => {
    const { keep, send, get, ratio } = await read({ spring: 'light', lifter: 'solid', lash: 'zero' });
    const id = await keep('valve-lift', '.3495 in');
    expect(at(await ratio(), 'missing')).not.toEqual([]);
    const { json, status } = await send(`/readings/${id}/corrections`, {
      kind: 'lobe-lift',
      reason: 'it was the lobe',
    });
    expect(status).toBe(201);
    expect(json).toMatchObject({ kind: 'lobe-lift', pass: 4, struck: false, replaces: id });
    expect(at(json, 'peak', 'readAs')).toBe('.3495 in');
    expect(at(await ratio(), 'restsOn')).toHaveLength(7);
    const { events } = await get('/events?limit=500');
    expect(at(Array.isArray(events) ? events.at(-1) : {}, 'data', 'wasKind')).toBe('valve-lift');
  });

  test('part of the way up it needs the lobe lift it was read at', async () => {
    const { keep, send } = await read();
    const id = await keep('valve-lift', '.320 in');
    const said = { kind: 'valve-lift-at', reason: 'read at .200' };
    const without = await send(`/readings/${id}/corrections`, said);
    expect([without.status, at(without.json, 'errors', 0, 'pointer')]).toEqual([422, '/atLobeLift']);
    const { json } = await send(`/readings/${id}/corrections`, { ...said, atLobeLift: '.200 in' });
    expect(json).toMatchObject({ kind: 'valve-lift-at', pass: 1 });
  });

  test('on its page the figure may stand', async () => {
    const { keep, page, post, get } = await read();
    const id = await keep('valve-lift', '.3495 in');
    const fields = fieldsOf(await page(`/readings/${id}`), 'correct');
    const changed = { ...fields, kind: 'lobe-lift', reason: 'it was the lobe', act: 'replace' };
    expect((await post(`/readings/${id}/correct`, changed)).statusCode).toBe(303);
    const { readings } = await get('/readings');
    expect(Array.isArray(readings) ? readings.at(-1) : {}).toMatchObject({ kind: 'lobe-lift', pass: 4 });
    // Without a change of kind, the figure has to be typed.
    const lobe = at(await get('/readings'), 'readings', 0, 'id');
    const bare = { kind: 'lobe-lift', reason: 'told', act: 'replace' };
    expect((await post(`/readings/${lobe}/correct`, bare)).statusCode).toBe(422);
  });
});
