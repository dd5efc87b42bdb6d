import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { METHOD } from '../calls/entry.ts';
import { openCall, sendJson } from '../tools/call.ts';
import { makeLink } from '../tools/filled-call.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

let service: TestService;
let desk: Person;
beforeAll(async () => {
  service = await testService();
  desk = await service.person();
});
afterAll(() => service.close());

const send = (path: string, body: object, who: { readonly authorization: string } = desk.bearer) =>
  sendJson(service, who, 'POST', `/api/v1${path}`, body);

async function stopped() {
  const { callId, buildId } = await openCall(service, desk, 'Held');
  const triage = { engineState: 'has-run', contact: 'something' };
  await sendJson(service, desk.bearer, 'PUT', `/api/v1/calls/${callId}/triage`, triage);
  return { callId, buildId };
}

const times = (text: string, pattern: RegExp): number => [...text.matchAll(pattern)].length;

describe('what is refused under a stop says what can be entered all the same', () => {
  const valve = { cylinder: 6, valve: 'exhaust' };
  test.each<[string, object, RegExp]>([
    ['lash', { ...valve, lash: '.018 in' }, /enter it with that day/],
    ['tip-marks', { ...valve, width: '.040 in', side: 'centred', found: 'fresh-ink' }, /found after running/],
    [
      'set-ups',
      {
        ...valve,
        method: METHOD,
      },
      /can still be entered/,
    ],
  ])('%s: the reason once, and the way', async (path, body, way) => {
    const { buildId } = await stopped();
    const refused = await send(`/builds/${buildId}/${path}`, body);
    expect([refused.status, refused.text]).toEqual([409, expect.stringMatching(way)]);
    expect(times(refused.text, /Do not turn it/g)).toBe(1);
  });

  test('a reading that was taken before is told where to put it, and the same is taken once the desk has lifted the stop', async () => {
    const { callId, buildId } = await stopped();
    const key = { 'idempotency-key': crypto.randomUUID() };
    const body = { readings: [{ ...valve, kind: 'lobe-lift', reading: '.340 in' }] };
    const once = () => sendJson(service, desk.bearer, 'POST', `/api/v1/builds/${buildId}/sheet`, body, key);
    const refused = await once();
    expect([refused.status, refused.text]).toEqual([
      409,
      expect.stringMatching(
        /was(?: not)? kept\. If it was read before the stop, send it with that said, and it is kept/,
      ),
    ]);
    const note = { kind: 'note', body: 'Lobe of 6 exhaust .340, read at nine, before the stop' };
    expect((await send(`/calls/${callId}/notes`, note)).status).toBe(201);
    expect((await send(`/calls/${callId}/hold/lift`, { reason: 'a shop looked' })).status).toBe(200);
    expect((await once()).status).toBe(201);
  });

  test('the hold and the contact that set it are one reason, lifted by the desk at once', async () => {
    const { callId, buildId } = await stopped();
    const stops = async () =>
      (await sendJson(service, desk.bearer, 'GET', `/api/v1/builds/${buildId}/assessment`)).json.stop;
    expect(await stops()).toHaveLength(1);
    expect((await send(`/calls/${callId}/hold/lift`, { reason: 'a shop looked' })).status).toBe(200);
    expect(await stops()).toEqual([]);
  });

  test('a builder is told that only the desk lifts it', async () => {
    const { callId } = await stopped();
    const { secret } = await makeLink(service, desk, callId);
    const refused = await send(
      `/calls/${callId}/hold/lift`,
      { reason: 'ok' },
      { authorization: `Bearer ${secret}` },
    );
    expect([refused.status, refused.text]).toEqual([404, expect.stringContaining('only the desk does this')]);
  });
});

test('a lash of a day that has not been is refused with the day', async () => {
  const { buildId } = await openCall(service, desk, 'Ahead');
  const ahead = { cylinder: 1, valve: 'intake', lash: '.018 in', readOn: '2199-11-21' };
  const refused = await send(`/builds/${buildId}/lash`, ahead);
  expect([refused.status, refused.text]).toEqual([422, expect.stringContaining('a day still ahead')]);
  const today = new Date().toISOString().slice(0, 10);
  expect((await send(`/builds/${buildId}/lash`, { ...ahead, readOn: today })).status).toBe(201);
});
