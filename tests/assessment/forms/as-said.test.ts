import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { memberOf } from '../../../shared/member.ts';
import { openCall, sendJson } from '../../tools/call.ts';
import { linesOf } from '../../tools/call-faces.ts';
import { type Person, type TestService, testService } from '../../tools/service.ts';

/*
 * Numbers as people say them, on the forms of the computations and of the sheet, and in the JSON of a build. What each
 * can be and what was meant: common practice, no published source.
 */
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
const json = (path: string, body: object, method: 'POST' | 'PUT' = 'POST', head = {}) =>
  sendJson(service, person.bearer, method, `/api/v1/builds/${buildId}/${path}`, body, head);
const work = (computation: string, inputs: object) => json('workings', { computation, inputs });

const LASH = {
  thread: '7/16-20',
  ratio: '1.6',
  mount: 'stud-nut',
  lifter: 'solid',
  lashWanted: '.016',
};
const adjust = (fields: Record<string, string>) =>
  post('/workings/adjuster', { form: 'working', part: 'adjuster', computation: 'adjuster', ...fields });

describe('the adjuster’s form', () => {
  test.each([
    ['.4', /Is it 0\.4 mm/],
    ['0,4', /Is it 0\.4 mm/],
    ['.3', /Is it 0\.3 mm/],
    ['.2', /\.2 in, or 0\.2 mm/],
    ['18 in', /is 18 in; none, or from/],
    ['16 mm', /is 16 mm; none, or from/],
  ])('a lash found of %s is asked or refused, and stays in its field', async (lashFound, asked) => {
    const answer = await adjust({ ...LASH, lashFound });
    expect(answer.statusCode).toBe(422);
    expect(linesOf(answer.body).join(' ')).toMatch(asked);
    expect(answer.body).toContain(`value="${lashFound}"`);
  });

  test('the reading that is picked counts', async () => {
    const answer = await adjust({ ...LASH, lashFound: '.4', 'lashFound~as': '0.4 mm' });
    expect(answer.statusCode).toBe(303);
    const { text } = await sendJson(service, person.bearer, 'GET', `/api/v1/builds/${buildId}/workings`);
    expect(text).toMatch(/"lashFound":\{(?:"value":0\.4,"unit":"mm"|"unit":"mm","value":0\.4)\}/);
  });

  test.each(['.022', '22 thou', '16 mil', 'eighteen thou', '0.55 mm', '0.03 mm'])(
    'a lash found of %s is taken',
    async (lashFound) => {
      expect((await adjust({ ...LASH, lashFound })).statusCode).toBe(303);
    },
  );

  const COUNTED = ['.5', '1/2', 'half a turn', '1/2 turn', 'three quarters', 'one and a half'];
  test.each([...COUNTED, '90 degrees', '180°', '2 flats'])('%s is a number of turns', async (turns) => {
    const { lashWanted: _, ...rest } = LASH;
    // A plunger gives way to so much; a solid lifter’s gap would be closed.
    expect((await adjust({ ...rest, lifter: 'hydraulic', turns })).statusCode).toBe(303);
  });

  test('more turns than a thread has are refused', async () => {
    const { lashWanted: _, ...rest } = LASH;
    const answer = await adjust({ ...rest, turns: '138' });
    expect(answer.statusCode).toBe(422);
    expect(linesOf(answer.body).join(' ')).toContain('from -15 to 15 turns is allowed');
  });
});

describe('a computation of a build by JSON', () => {
  const inputs = { ...LASH, ratio: 1.6, lashWanted: '.016 in' };

  test('is held to the same ranges; the same computation by itself is not', async () => {
    const kept = await work('adjuster', { ...inputs, lashFound: { value: 0.4, unit: 'in' } });
    expect([kept.status, kept.text]).toEqual([422, expect.stringContaining('/inputs/lashFound')]);
    const alone = await sendJson(service, person.bearer, 'POST', '/api/v1/compute/adjuster', {
      ...inputs,
      lashFound: { value: 0.4, unit: 'in' },
    });
    expect(alone.status).toBe(200);
  });

  test('reads what can only be one thing there', async () => {
    expect((await work('adjuster', { ...inputs, lashFound: '22 mil' })).status).toBe(201);
    const { lashWanted: _, ...rest } = inputs;
    expect((await work('adjuster', { ...rest, lifter: 'hydraulic', turns: 'half a turn' })).status).toBe(201);
  });

  test('a stock in another unit is refused item by item', async () => {
    const shim = { shimFitted: '2.60 mm', lashFound: '.12 mm', lashWanted: '.20 mm' };
    const wrong = await work('lash-shim', { ...shim, stock: { values: [2.5, 2.55], unit: 'in' } });
    expect([wrong.status, wrong.text]).toEqual([422, expect.stringContaining('/inputs/stock/values/0')]);
    expect((await work('lash-shim', { ...shim, stock: { values: [2.5], unit: 'mm' } })).status).toBe(201);
  });
});

