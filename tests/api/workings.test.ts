import { afterAll, beforeAll, expect, test } from 'vitest';
import { openCall, sendJson } from '../tools/call.ts';
import { asWritten, textOf } from '../tools/page-text.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

let service: TestService;
let person: Person;
let callId: string;
let buildId: string;

beforeAll(async () => {
  service = await testService();
  person = await service.person();
  ({ callId, buildId } = await openCall(service, person));
});
afterAll(() => service.close());

const post = (path: string, fields: Record<string, string>) =>
  service.request({
    method: 'POST',
    url: `/calls/${callId}${path}`,
    headers: { 'content-type': 'application/x-www-form-urlencoded' },
    cookies: person.cookies,
    payload: new URLSearchParams({ key: crypto.randomUUID(), ...fields }).toString(),
  });
const get = (path: string) => service.request({ url: `/calls/${callId}${path}`, cookies: person.cookies });

test('a computation made within a call is kept with what went in, as JSON and on the page', async () => {
  const inputs = {
    stopReadings: [
      { value: 36.75, unit: 'deg' },
      { value: 35.25, unit: 'deg' },
    ],
  };
  const kept = await sendJson(service, person.bearer, 'POST', `/api/v1/builds/${buildId}/workings`, {
    computation: 'top-dead-centre',
    inputs,
  });
  expect(kept.status).toBe(201);
  // Trade page on degreeing, in check-values section 6: 36.75 and 35.25 average 36, the pointer moves .75.
  expect(kept.text).toContain('"trueReading":{"value":36,"unit":"deg"}');
  const listed = await sendJson(service, person.bearer, 'GET', `/api/v1/builds/${buildId}/workings`);
  expect(listed.json.workings).toHaveLength(1);
  const page = await get('/steps/timing?of=top-dead-centre');
  expect(page.statusCode).toBe(200);
  expect(page.body).toContain('Kept');
  expect(page.body).toContain('<svg');
});

test.each([
  'geometry?of=roller-sweep',
  'timing',
  'timing?of=events',
  'timing?of=cam-timing',
  'adjuster',
  'adjuster?of=lash-hot-cold',
])('the step %s is there, and refuses an empty form with a summary', async (at) => {
  const page = await get(`/steps/${at}`);
  const step = at.split('?')[0] ?? '';
  expect(page.statusCode).toBe(200);
  const first = /name="computation" value="([^"]+)"/.exec(page.body)?.[1] ?? '';
  const part = /name="part" value="([^"]+)"/.exec(page.body)?.[1] ?? '';
  const answer = await post(`/workings/${step}`, { form: 'working', computation: first, part });
  expect(answer.statusCode).toBe(422);
  expect(answer.body).toContain('class="error-summary"');
});

test('half a turn of a 7/16-20 nut at 1.5 is kept from the form: .0417 of lifter seat, not .025', async () => {
  const answer = await post('/workings/adjuster', {
    form: 'working',
    computation: 'adjuster',
    thread: '7/16-20',
    turns: '.5',
    ratio: '1.5',
    mount: 'stud-nut',
    lifter: 'hydraulic',
  });
  expect([answer.statusCode, answer.headers.location]).toEqual([
    303,
    `/calls/${callId}/steps/adjuster?of=adjuster&kept=3`,
  ]);
  const listed = await sendJson(service, person.bearer, 'GET', `/api/v1/builds/${buildId}/workings`);
  // Derived in check-values section 8: turns · pitch · (1 + 1/ratio) = .5 × .05 × 1.6667 = .041667.
  expect(listed.text).toMatch(/"seatMovement":\{[^}]*"value":0\.0416666/);
});

const SOLID = {
  form: 'working',
  computation: 'adjuster',
  thread: '7/16-20',
  ratio: '1.6',
  mount: 'stud-nut',
  lifter: 'solid',
};

test('a lash found and the one wanted are asked for on the step, and the turn is read out: 1/10, 36°, .6 flats', async () => {
  // A turn of this nut changes the gap by .13 in (check-values section 8): .029 to .016 in is a tenth of it.
  const answer = await post('/workings/adjuster', { ...SOLID, lashFound: '.029', lashWanted: '.016' });
  expect(answer.statusCode).toBe(303);
  const page = (await get('/steps/adjuster?of=adjuster')).body;
  expect(page).toContain('name="lashFound"');
  expect(page).toContain('name="preloadWanted"');
  const said = textOf(page);
  expect(said).toContain('tighten .1 turn: 36°, .6 flats');
  expect(said).toMatch(/Direction tighten/);
});

test('the takeover card of an adjuster’s call reads the turn out: .016 to .0225 in is a twentieth back', async () => {
  const made = await sendJson(service, person.bearer, 'POST', '/api/v1/calls', {
    goal: 'adjuster',
    buildLabel: 'A build to adjust',
    callerName: 'A caller',
  });
  await sendJson(service, person.bearer, 'POST', `/api/v1/builds/${String(made.json.buildId)}/workings`, {
    computation: 'adjuster',
    inputs: {
      thread: '7/16-20',
      ratio: 1.6,
      mount: 'stud-nut',
      lifter: 'solid',
      lashFound: '.016 in',
      lashWanted: '.0225 in',
    },
  });
  const url = `/calls/${String(made.json.id)}/takeover`;
  const { body } = await service.request({ url, cookies: person.cookies });
  expect(asWritten(body)).toContain(': Loosen .05 turn, 18°: the lash goes from .016 to .023 in.');
});

test.each([
  ['half of a lash', { lashFound: '.02' }, 'Lash wanted is missing'],
  [
    'turns and a lash',
    { turns: '1', lashFound: '.02', lashWanted: '.01' },
    'Lash found can’t come beside turns: give one or the other',
  ],
  ['a preload of a solid lifter', { preloadWanted: '.03' }, 'Preload wanted a solid lifter has no plunger'],
  ['nothing', {}, 'Turns from zero lash is missing; or the lashes found and wanted, or the preload'],
])('the step refuses %s in the words of its fields', async (_, fields, said) => {
  const answer = await post('/workings/adjuster', { ...SOLID, ...fields });
  expect(answer.statusCode).toBe(422);
  expect(textOf(answer.body)).toContain(said);
});

test('faults of a working stand below /inputs, and an unknown computation is named', async () => {
  const bad = await sendJson(service, person.bearer, 'POST', `/api/v1/builds/${buildId}/workings`, {
    computation: 'lift',
    inputs: { ratio: 'x' },
  });
  expect(bad.status).toBe(422);
  expect(bad.text).toContain('"pointer":"/inputs/lobeLift"');
  const unknown = await sendJson(service, person.bearer, 'POST', `/api/v1/builds/${buildId}/workings`, {
    computation: 'nothing',
    inputs: {},
  });
  expect([unknown.status, unknown.text.includes('"pointer":"/computation"')]).toEqual([422, true]);
});
