import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { buildApp } from '../../server/app.ts';
import { memberOf } from '../../shared/member.ts';
import { openCall, sendJson } from '../tools/call.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

let service: TestService;
let person: Person;
let stranger: Person;

beforeAll(async () => {
  service = await testService();
  person = await service.person();
  stranger = await service.person();
});
afterAll(() => service.close());

const log = (buildId: string) => `/api/v1/builds/${buildId}/lash`;
const keep = (buildId: string, body: object, who: Person = person) =>
  sendJson(service, who.bearer, 'POST', log(buildId), {
    cylinder: 6,
    valve: 'exhaust',
    engine: 'hot',
    ...body,
  });
const read = (buildId: string) => sendJson(service, person.bearer, 'GET', log(buildId));

describe('the lash log of a valve', () => {
  test('lines stand by their day, not by when they were entered, and the growth is asked about', async () => {
    const { buildId } = await openCall(service, person);
    await keep(buildId, { lash: '.025 in', readOn: '2026-03-20', nut: 'held' });
    await keep(buildId, { lash: '.018 in', readOn: '2026-03-14', moment: 'set', doneBy: 'the owner' });
    const { json } = await read(buildId);
    expect(json.lines).toMatchObject([
      { on: '2026-03-14', moment: 'set', doneBy: 'the owner' },
      { on: '2026-03-20', moment: 'found', nut: 'held' },
    ]);
    expect(json.growths).toMatchObject([
      { cylinder: 6, atLeast: { value: expect.closeTo(0.007, 9) }, heatDiffers: false },
    ]);
    expect(json.questions).toMatchObject([{ code: 'lash-grew', ask: 'Is something wearing on this valve?' }]);
    expect(json.stop).toBe(false);
  });

  test('it is the sheet’s lash, the newest one, and no mean of days', async () => {
    const { buildId } = await openCall(service, person);
    await keep(buildId, { lash: '.018 in', moment: 'set' });
    await keep(buildId, { lash: '.026 in' });
    const { text } = await sendJson(service, person.bearer, 'GET', `/api/v1/builds/${buildId}/sheet`);
    expect(text).toMatch(/"kind":"lash",[^{]*"value":\{"value":0\.02(6|5999)[^}]*\}[^}]*"passes":1/);
  });

  test('a line put right on the sheet keeps its day and its nut; struck out, it is gone from the log', async () => {
    const { buildId } = await openCall(service, person);
    await keep(buildId, { lash: '.018 in', moment: 'set', readOn: '2026-03-14' });
    const { json } = await keep(buildId, { lash: '.062 in', nut: 'moved', readOn: '2026-03-20' });
    const id = (line: unknown) => String(memberOf(line, 'id'));
    const fix = (readingId: string, body: object) =>
      sendJson(
        service,
        person.bearer,
        'POST',
        `/api/v1/builds/${buildId}/sheet/readings/${readingId}/corrections`,
        body,
      );
    const fixed = await fix(id(json.reading), { reading: '.026 in', reason: 'figures the wrong way round' });
    expect(fixed.status).toBe(201);
    const { json: listed } = await read(buildId);
    expect(listed.lines).toMatchObject([
      { on: '2026-03-14' },
      { on: '2026-03-20', nut: 'moved', reading: { value: 0.026 } },
    ]);
    await fix(String(fixed.json.id), { reason: 'other engine' });
    const { json: after } = await read(buildId);
    expect([after.lines, after.growths]).toEqual([expect.objectContaining({ length: 1 }), []]);
    const exported = await sendJson(service, person.bearer, 'GET', `/api/v1/builds/${buildId}/export`);
    expect(exported.json.lashLog).toHaveLength(4);
  });

  test('growing again after it was set again is a stop', async () => {
    const { buildId } = await openCall(service, person);
    for (const [lash, moment] of [
      ['.018 in', 'set'],
      ['.026 in', 'found'],
      ['.018 in', 'set'],
      ['.025 in', 'found'],
    ])
      await keep(buildId, { lash, moment });
    expect((await read(buildId)).json.stop).toBe(true);
  });

  test('the shop’s own limit counts', async () => {
    const chief = await service.person({ roles: ['desk', 'administrator'] });
    const { buildId } = await openCall(service, chief);
    await sendJson(service, chief.bearer, 'PUT', '/api/v1/limits', {
      limits: [{ name: 'lash-growth', value: '.010 in', source: 'our own record' }],
    });
    await keep(buildId, { lash: '.018 in', moment: 'set' }, chief);
    await keep(buildId, { lash: '.026 in' }, chief);
    const { json } = await sendJson(service, chief.bearer, 'GET', log(buildId));
    expect([json.questions, json.limit]).toEqual([
      [],
      { growth: { value: 0.01, unit: 'in' }, source: 'our own record' },
    ]);
  });
});

test.each([
  [{ lash: undefined }, '/lash', 'required'],
  [{ lash: '.02 lb' }, '/lash', 'wrong-dimension'],
  [{ engine: 'warm' }, '/engine', 'not-allowed'],
  [{ nut: 'loose' }, '/nut', 'not-allowed'],
  [{ readOn: '2026-02-30' }, '/readOn', 'not-allowed'],
  [{ readOn: 'Tuesday' }, '/readOn', 'not-allowed'],
  [{ valve: 'both' }, '/valve', 'not-allowed'],
])('bad input names the field: %j', async (change, pointer, code) => {
  const { buildId } = await openCall(service, person);
  const answer = await keep(buildId, { lash: '.02 in', ...change });
  expect(answer.status).toBe(422);
  expect(answer.json.errors).toEqual(expect.arrayContaining([expect.objectContaining({ pointer, code })]));
});

test('another shop sees no log and keeps nothing in it', async () => {
  const { buildId } = await openCall(service, person);
  await keep(buildId, { lash: '.02 in' });
  expect((await sendJson(service, stranger.bearer, 'GET', log(buildId))).status).toBe(404);
  expect((await keep(buildId, { lash: '.03 in' }, stranger)).status).toBe(404);
  expect((await read(buildId)).json.lines).toHaveLength(1);
});

test('which lines are history goes by the clock of the service, not by that of the machine', async () => {
  const { callId, buildId } = await openCall(service, person);
  const hold = { reason: 'a tight spot' };
  await sendJson(service, person.bearer, 'POST', `/api/v1/calls/${callId}/hold`, hold);
  const logged = async (now: string, readOn: string) => {
    const app = await buildApp({ ...service.deps, now: () => new Date(now) });
    const done = await app.inject({
      method: 'POST',
      url: log(buildId),
      headers: { ...person.bearer, 'content-type': 'application/json' },
      payload: JSON.stringify({ cylinder: 6, valve: 'exhaust', lash: '.018 in', readOn }),
    });
    await app.close();
    return done.statusCode;
  };
  expect(await logged('2026-02-03T12:00:00Z', '2026-02-03')).toBe(409);
  expect(await logged('2026-02-03T12:00:00Z', '2026-02-02')).toBe(201);
  // Eight in the evening of the 2nd, eight hours west of Greenwich: a lash of the 2nd was read this very evening.
  expect(await logged('2026-02-03T04:00:00Z', '2026-02-02')).toBe(409);
  expect(await logged('2026-02-03T04:00:00Z', '2026-02-01')).toBe(201);
});
