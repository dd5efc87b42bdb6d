import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { STEPS } from '../../server/steps/index.ts';
import { openCall, sendJson } from '../tools/call.ts';
import { linesOf } from '../tools/call-faces.ts';
import { htmlFaults } from '../tools/html-faults.ts';
import { tellsInches } from '../tools/inch-figures.ts';
import { postForm } from '../tools/post-form.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';
import { wholeCall } from '../tools/whole-call.ts';

/** What a person wrote down in a note of the whole call is theirs, whatever the call speaks. */
const NOTE = 'coil bind .060';

/** Lengths both ways by the international inch, 25.4 mm exactly (NIST SP 811, B.8). */

let service: TestService;
let owner: Person;
beforeAll(async () => {
  service = await testService();
  owner = await service.person();
});
afterAll(() => service.close());

const send = (method: 'GET' | 'POST' | 'PUT', url: string, body?: object) =>
  sendJson(service, owner.bearer, method, url, body);
const unitsOf = async (buildId: string) => (await send('GET', `/api/v1/builds/${buildId}`)).json.units;

describe('a call has its units', () => {
  test('inches unless it is said, chosen at the start, changed by either side, told on the log once', async () => {
    const { buildId } = await openCall(service, owner);
    expect(await unitsOf(buildId)).toBe('inch');
    const opened = await send('POST', '/api/v1/calls', {
      goal: 'verify-ratio',
      buildLabel: 'Metric from the start',
      units: 'metric',
    });
    const metric = String(opened.json.buildId);
    expect(await unitsOf(metric)).toBe('metric');
    for (let again = 0; again < 2; again += 1)
      expect((await send('PUT', `/api/v1/builds/${metric}/units`, { units: 'inch' })).json.units).toBe(
        'inch',
      );
    const { text } = await send('GET', `/api/v1/builds/${metric}/events`);
    expect(text.match(/"units-chosen"/g)).toHaveLength(2);
    const wrong = await send('PUT', `/api/v1/builds/${metric}/units`, { units: 'furlongs' });
    expect(wrong.status).toBe(422);
    expect(wrong.json.errors).toMatchObject([{ pointer: '/units', received: 'furlongs' }]);
  });

  test('another call about the build keeps them, and another shop never sees the build', async () => {
    const { buildId } = await openCall(service, owner);
    await send('PUT', `/api/v1/builds/${buildId}/units`, { units: 'metric' });
    await send('POST', '/api/v1/calls', { goal: 'verify-ratio', buildLabel: 'again', buildId });
    expect(await unitsOf(buildId)).toBe('metric');
    const stranger = await service.person();
    const put = await sendJson(service, stranger.bearer, 'PUT', `/api/v1/builds/${buildId}/units`, {
      units: 'inch',
    });
    expect(put.status).toBe(404);
    expect(await unitsOf(buildId)).toBe('metric');
  });
});

describe('a whole call in millimetres', () => {
  test('no face tells inches but what was typed; a press takes it back to inches, nothing lost', async () => {
    const { callId, buildId, bench } = await wholeCall(service, owner);
    const before = await send('GET', `/api/v1/builds/${buildId}/assessment`);
    const press = await postForm(
      service,
      '/bench/units',
      { form: 'units', units: 'metric', step: 'ratio' },
      { cookies: bench },
    );
    expect([press.statusCode, press.headers.location]).toEqual([303, '/bench/steps/ratio?kept=34']);
    expect(await unitsOf(buildId)).toBe('metric');
    const steps = STEPS.map(({ name }) => `/steps/${name}`);
    const desk = [...steps, '/report', '/takeover', '/worksheet'].map((each) => ({
      url: `/calls/${callId}${each}`,
      cookies: owner.cookies,
    }));
    const atBench = [...steps, '/report', '/worksheet'].map((each) => ({
      url: `/bench${each}`,
      cookies: bench,
    }));
    for (const { url, cookies } of [...desk, ...atBench]) {
      const { statusCode, body } = await service.request({ url, cookies });
      expect([url, statusCode]).toEqual([url, 200]);
      expect(htmlFaults(body), url).toEqual([]);
      const told = linesOf(body.replaceAll(NOTE, '')).filter(tellsInches);
      expect(told, url).toEqual([]);
    }
    const metric = await send('GET', `/api/v1/builds/${buildId}/assessment`);
    expect(JSON.stringify(metric.json.judgements)).toContain(' mm');
    await postForm(
      service,
      `/calls/${callId}/units`,
      { form: 'units', units: 'inch', step: 'ratio' },
      { cookies: owner.cookies },
    );
    expect((await send('GET', `/api/v1/builds/${buildId}/assessment`)).json).toEqual(before.json);
  });
});

