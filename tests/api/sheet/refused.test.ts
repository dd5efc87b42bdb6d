import { describe, expect, test } from 'vitest';
import { openCall, sendJson } from '../../tools/call.ts';
import { at } from '../../tools/numbers.ts';
import { postForm } from '../../tools/post-form.ts';
import { HOW, lift, sheetService } from './tools.ts';

const { open, post, sheetOf } = sheetService();

const list = (value: unknown): unknown[] => (Array.isArray(value) ? value : []);
/** Invented intakes; the fifth is a turn of a usual dial (.100, common practice) low at the valve. */
const LIFTS = ['.565', '.564', '.566', '.565', '.464', '.565', '.566', '.564'];
const SIXTEEN = LIFTS.flatMap((each, index) => [
  lift(index + 1, `.35${index % 3} in`, 'lobe-lift'),
  lift(index + 1, `${each} in`),
]);
/** What the figures raise: how the lash was is asked of every sheet that does not say it. */
const ofFigures = (questions: unknown) =>
  list(questions).filter((each) => at(each, 'code') !== 'lash-not-said');
const asked = (questions: unknown) =>
  ofFigures(questions).map((each) => [at(each, 'code'), at(each, 'about', 'cylinder'), at(each, 'rows')]);

describe('a sheet that is pushed', () => {
  const url = (buildId: string) => `/api/v1/builds/${buildId}/sheet`;

  test('is answered with what it is asked, by the places of its readings', async () => {
    const { buildId } = await openCall(open().service, open().person);
    const done = await post(url(buildId), { ...HOW, readings: SIXTEEN });
    expect(done.status).toBe(201);
    expect(asked(done.json.questions)).toEqual([['turn-miscounted', 5, [9]]]);
    expect(list(done.json.questions).map((each) => at(each, 'id'))).toEqual(
      list((await sheetOf(buildId)).json.questions).map((each) => at(each, 'id')),
    );
  });

  test('refused for one reading: errors by row, and the questions of the others; nothing kept', async () => {
    const { buildId } = await openCall(open().service, open().person);
    const faulty = SIXTEEN.map((each, index) => (index === 3 ? { ...each, reading: 'high' } : each));
    const done = await post(url(buildId), { ...HOW, readings: faulty });
    expect([done.status, done.json.code]).toEqual([422, 'invalid-input']);
    expect(list(done.json.errors).map((each) => [at(each, 'pointer'), at(each, 'received')])).toEqual([
      ['/readings/3/reading', 'high'],
    ]);
    expect(asked(done.json.questions)).toEqual([['turn-miscounted', 5, [9]]]);
    expect((await sheetOf(buildId)).json.readings).toEqual([]);
  });

  test('with the ETag of another revision: 412 with the questions', async () => {
    const { service, person } = open();
    const { buildId } = await openCall(service, person);
    const body = { ...HOW, readings: SIXTEEN };
    const push = (etag: string) =>
      sendJson(service, person.bearer, 'POST', url(buildId), body, { 'if-match': etag });
    const stale = await push('"7"');
    expect([stale.status, stale.json.code]).toEqual([412, 'version-stale']);
    expect(asked(stale.json.questions)).toEqual([['turn-miscounted', 5, [9]]]);
    expect((await push('"1"')).status).toBe(201);
  });

  test('pasted with a cell that cannot be read: the questions of the other lines', async () => {
    const { buildId } = await openCall(open().service, open().person);
    const text = LIFTS.map((each, index) => `${index + 1}\tI\t.35${index % 3}\t${index === 1 ? 'x' : each}`);
    const done = await post(`${url(buildId)}/paste`, {
      ...HOW,
      text: ['cyl\tvalve\tlobe lift\tvalve lift', ...text].join('\n'),
      keep: true,
    });
    expect([done.status, done.json.code]).toEqual([422, 'invalid-input']);
    expect(ofFigures(done.json.questions).map((each) => [at(each, 'code'), at(each, 'lines')])).toEqual([
      ['turn-miscounted', [6]],
    ]);
  });

  test('of a build that is not the sender’s nothing is told', async () => {
    const { service, person } = open();
    const { buildId } = await openCall(service, person);
    const other = await service.person();
    const readings = [...SIXTEEN, lift(1, 'high')];
    const done = await sendJson(service, other.bearer, 'POST', url(buildId), { ...HOW, readings });
    expect([done.status, done.json.questions]).toEqual([422, undefined]);
  });
});

describe('a sheet under a stop', () => {
  async function stopped() {
    const { service, person } = open();
    const opened = await openCall(service, person);
    const hold = { reason: 'a tight spot' };
    await sendJson(service, person.bearer, 'POST', `/api/v1/calls/${opened.callId}/hold`, hold);
    return opened;
  }
  const SAID =
    'Do not turn it: a tight spot. None of the 16 readings was kept. If it was read before the stop, send it with that said, and it is kept; else it waits until the desk has lifted the stop. What was read with the arms fitted before, or a lobe under a caliper, needs no turning and can be entered.';

  test('is refused once, in whole, with the reason of the stop', async () => {
    const { buildId } = await stopped();
    const done = await post(`/api/v1/builds/${buildId}/sheet`, { ...HOW, readings: SIXTEEN });
    expect([done.status, done.json.code, done.json.detail, done.json.errors]).toEqual([
      409,
      'held',
      SAID,
      undefined,
    ]);
    expect(asked(done.json.questions)).toEqual([['turn-miscounted', 5, [9]]]);
    const before = await post(`/api/v1/builds/${buildId}/sheet`, {
      ...HOW,
      arms: 'before',
      readings: SIXTEEN,
    });
    expect(before.status).toBe(201);
  });

  test('on the page: said once, and each figure and how it was read as they were typed', async () => {
    const { service, person } = open();
    const { callId, buildId } = await stopped();
    const spec = { spec: { engine: { cylinders: 8 } } };
    const of = `/api/v1/builds/${buildId}/spec`;
    await sendJson(service, person.bearer, 'PUT', of, spec, { 'if-match': '"1"' });
    const cells = Object.fromEntries(
      SIXTEEN.map(({ cylinder, kind, reading }) => [`grid.${cylinder}-intake.${kind}`, reading]),
    );
    const fields = { form: 'grid', spring: 'light', lifter: 'solid', tool: 'indicator', arms: 'these' };
    const page = await postForm(
      service,
      `/calls/${callId}/sheet/grid`,
      { ...fields, ...cells },
      { cookies: person.cookies },
    );
    expect(page.statusCode).toBe(422);
    expect(page.body.split('None of the 16 readings was kept').length).toBe(2);
    for (const [name, typed] of Object.entries(cells))
      expect(page.body).toMatch(new RegExp(`name="${name}"[^>]*value="${typed}"`));
    expect(page.body).toMatch(/<option value="these" selected/);
  });
});
