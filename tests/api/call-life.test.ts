import { afterAll, beforeAll, expect, test } from 'vitest';
import { openCall, sendJson } from '../tools/call.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

let service: TestService;
let person: Person;

beforeAll(async () => {
  service = await testService();
  person = await service.person();
});
afterAll(() => service.close());

test('a call is held and let go, its promise is kept, and it is closed, all by JSON', async () => {
  const { callId } = await openCall(service, person);
  const post = (path: string, body?: unknown) =>
    sendJson(service, person.bearer, 'POST', `/api/v1/calls/${callId}${path}`, body);

  expect((await post('/hold', { reason: 'a valve touched' })).json).toMatchObject({
    held: true,
    holdReason: 'a valve touched',
  });
  const lifted = await post('/hold/lift', { reason: 'looked at, nothing bent' });
  expect([lifted.status, lifted.json.held]).toEqual([200, false]);

  const promise = { kind: 'promise', body: 'send the sheet', owner: 'Test person', due: '2026-12-01' };
  const kept = await post('/notes', promise);
  expect(kept.status).toBe(201);
  expect(kept.json).toMatchObject(promise);
  expect(kept.json).not.toHaveProperty('doneAt');
  const done = await post(`/notes/${String(kept.json.id)}/done`);
  expect([done.status, done.json]).toEqual([200, { done: kept.json.id }]);

  const open = await sendJson(service, person.bearer, 'GET', `/api/v1/calls/${callId}`);
  expect(open.json).not.toHaveProperty('closedAt');
  const closed = await post('/close', { outcome: 'the mark was right' });
  expect(closed.status).toBe(200);
  expect(Date.parse(String(closed.json.closedAt))).toBeGreaterThan(Date.parse(String(closed.json.openedAt)));
});
