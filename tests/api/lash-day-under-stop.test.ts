import { afterAll, beforeAll, expect, test } from 'vitest';
import { openCall, sendJson } from '../tools/call.ts';
import { type ClockedService, clockedService } from '../tools/clocked-service.ts';
import type { Person } from '../tools/service.ts';

const DAY = 86_400_000;
const dayOf = (moment: number): string => new Date(moment).toISOString().slice(0, 10);

let at: ClockedService;
let desk: Person;
beforeAll(async () => {
  at = await clockedService();
  at.clock.now = Date.parse(`${dayOf(at.clock.now + DAY)}T04:00:00Z`);
  desk = await at.service.person();
});
afterAll(() => at.service.close());

/*
 * At eight in the evening of the 13th, eight hours west of Greenwich, universal time has four in the morning of the 14th:
 * a lash of the 13th was read this very evening, and one of the 12th was not (zones of the world, general knowledge).
 */
test('a lash of this evening is no history of a stopped engine, wherever the shop is', async () => {
  const { callId, buildId } = await openCall(at.service, desk, 'Evening');
  const hold = { reason: 'a tight spot' };
  await sendJson(at.service, desk.bearer, 'POST', `/api/v1/calls/${callId}/hold`, hold);
  const line = { cylinder: 5, valve: 'intake', lash: '.017 in' };
  const send = (readOn: string) =>
    sendJson(at.service, desk.bearer, 'POST', `/api/v1/builds/${buildId}/lash`, { ...line, readOn });
  const refused = await send(dayOf(at.clock.now - DAY));
  expect([refused.status, refused.text]).toEqual([409, expect.stringContaining('an earlier day')]);
  expect((await send(dayOf(at.clock.now - 2 * DAY))).status).toBe(201);
});