describe('gaps of the sheet', () => {
  const sheet = (kind: string, typed: string) =>
    post('/sheet', { form: 'valve', cylinder: '2', valve: 'intake', [`figures.${kind}`]: typed });

  test.each([
    ['slot-to-stud', '.4'],
    ['pushrod-to-head', '.4'],
    ['rocker-to-retainer', '.8'],
    ['piston-to-valve', '2.0'],
    ['piston-to-valve', '.4'],
    ['retainer-to-seal', '1,5'],
    ['cover', '.9'],
    ['cover', 'more than .4, less than .5'],
    ['lash', '.2'],
  ])('%s of %s could be millimetres', async (kind, typed) => {
    const answer = await sheet(kind, typed);
    expect(answer.statusCode).toBe(422);
    expect(linesOf(answer.body).join(' ')).toMatch(/ mm/);
  });

  test.each([
    ['slot-to-stud', '.032'],
    ['piston-to-valve', '.288'],
    ['piston-to-valve', '.400'],
    ['cover', '.9 in'],
    ['retainer-to-seal', '1,5 mm'],
    ['lash', '0.03 mm'],
  ])('%s of %s is clear', async (kind, typed) => {
    expect((await sheet(kind, typed)).statusCode).toBe(303);
  });

  test('turns of preload are of the nut, whatever dial is said', async () => {
    const answer = await post('/sheet', {
      form: 'valve',
      cylinder: '2',
      valve: 'intake',
      perTurn: '.100',
      'figures.preload': '1 turn',
    });
    expect(answer.statusCode).toBe(422);
    expect(linesOf(answer.body).join(' ')).toContain('counts turns of the adjuster');
  });

  const readings = (reading: unknown, kind: string) => ({
    readings: [{ cylinder: 2, valve: 'exhaust', kind, reading }],
  });

  test('by JSON a text is read by what it is of', async () => {
    const mil = await json('sheet', readings('16 mil', 'lash'));
    expect([mil.status, mil.text]).toEqual([201, expect.stringContaining('16 thou')]);
    const asked = await json('sheet', readings({ typed: '.4', assume: 'in' }, 'cover'));
    expect([asked.status, asked.text]).toEqual([422, expect.stringContaining('"ambiguities"')]);
    const picked = await json('sheet', readings({ typed: '.4', value: 0.4, unit: 'in' }, 'cover'));
    expect(picked.status).toBe(201);
  });
});

describe('sizes of a part', () => {
  test('a spoken size is read by what it is of', async () => {
    const hole = await json('identification/readings', {
      kind: 'hole-across-trunnion',
      size: 'four thirty-five and a half',
    });
    expect([hole.status, hole.text]).toEqual([201, expect.stringContaining('.4355 in')]);
    const width = await post('/part-readings', {
      form: 'part',
      kind: 'width-across-trunnion',
      size: 'one six',
      tool: 'rule',
    });
    expect(width.statusCode).toBe(422);
    expect(linesOf(width.body).join(' ')).toContain('1.6 in, or 16 mm');
    const picked = await post('/part-readings', {
      form: 'part',
      kind: 'width-across-trunnion',
      size: 'one six',
      'size~as': '1.6 in',
      tool: 'rule',
    });
    expect(picked.statusCode).toBe(303);
  });
});

describe('forms keep no arm of another valve', () => {
  test('the arm that was just put on record is the one to be placed', async () => {
    await json('arms', { name: 'A' });
    const { json: arms } = await sendJson(service, person.bearer, 'GET', `/api/v1/builds/${buildId}/arms`);
    const [first] = Array.isArray(arms.arms) ? arms.arms : [];
    const armId = String(memberOf(first, 'id'));
    await json('placements', { armId, cylinder: 3, valve: 'intake' });
    const kept = await post('/arms', { form: 'arm', name: 'B' });
    expect(kept.statusCode).toBe(303);
    const page = await service.request({ url: `/calls/${callId}/steps/parts`, cookies: person.cookies });
    expect(page.body).toMatch(/<option value="[^"]+" selected>B</);

    const set = (cylinder: string) =>
      post('/set-ups', {
        form: 'set-up',
        cylinder,
        valve: 'intake',
        armId,
        'method.graduation': '.001 in',
        'method.perTurn': '.100 in',
        'method.tool': 'indicator',
        'method.lobeSource': 'indicator',
      });
    const elsewhere = await set('1');
    expect(elsewhere.statusCode).toBe(422);
    expect(linesOf(elsewhere.body).join(' ')).toContain('A sits on 3 intake by the record');
    expect((await set('3')).statusCode).toBe(303);
  });
});
