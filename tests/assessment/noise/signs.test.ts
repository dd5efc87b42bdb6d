import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { sendJson } from '../../tools/call.ts';
import { linesOf } from '../../tools/call-faces.ts';
import { makeLink } from '../../tools/filled-call.ts';
import { at } from '../../tools/numbers.ts';
import { postForm } from '../../tools/post-form.ts';
import { type Person, type TestService, testService } from '../../tools/service.ts';
import { stopsOf } from '../../tools/stopped-call.ts';
import { playNoise } from './play.ts';

let service: TestService;
let desk: Person;
beforeAll(async () => {
  service = await testService();
  desk = await service.person();
});
afterAll(() => service.close());

const SIGNS = ['metal', 'broken', 'tight', 'contact'] as const;
const sign = (answer: string) => ({ question: 'noise-signs', code: 'noise-signs', answer });
const lashNow = { cylinder: 6, valve: 'intake', lash: '.018 in', moment: 'found' };

const post = (path: string, body: object, who: { readonly authorization: string } = desk.bearer) =>
  sendJson(service, who, 'POST', `/api/v1${path}`, body);

describe('a sign of damage', () => {
  test.for(SIGNS)('%s: one press at the bench stops it, with the sign as the reason', async (answer) => {
    const { callId, buildId } = await playNoise(service, desk, 'noise-or-failure');
    const { bench } = await makeLink(service, desk, callId);
    const cookies = { 'benchcall-bench': bench };
    const page = await service.request({ url: '/bench/steps/noise', cookies });
    expect(page.body).toContain(`name="answer" value="${answer}"`);
    // What the form of the buttons carries, beside the button that was pressed.
    const fields = { step: 'noise', question: 'noise-signs', code: 'noise-signs', answer };
    const pressed = await postForm(service, '/bench/answers', fields, { cookies });
    expect([pressed.statusCode, pressed.headers.location]).toEqual([303, '/bench/steps/noise?kept=5']);
    const [stop] = await stopsOf(service, desk.bearer, buildId);
    expect(stop).toMatchObject({ code: 'sign-of-damage', from: 'person', answered: true });
    const after = linesOf((await service.request({ url: '/bench/steps/noise', cookies })).body).join(' ');
    expect(after).toContain(String(stop?.sentence));
  });

  test('what turns it is refused; what takes no turning is kept', async () => {
    const { buildId } = await playNoise(service, desk, 'noise-or-failure');
    expect((await post(`/builds/${buildId}/answers`, sign('metal'))).status).toBe(201);
    expect((await post(`/builds/${buildId}/lash`, lashNow)).status).toBe(409);
    const earlier = { ...lashNow, readOn: '2026-02-01' };
    expect((await post(`/builds/${buildId}/lash`, earlier)).status).toBe(201);
    const nut = { question: 'noise-nut', code: 'noise-nut', answer: 'held' };
    expect((await post(`/builds/${buildId}/answers`, nut)).status).toBe(201);
  });

  test('telling otherwise later does not lift it: only the desk does, with a reason; told again it stands again', async () => {
    const { callId, buildId } = await playNoise(service, desk, 'noise-or-failure');
    const { secret } = await makeLink(service, desk, callId);
    const builder = { authorization: `Bearer ${secret}` };
    await post(`/builds/${buildId}/answers`, sign('metal'));
    for (const who of [builder, desk.bearer]) {
      expect((await post(`/builds/${buildId}/answers`, sign('none'), who)).status).toBe(201);
      expect((await stopsOf(service, desk.bearer, buildId)).map(({ id }) => id)).toEqual([
        'stop:sign-of-damage:metal',
      ]);
    }
    const lift = (who: { readonly authorization: string }) =>
      post(`/calls/${callId}/hold/lift`, { reason: 'the flakes were paint, looked at by a shop' }, who);
    // For a builder there is no such thing to do.
    expect((await lift(builder)).status).toBe(404);
    expect((await lift(desk.bearer)).status).toBe(200);
    expect(await stopsOf(service, desk.bearer, buildId)).toEqual([]);
    await post(`/builds/${buildId}/answers`, sign('metal'));
    expect(await stopsOf(service, desk.bearer, buildId)).toHaveLength(1);
  });

  test('on a call about something else it stops it as well', async () => {
    const { buildId } = await playNoise(service, desk, 'verify-ratio');
    await post(`/builds/${buildId}/answers`, sign('broken'));
    expect((await post(`/builds/${buildId}/lash`, lashNow)).status).toBe(409);
  });
});

