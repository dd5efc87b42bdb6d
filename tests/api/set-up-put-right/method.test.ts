import { describe, expect, test } from 'vitest';
import { sendJson } from '../../tools/call.ts';
import { makeLink } from '../../tools/filled-call.ts';
import { at } from '../../tools/numbers.ts';
import { textOf as text } from '../../tools/page-text.ts';
import { fieldsOf, openSetUps } from './set-up-read.ts';

/** What is told of a set-up later holds for the readings already there, by JSON and by form. Figures by hand. */

const { open, read } = openSetUps();

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
    const { service, desk } = open();
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
    const { service, desk } = open();
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
    const { service, desk } = open();
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
