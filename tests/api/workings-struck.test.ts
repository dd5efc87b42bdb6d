import { afterAll, beforeAll, expect, test } from 'vitest';
import { openCall, sendJson } from '../tools/call.ts';
import { linesOf } from '../tools/call-faces.ts';
import { makeLink } from '../tools/filled-call.ts';
import { postForm } from '../tools/post-form.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';
import { stopsOf } from '../tools/stopped-call.ts';

let service: TestService;
let desk: Person;
beforeAll(async () => {
  service = await testService();
  desk = await service.person();
});
afterAll(() => service.close());

/* Two turns of 7/16-20 at 1.6 press .1625 in (.050 × 1.625 a turn), past the .150 in that such a plunger goes: invented. */
const PRELOAD = {
  computation: 'lifter-preload',
  inputs: { thread: '7/16-20', mount: 'stud-nut', ratio: 1.6, turns: 2, liftersTravel: '.150 in' },
};

async function withPreload() {
  const { callId, buildId } = await openCall(service, desk);
  const url = `/api/v1/builds/${buildId}/workings`;
  const kept = await sendJson(service, desk.bearer, 'POST', url, PRELOAD);
  expect(kept.status, kept.text).toBe(201);
  const id = String(kept.json.id);
  const strike = (body: object, by: { readonly authorization?: string } = desk.bearer) =>
    sendJson(service, by, 'POST', `${url}/${id}/corrections`, body);
  return { callId, buildId, id, url, strike };
}

const stops = async (buildId: string) =>
  (await stopsOf(service, desk.bearer, buildId)).map(({ code }) => code);

const linesAt = async (callId: string, path: string) => {
  const { statusCode, body } = await service.request({
    url: `/calls/${callId}${path}`,
    cookies: desk.cookies,
  });
  expect(statusCode, path).toBe(200);
  return linesOf(body);
};

test('JSON: a kept computation is struck out with its reason, and what it stopped goes on', async () => {
  const { callId, buildId, id, url, strike } = await withPreload();
  expect(await stops(buildId)).toEqual(['plunger-bottomed']);
  const unsaid = await strike({ reason: ' ' });
  expect([unsaid.status, unsaid.json.errors]).toMatchObject([422, [{ pointer: '/reason' }]]);
  const struck = await strike({ reason: 'the turns were of the other rocker' });
  expect(struck.status, struck.text).toBe(201);
  expect(struck.json).toMatchObject({
    struck: true,
    replaces: id,
    reason: 'the turns were of the other rocker',
  });
  expect(await stops(buildId)).toEqual([]);
  const { workings } = (await sendJson(service, desk.bearer, 'GET', url)).json;
  expect(workings).toMatchObject([
    { id, struck: false, replacedBy: struck.json.id },
    { id: struck.json.id, struck: true },
  ]);
  expect((await strike({ reason: 'again' })).status).toBe(409);
  const { json } = await sendJson(service, desk.bearer, 'GET', `/api/v1/builds/${buildId}/assessment`);
  expect(JSON.stringify(json.headlines)).not.toContain('headline:working:preload');
  const said = 'struck out by Test person: the turns were of the other rocker';
  expect((await linesAt(callId, '/report')).some((line) => line.includes(said))).toBe(true);
  for (const path of ['/steps/adjuster?of=lifter-preload', '/steps/notes'])
    expect(
      (await linesAt(callId, path)).some((line) => line.includes(said)),
      path,
    ).toBe(true);
});

test.each(['adjuster', 'notes'])('page: struck out from the step %s, with a reason alone', async (step) => {
  const { callId, buildId, id } = await withPreload();
  const own = `/workings/${step}/${id}`;
  const page = await linesAt(callId, own);
  expect(page.join('\n')).toMatch(/Strike out: .*preload/i);
  const post = (reason: string) =>
    postForm(service, `/calls/${callId}${own}`, { act: 'strike', reason }, { cookies: desk.cookies });
  const unsaid = await post('');
  expect([unsaid.statusCode, unsaid.body.includes('must not be empty')]).toEqual([422, true]);
  expect((await post('counted from the wrong mark')).statusCode).toBe(303);
  expect(await stops(buildId)).toEqual([]);
  const tape = await linesAt(callId, '/steps/notes');
  expect(tape.join('\n')).toContain('Worked out, lifter preload: struck out, counted from the wrong mark');
});

test('a builder strikes out a computation of theirs, and none that a stop rests on', async () => {
  const { callId, buildId, url, strike } = await withPreload();
  const authorization = `Bearer ${(await makeLink(service, desk, callId)).secret}`;
  const refused = await strike({ reason: 'not mine' }, { authorization });
  expect([refused.status, refused.json.code]).toEqual([409, 'stop-rests-on-it']);
  expect(await stops(buildId)).toEqual(['plunger-bottomed']);
  const kept = await sendJson(service, desk.bearer, 'POST', url, {
    computation: 'lift',
    inputs: { lobeLift: '.350 in', ratio: 1.6 },
  });
  const done = await sendJson(
    service,
    { authorization },
    'POST',
    `${url}/${String(kept.json.id)}/corrections`,
    {
      reason: 'the lobe is another',
    },
  );
  expect(done.status, done.text).toBe(201);
});