describe('a number that can be read in more than one way', () => {
  const log = (buildId: string, lash: object | string) =>
    send('POST', `/api/v1/builds/${buildId}/lash`, { cylinder: 1, valve: 'intake', lash });

  test('JSON: the readings it can have come back, one of them is sent, and what was typed stays', async () => {
    const { buildId } = await openCall(service, owner);
    const asked = await log(buildId, { typed: '.4', assume: 'in' });
    expect(asked.status).toBe(422);
    expect(asked.json.errors).toMatchObject([
      { pointer: '/lash', ambiguities: [{ readAs: '0.4 mm', quantity: { value: 0.4, unit: 'mm' } }] },
    ]);
    const kept = await log(buildId, { typed: '.4', value: 0.4, unit: 'mm' });
    expect(kept.status).toBe(201);
    expect(kept.text).toContain('"typed":".4"');
    const mil = await log(buildId, '18 mil');
    expect(mil.text).toContain('"readAs":"18 thou = .018 in"');
  });

  test('JSON: a unit that the field can’t have is refused with what came and what is allowed', async () => {
    const { buildId } = await openCall(service, owner);
    for (const lash of ['18 in', '16 mm', { value: 18, unit: 'in' }]) {
      const { status, json } = await log(buildId, lash);
      expect(status).toBe(422);
      expect(json.errors).toMatchObject([{ pointer: '/lash', code: 'out-of-range', received: lash }]);
      expect(JSON.stringify(json.errors)).toMatch(
        /is 1[68][.\d]* (in|mm); none, or from .*0\.?[\d.]* in.* is allowed/,
      );
    }
  });

  test('page: the readings stand below the field, one is picked, and what was typed stays', async () => {
    const { callId, buildId } = await openCall(service, owner);
    const post = (fields: Record<string, string>) =>
      postForm(
        service,
        `/calls/${callId}/spec/cam`,
        { form: 'cam', part: '', revision: '1', ...fields },
        { cookies: owner.cookies },
      );
    const asked = await post({ 'cam.intake.lobeLift': '12.24', 'cam.exhaust.lobeLift': '482' });
    expect(asked.statusCode).toBe(422);
    expect(htmlFaults(asked.body)).toEqual([]);
    expect(asked.body).toContain('name="cam.intake.lobeLift~as" value="12.24 mm"');
    expect(asked.body).toContain('name="cam.exhaust.lobeLift~as" value="482 thou"');
    expect(asked.body).toContain('value="12.24"');
    const kept = await post({
      'cam.intake.lobeLift': '12.24',
      'cam.intake.lobeLift~as': '12.24 mm',
      'cam.exhaust.lobeLift': '482',
      'cam.exhaust.lobeLift~as': '482 thou',
    });
    expect(kept.statusCode).toBe(303);
    const { json } = await send('GET', `/api/v1/builds/${buildId}`);
    expect(json.spec).toMatchObject({
      cam: {
        intake: { lobeLift: { typed: '12.24', value: 12.24, unit: 'mm' } },
        exhaust: { lobeLift: { typed: '482', value: 482, unit: 'thou' } },
      },
    });
  });

  test('page: a pick of what stood there before counts for nothing', async () => {
    const { callId } = await openCall(service, owner);
    const { statusCode, body } = await postForm(
      service,
      `/calls/${callId}/spec/cam`,
      {
        form: 'cam',
        part: '',
        revision: '1',
        'cam.intake.lobeLift': '9.6',
        'cam.intake.lobeLift~as': '12.24 mm',
      },
      { cookies: owner.cookies },
    );
    expect(statusCode).toBe(422);
    expect(body).toContain('value="9.6 mm"');
  });

  test('page, in millimetres: a bare number is millimetres, and one that can’t be is asked about', async () => {
    const { callId, buildId } = await openCall(service, owner);
    await send('PUT', `/api/v1/builds/${buildId}/units`, { units: 'metric' });
    const post = (fields: Record<string, string>) =>
      postForm(
        service,
        `/calls/${callId}/spec/cam`,
        { form: 'cam', part: '', revision: '1', ...fields },
        { cookies: owner.cookies },
      );
    const asked = await post({ 'cam.intake.lobeLift': '.482' });
    expect(asked.statusCode).toBe(422);
    expect(asked.body).toContain('name="cam.intake.lobeLift~as" value="0.482 in"');
    expect((await post({ 'cam.intake.lobeLift': '12.24' })).statusCode).toBe(303);
    const { json } = await send('GET', `/api/v1/builds/${buildId}`);
    expect(json.spec).toMatchObject({
      cam: { intake: { lobeLift: { typed: '12.24', value: 12.24, unit: 'mm' } } },
    });
  });
});
