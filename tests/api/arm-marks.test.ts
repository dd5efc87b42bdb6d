import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openCall, sendJson } from '../tools/call.ts';
import { textOf } from '../tools/page-text.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

/** Marks of an arm that is on record are put right and added to; what it was put on record with stays in the record. */
let service: TestService;
let desk: Person;
beforeAll(async () => {
  service = await testService();
  desk = await service.person();
});
afterAll(() => service.close());

async function withArm() {
  const { callId, buildId } = await openCall(service, desk);
  const url = `/api/v1/builds/${buildId}`;
  const post = (path: string, body: object) => sendJson(service, desk.bearer, 'POST', `${url}${path}`, body);
  const get = async (path: string) => (await sendJson(service, desk.bearer, 'GET', `${url}${path}`)).json;
  const arm = { name: 'arm 5', ratioStamp: '1.6', otherNumber: '', boxLabel: 'Yarrow 1.7 (set)' };
  const armId = String((await post('/arms', arm)).json.id);
  return { callId, armId, post, get };
}

const ofForm = (callId: string, path: string, fields: Record<string, string>) =>
  service.app.inject({
    method: 'POST',
    url: `/calls/${callId}${path}`,
    cookies: desk.cookies,
    headers: { 'content-type': 'application/x-www-form-urlencoded', 'sec-fetch-site': 'same-origin' },
    payload: new URLSearchParams({ key: crypto.randomUUID(), ...fields }).toString(),
  });

describe('marks of an arm on record', () => {
  test('a number is added, and the other marks stay', async () => {
    const { armId, post, get } = await withArm();
    const { status, json } = await post(`/arms/${armId}/marks`, { otherNumber: 'L204' });
    expect([status, json.ratioStamp, json.otherNumber, json.boxLabel]).toEqual([
      201,
      '1.6',
      'L204',
      'Yarrow 1.7 (set)',
    ]);
    expect((await get('/arms')).arms).toMatchObject([{ ratioStamp: '1.6', otherNumber: 'L204' }]);
  });

  test('put right, the newest counts: what rested on the old mark is asked no more', async () => {
    const { armId, post, get } = await withArm();
    const codes = async () => JSON.stringify((await get('/assessment')).questions);
    expect(await codes()).toContain('box-against-stamp');
    await post(`/arms/${armId}/marks`, { ratioStamp: '1.65' });
    await post(`/arms/${armId}/marks`, { ratioStamp: '1.7', reason: 'read with a glass' });
    expect(await codes()).not.toContain('box-against-stamp');
    const events = JSON.stringify((await get('/events')).events);
    expect(events).toContain('read with a glass');
  });

  test('the same again is refused, and an arm of another build is none', async () => {
    const { armId, post } = await withArm();
    expect((await post(`/arms/${armId}/marks`, { ratioStamp: '1.6' })).status).toBe(409);
    const other = await withArm();
    expect((await other.post(`/arms/${armId}/marks`, { ratioStamp: '1.5' })).status).toBe(404);
  });

  test('by its form: what is left empty stays, and the tape tells it', async () => {
    const { callId, armId, get } = await withArm();
    const fields = { form: 'marks', armId, ratioStamp: '', otherNumber: 'L204', boxLabel: '', reason: '' };
    const { statusCode } = await ofForm(callId, '/arms/marks', fields);
    expect(statusCode).toBe(303);
    expect((await get('/arms')).arms).toMatchObject([
      { ratioStamp: '1.6', otherNumber: 'L204', boxLabel: 'Yarrow 1.7 (set)' },
    ]);
    const { body } = await service.app.inject({
      url: `/calls/${callId}/steps/parts`,
      cookies: desk.cookies,
    });
    expect(textOf(body)).toContain('Put the marks of an arm right, or add to them');
    expect(textOf(body)).toContain('arm 5, read again: ratio stamp “1.6”, other number “L204”');
  });
});
