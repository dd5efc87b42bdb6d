import { afterAll, beforeAll, expect, test } from 'vitest';
import { METHOD, openCall, sendJson, startSetUp } from '../tools/call.ts';
import { at } from '../tools/numbers.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

/** Turns are read on the dial of the set-up, however they are sent. Figures by hand: 5 × .100 + .060. */
let service: TestService;
let desk: Person;
beforeAll(async () => {
  service = await testService();
  desk = await service.person();
});
afterAll(() => service.close());

async function started(method: object = METHOD) {
  const { buildId } = await openCall(service, desk);
  const setUpId = await startSetUp(service, desk, buildId, method);
  const url = `/api/v1/builds/${buildId}`;
  const send = (path: string, body: object) => sendJson(service, desk.bearer, 'POST', `${url}${path}`, body);
  return {
    send,
    get: (path: string) => sendJson(service, desk.bearer, 'GET', `${url}${path}`),
    setUpId,
    keep: (body: object) => send(`/set-ups/${setUpId}/readings`, { kind: 'valve-lift', ...body }),
  };
}

test.each([
  ['a text', '5 turns 60'],
  ['what was typed, with the unit of the field', { typed: '5 turns 60', assume: 'in' }],
  ['in millimetres, which turns are not', { typed: '5 turns 60', assume: 'mm' }],
])('%s', async (_, peak) => {
  const { keep } = await started();
  const { status, json, text } = await keep({ peak });
  expect(status, text).toBe(201);
  expect(json.peak).toMatchObject({ value: 0.56, unit: 'in', typed: '5 turns 60' });
});

test('the lobe lift it was read at, and where the hand stood, are read on it too', async () => {
  const { keep } = await started();
  const { status, text } = await keep({
    kind: 'valve-lift-at',
    peak: '3 turns 20',
    atLobeLift: '2 turns 0',
    zeroReturn: '.001 in',
  });
  expect(status, text).toBe(201);
  expect(text).toMatch(/2 turns 0.* = \.200 in/);
});

test('a dial that was put right counts as it is now: 5 × .050 + .010', async () => {
  const { keep, send, setUpId } = await started();
  const right = { method: { perTurn: '.050 in' }, reason: 'looked at the dial' };
  expect((await send(`/set-ups/${setUpId}/corrections`, right)).status).toBe(201);
  expect(at((await keep({ peak: '5 turns 10' })).json, 'peak', 'value')).toBe(0.26);
});

test('a correction in turns is read the same way; one that cannot be read names its field', async () => {
  const { keep, send } = await started();
  const { json } = await keep({ peak: '4 turns 60' });
  const url = `/readings/${String(json.id)}/corrections`;
  const wrong = await send(url, { peak: '5 turns 160', reason: 'small hand read again' });
  expect(wrong.status).toBe(422);
  expect(at(wrong.json, 'errors', 0)).toMatchObject({ pointer: '/peak', received: '5 turns 160' });
  expect(String(at(wrong.json, 'errors', 0, 'detail'))).toContain('count that as a turn');
  const done = await send(url, { peak: '5 turns 60', reason: 'small hand read again' });
  expect([done.status, at(done.json, 'peak', 'value')]).toEqual([201, 0.56]);
});

test('passes that are there are read again on the dial that was put right, and others stay: 10 × .050 + .028', async () => {
  const { keep, send, get, setUpId } = await started();
  await keep({ peak: '10 turns 28', zeroReturn: '0 turns 1' });
  await keep({ peak: '.530 in' });
  const right = { method: { perTurn: '.050 in' }, reason: 'looked at the dial' };
  expect((await send(`/set-ups/${setUpId}/corrections`, right)).status).toBe(201);
  const { json } = await get('/readings');
  expect(at(json, 'readings', 0)).toMatchObject({
    peak: { typed: '10 turns 28', value: 0.528, unit: 'in' },
    zeroReturn: { value: 0.001, unit: 'in' },
  });
  expect(at(json, 'readings', 1, 'peak', 'value')).toBe(0.53);
  // What is told of it is of the same figures.
  const { quantities } = (await get('/assessment')).json;
  expect(quantities).toContainEqual(expect.objectContaining({ name: 'Valve lift as read', value: 0.529 }));
});
