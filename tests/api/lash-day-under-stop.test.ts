import { afterAll, beforeAll, expect, test } from 'vitest';
import { openCall, sendJson } from '../tools/call.ts';
import { type ClockedService, clockedService } from '../tools/clocked-service.ts';
import type { Person } from '../tools/service.ts';

let at: ClockedService;
let desk: Person;
beforeAll(async () => {
  at = await clockedService();
  desk = await at.service.person();
});
afterAll(() => at.service.close());

/*
 * At eight in the evening of the 13th, eight hours west of Greenwich, universal time has four in the morning of the 14th:
 * a lash of the 13th was read this very evening. By the westernmost clock, twelve hours behind, the 13th is over at noon of
 * the 14th (zones of the world, general knowledge).
 */
test('a lash of this evening is no history of a stopped engine, wherever the shop is', async () => {
  const { callId, buildId } = await openCall(at.service, desk, 'Evening');
  const hold = { reason: 'a tight spot' };
  await sendJson(at.service, desk.bearer, 'POST', `/api/v1/calls/${callId}/hold`, hold);
  const line = { cylinder: 5, valve: 'intake', lash: '.017 in' };
  const send = (readOn: string) =>
    sendJson(at.service, desk.bearer, 'POST', `/api/v1/builds/${buildId}/lash`, { ...line, readOn });
  const tomorrow = new Date(at.clock.now + 86_400_000).toISOString().slice(0, 10);
  const today = new Date(at.clock.now).toISOString().slice(0, 10);
  at.clock.now = Date.parse(`${tomorrow}T04:00:00Z`);
  expect((await send(today)).status).toBe(409);
  at.clock.now = Date.parse(`${tomorrow}T12:30:00Z`);
  expect((await send(today)).status).toBe(201);
});
