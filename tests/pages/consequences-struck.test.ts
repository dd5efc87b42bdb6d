import { afterAll, beforeAll, expect, test } from 'vitest';
import { describeBuild, keepReading, METHOD, openCall, sendJson, startSetUp } from '../tools/call.ts';
import { postForm } from '../tools/post-form.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

let service: TestService;
let person: Person;
beforeAll(async () => {
  service = await testService();
  person = await service.person();
});
afterAll(() => service.close());

const SPEC = {
  cam: { assumedRatio: 1.5, intake: { lobeLift: '.350 in' } },
  springs: { installedHeight: '1.900 in', solidHeight: '1.150 in' },
};

/** Figures of 1 intake on the tape twice: their lines. */
async function keptTwice() {
  const { buildId, callId } = await openCall(service, person, 'Struck');
  await describeBuild(service, person, buildId, SPEC);
  const setUpId = await startSetUp(service, person, buildId, {
    ...METHOD,
    spring: 'light',
    lobeSource: 'card',
  });
  for (const lift of ['.560 in', '.560 in', '.560 in'])
    await keepReading(service, person, buildId, setUpId, 'valve-lift', lift);
  const keep = async () => {
    const url = `/api/v1/builds/${buildId}/set-ups/${setUpId}/consequences`;
    const { status, json, text } = await sendJson(service, person.bearer, 'POST', url, {});
    expect(status, text).toBe(201);
    return Number(json.seq);
  };
  const lines = [await keep(), await keep()];
  return { buildId, callId, lines };
}

const see = async (callId: string, name: string): Promise<string> => {
  const { statusCode, body } = await service.request({
    url: `/calls/${callId}/${name}`,
    cookies: person.cookies,
  });
  expect(statusCode, name).toBe(200);
  return body;
};

test('a line is struck out over JSON with its reason, once; the tape and the page say so', async () => {
  const {
    buildId,
    callId,
    lines: [line = 0],
  } = await keptTwice();
  const url = `/api/v1/builds/${buildId}/consequences/${line}/corrections`;
  const strike = (at: string, body: object) => sendJson(service, person.bearer, 'POST', at, body);
  expect((await strike(url, { reason: ' ' })).status).toBe(422);
  const done = await strike(url, { reason: 'the other arms were on' });
  expect(done.status, done.text).toBe(201);
  expect(done.json).toMatchObject({ line, reason: 'the other arms were on' });
  expect((await strike(url, { reason: 'again' })).status).toBe(409);
  expect((await strike(url.replace(`/${line}/`, '/1/'), { reason: 'no such line' })).status).toBe(404);
  const page = await see(callId, 'steps/consequences');
  expect(page).toContain('struck: What the ratio does on 1 intake');
  expect(page).toContain(`What the ratio does, line ${line}: struck out, the other arms were on`);
});

test('and on the page: each line leads to its form, and the reason is asked', async () => {
  const {
    callId,
    lines: [line = 0, other = 0],
  } = await keptTwice();
  const address = `/calls/${callId}/consequences/${line}`;
  expect(await see(callId, 'steps/consequences')).toContain(`href="${address}"`);
  expect(await see(callId, `consequences/${line}`)).toContain('Strike it out');
  const post = (reason: string) =>
    postForm(service, address, { act: 'strike', reason }, { cookies: person.cookies });
  expect((await post('')).statusCode).toBe(422);
  expect((await post('counted from the wrong mark')).statusCode).toBe(303);
  const page = await see(callId, 'steps/consequences');
  expect(page).not.toContain(`href="${address}"`);
  expect(page).toContain(`href="/calls/${callId}/consequences/${other}"`);
  expect(page).toContain('counted from the wrong mark');
});
