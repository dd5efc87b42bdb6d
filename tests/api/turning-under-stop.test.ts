import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { METHOD, openCall, sendJson, startSetUp } from '../tools/call.ts';
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

const code = (json: Record<string, unknown>) => String(json.type).split('/').at(-1);

describe('under a stop that readings raise, as under a hold', () => {
  const METHOD_SENT = { cylinder: 1, valve: 'intake', method: METHOD };
  const gap = { cylinder: 5, valve: 'intake', kind: 'piston-to-valve', reading: '.131 in' };
  const lash = { cylinder: 5, valve: 'intake', lash: '.017 in', moment: 'found' };
  const scan = { cylinder: 1, valve: 'intake', readings: [{ crankAngle: '8 deg', gap: '.120 in' }] };
  const mark = { cylinder: 6, valve: 'intake', width: '.041 in', side: 'centred' };
  const atStop = { computation: 'top-dead-centre', inputs: { stopReadings: ['37 deg', '35 deg'] } };
  const peak = { computation: 'centreline', inputs: { before: '62 deg', after: '148 deg' } };

  async function stopped(how: 'held' | 'gap-short' | 'other-call') {
    const before = await openCall(service, desk, 'Kept open');
    const setUpId = await startSetUp(service, desk, before.buildId);
    const build = `/api/v1/builds/${before.buildId}`;
    const send = (to: string, body: object) => sendJson(service, desk.bearer, 'POST', `${build}/${to}`, body);
    if (how === 'gap-short') {
      const short = { ...gap, cylinder: 3, reading: '.052 in' };
      await send('sheet', { spring: 'light', lifter: 'solid', tool: 'indicator', readings: [short] });
    } else {
      const { json } = await sendJson(service, desk.bearer, 'POST', '/api/v1/calls', {
        goal: 'verify-ratio',
        buildLabel: 'The same engine',
        buildId: before.buildId,
      });
      const at = how === 'held' ? before.callId : String(json.id);
      const hold = { reason: 'a tight spot' };
      expect((await sendJson(service, desk.bearer, 'POST', `/api/v1/calls/${at}/hold`, hold)).status).toBe(
        200,
      );
    }
    return { ...before, setUpId, send };
  }

  test.for(['held', 'gap-short', 'other-call'] as const)(
    '%s: what turns the engine is refused',
    async (how) => {
      const { send, setUpId } = await stopped(how);
      const sheet = { spring: 'light', lifter: 'solid', tool: 'indicator' };
      const turning = {
        'set-ups': METHOD_SENT,
        [`set-ups/${setUpId}/readings`]: { kind: 'valve-lift', peak: '.571 in' },
        sheet: { ...sheet, readings: [gap] },
        'sheet/paste': {
          ...sheet,
          text: 'cylinder\tvalve\tlobe lift\n1\tintake\t.341',
          unit: 'in',
          keep: true,
        },
        lash,
        'tip-marks': { ...mark, found: 'fresh-ink' },
        'gap-scans': scan,
        'gap-scans/paste': { cylinder: 1, valve: 'intake', text: '8\t.12', keep: true },
      };
      for (const [to, body] of Object.entries(turning)) {
        const { status, json, text } = await send(to, body);
        expect([to, status, code(json)], text).toEqual([to, 409, 'held']);
        expect(json.detail).toMatch(
          how === 'gap-short' ? /^Do not run it, and do not turn it yet: / : /^Do not turn it: /,
        );
      }
      for (const body of [atStop, peak]) {
        const { status, json } = await send('workings', body);
        expect([body.computation, status, code(json)]).toEqual([body.computation, 409, 'held']);
        expect(json.detail).toContain('it waits until the desk has lifted the stop');
      }
    },
  );

  test.for(['held', 'gap-short', 'other-call'] as const)(
    '%s: what was read before it is kept, with that said',
    async (how) => {
      const { send, setUpId, buildId } = await stopped(how);
      const said = { beforeStop: true };
      const sheet = { spring: 'light', lifter: 'solid', tool: 'indicator', ...said };
      const read = {
        'set-ups': { ...METHOD_SENT, ...said },
        [`set-ups/${setUpId}/readings`]: { kind: 'valve-lift', peak: '.571 in', ...said },
        sheet: { ...sheet, readings: [gap] },
        'sheet/paste': {
          ...sheet,
          text: 'cylinder\tvalve\tlobe lift\n1\tintake\t.341',
          unit: 'in',
          keep: true,
        },
        lash: { ...lash, ...said },
        'tip-marks': { ...mark, found: 'fresh-ink', ...said },
        'gap-scans': { ...scan, ...said },
        'gap-scans/paste': { cylinder: 1, valve: 'intake', text: '8\t.12', keep: true, ...said },
        workings: { ...atStop, ...said },
      };
      for (const [to, body] of Object.entries(read)) {
        const { status, text } = await send(to, body);
        expect([to, status < 300], text).toEqual([to, true]);
      }
      const { json } = await sendJson(
        service,
        desk.bearer,
        'GET',
        `/api/v1/builds/${buildId}/events?limit=200`,
      );
      const events = JSON.stringify(json)
        .split('"seq"')
        .filter((each) => each.includes('"beforeStop":true'));
      expect(events).toHaveLength(Object.keys(read).length);
    },
  );

  test('a form that the stop came before is kept once it is ticked that it was read before', async () => {
    const { callId, setUpId } = await stopped('held');
    const fields = { form: 'reading', setUpId, kind: 'valve-lift', peak: '.571' };
    const send = (more: object) =>
      postForm(service, `/calls/${callId}/readings`, { ...fields, ...more }, { cookies: desk.cookies });
    const refused = await send({});
    expect(refused.statusCode).not.toBe(303);
    expect(refused.body).toMatch(/name="beforeStop"/);
    expect(refused.body).toContain('name="peak" value=".571"');
    expect((await send({ beforeStop: 'yes' })).statusCode).toBe(303);
    const page = await service.request({ url: `/calls/${callId}/steps/ratio`, cookies: desk.cookies });
    expect(linesOf(page.body).join(' ')).toContain('read before the stop, as was said with it');
  });

  test('a page that still has the form, for what needs no turning, offers the same tick', async () => {
    const { callId } = await stopped('held');
    const fields = { ...lash, form: 'lash', cylinder: '5', engine: 'cold', nut: 'held' };
    const send = (more: object) =>
      postForm(service, `/calls/${callId}/lash`, { ...fields, ...more }, { cookies: desk.cookies });
    const refused = await send({});
    const form = /<form[^>]*id="before-stop"[\s\S]*?<\/form>/.exec(refused.body)?.[0] ?? '';
    expect(form).toContain('name="form" value="lash"');
    expect(form).toContain('name="lash" value=".017 in"');
    expect((await send({ beforeStop: 'yes' })).statusCode).toBe(303);
    // What is wrong by itself is put right in its own form first.
    const faulty = await send({ lash: '' });
    expect([faulty.statusCode, faulty.body.includes('name="beforeStop"')]).toEqual([422, false]);
  });

  test.for(['held', 'gap-short', 'other-call'] as const)(
    '%s: what needs no turning stays open',
    async (how) => {
      const { send, setUpId, callId } = await stopped(how);
      const open = {
        'identification/readings': { kind: 'hole-across-trunnion', size: '.436 in' },
        [`set-ups/${setUpId}/readings`]: { kind: 'stated-valve-lift', peak: '.571 in' },
        'tip-marks': { ...mark, found: 'after-running' },
        lash: { ...lash, readOn: '2026-02-03' },
        sheet: { tool: 'caliper', readings: [{ ...gap, kind: 'lobe-lift', reading: '.340 in' }] },
        answers: { question: 'Was it run?', answer: 'no' },
        arms: { name: 'arm on the bench' },
        workings: {
          computation: 'roller-sweep',
          inputs: { pivotToTip: '1.46 in', netLift: '.55 in', setAt: 'mid-lift' },
        },
      };
      for (const [to, body] of Object.entries(open)) {
        const { status, text } = await send(to, body);
        expect([to, status], text).toEqual([to, 201]);
      }
      const before = { spring: 'light', lifter: 'solid', tool: 'indicator', arms: 'before', readings: [gap] };
      expect((await send('sheet', before)).status).toBe(201);
      expect((await send('gap-scans', { ...scan, arms: 'before' })).status).toBe(201);
      const note = { kind: 'note', body: 'the shop looks on Friday' };
      expect(
        (await sendJson(service, desk.bearer, 'POST', `/api/v1/calls/${callId}/notes`, note)).status,
      ).toBe(201);
    },
  );

  test('figures at the stop: the page offers no form for them, and one that was open before is refused alike', async () => {
    const { callId, buildId } = await openCall(service, desk, 'Timing under a stop');
    const at = `/calls/${callId}/steps/timing?of=top-dead-centre`;
    const open = await service.request({ url: at, cookies: desk.cookies });
    expect(open.body).toContain('After TDC, at the stop');
    const hold = { reason: 'a tight spot' };
    await sendJson(service, desk.bearer, 'POST', `/api/v1/calls/${callId}/hold`, hold);
    const held = await service.request({ url: at, cookies: desk.cookies });
    expect(held.body).not.toContain('After TDC, at the stop');
    const late = await postForm(
      service,
      `/calls/${callId}/workings/timing`,
      { form: 'working', part: 'top-dead-centre', before: '35', after: '37' },
      { cookies: desk.cookies },
    );
    expect(late.statusCode).not.toBe(303);
    expect(linesOf(late.body).join(' ')).toContain('it waits until the desk has lifted the stop');
    const json = await sendJson(service, desk.bearer, 'POST', `/api/v1/builds/${buildId}/workings`, atStop);
    expect(json.status).toBe(409);
    const { workings } = (await sendJson(service, desk.bearer, 'GET', `/api/v1/builds/${buildId}/workings`))
      .json;
    expect(workings).toEqual([]);
  });

  test('the hold of one call stands on the other call about the build, and is lifted for both', async () => {
    const { callId, buildId } = await stopped('other-call');
    const { secret } = await makeLink(service, desk, callId);
    const link = { authorization: `Bearer ${secret}` };
    const held = await stopsOf(service, link, buildId);
    expect(held.map(({ sentence }) => sentence)).toEqual(['Do not turn it: a tight spot.']);
    const bench = await service.request({ url: `/calls/${callId}/steps/ratio`, cookies: desk.cookies });
    expect(bench.body).toContain('Do not turn it: a tight spot.');
    const lift = { reason: 'a plug was left in' };
    const url = `/api/v1/calls/${callId}/hold/lift`;
    expect((await sendJson(service, desk.bearer, 'POST', url, lift)).status).toBe(200);
    expect(await stopsOf(service, desk.bearer, buildId)).toEqual([]);
  });

  test('a call says in JSON whether it is stopped, beside the hold that a person set', async () => {
    const { callId, buildId } = await stopped('gap-short');
    const { json } = await sendJson(service, desk.bearer, 'GET', `/api/v1/calls/${callId}`);
    expect([json.held, json.stopped]).toEqual([false, true]);
    const [stop] = await stopsOf(service, desk.bearer, buildId);
    expect(json.stop).toMatchObject([{ id: stop?.id, sentence: stop?.sentence }]);
    const listed = await sendJson(service, desk.bearer, 'GET', '/api/v1/calls?limit=1');
    expect(listed.json.calls).toMatchObject([{ id: callId, held: false, stopped: true, stop: json.stop }]);
    const closed = await sendJson(service, desk.bearer, 'POST', `/api/v1/calls/${callId}/close`, {
      outcome: 'sent to a shop',
    });
    expect(closed.json).toMatchObject({ held: false, stopped: true, stop: json.stop });
  });
});