describe('an answer', () => {
  test('said again puts right what was said before', async () => {
    const play = await playNoise(service, desk, 'noise-or-failure');
    const first = async () => at(await play.get('/noise'), 'candidates', 0, 'cause');
    await play.enter({ ask: 'noise-nut', answer: 'moved' });
    expect(await first()).toBe('nut-lock');
    await play.enter({ ask: 'noise-nut', answer: 'held: looked again' });
    expect(await first()).not.toBe('nut-lock');
    const { answers } = await play.get('/export');
    expect(answers).toHaveLength(2);
  });

  test('that is none of those it may be is refused with what came and what is allowed', async () => {
    const { buildId } = await playNoise(service, desk, 'noise-or-failure');
    const wrong = { question: 'noise-nut', code: 'noise-nut', answer: 'loose' };
    const refused = await post(`/builds/${buildId}/answers`, wrong);
    expect(refused.status).toBe(422);
    expect(refused.text).toContain('came as “loose”; it begins with one of moved, held, off, not-known');
    expect(at(refused.json, 'errors', 0, 'pointer')).toBe('/answer');
  });

  test('names a valve with its cylinder or not at all, and only where it is one valve', async () => {
    const { buildId } = await playNoise(service, desk, 'noise-or-failure');
    const one = { question: 'noise-which', code: 'noise-which', answer: 'one', cylinder: 6 };
    expect(at((await post(`/builds/${buildId}/answers`, one)).json, 'errors', 0, 'pointer')).toBe('/valve');
    const nut = { question: 'noise-nut', code: 'noise-nut', answer: 'held', cylinder: 6, valve: 'intake' };
    const refused = await post(`/builds/${buildId}/answers`, nut);
    expect([refused.status, refused.text]).toEqual([422, expect.stringContaining('one valve alone')]);
    // A cylinder may have several valves of a kind: the second intake is named as such.
    for (const valve of ['exhaust', 'intake-2']) {
      const kept = await post(`/builds/${buildId}/answers`, { ...one, valve });
      expect([kept.status, kept.json.cylinder, kept.json.valve], kept.text).toEqual([201, 6, valve]);
    }
  });

  test('typed into the form comes back with what was typed, and is on the tape once it is kept', async () => {
    const { callId } = await playNoise(service, desk, 'noise-or-failure');
    const fields = { step: 'noise', question: 'noise-which', code: 'noise-which', words: 'the loud one' };
    const url = `/calls/${callId}/answers`;
    const back = await postForm(
      service,
      url,
      { ...fields, form: 'answer-1', answer: 'one', cylinder: '6' },
      {
        cookies: desk.cookies,
      },
    );
    expect(back.statusCode).not.toBe(303);
    expect(back.body).toContain('the loud one');
    const kept = await postForm(
      service,
      url,
      { ...fields, answer: 'one', cylinder: '6', valve: 'exhaust' },
      { cookies: desk.cookies },
    );
    expect(kept.statusCode).toBe(303);
    const page = await service.request({ url: `/calls/${callId}/steps/noise`, cookies: desk.cookies });
    expect(linesOf(page.body).join(' ')).toContain('One valve, 6 exhaust, “the loud one”');
    // An engine with one valve of a kind is not asked for a second.
    expect(page.body).toContain('<option value="exhaust"');
    expect(page.body).not.toContain('<option value="intake-2"');
  });
});
