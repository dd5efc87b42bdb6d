import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openCall, sendJson } from '../../tools/call.ts';
import { type Person, type TestService, testService } from '../../tools/service.ts';

let service: TestService;
let person: Person;
let stranger: Person;

beforeAll(async () => {
  service = await testService();
  person = await service.person();
  stranger = await service.person();
});
afterAll(() => service.close());

const at = (buildId: string, more = '') => `/api/v1/builds/${buildId}/gap-scans${more}`;
const post = (url: string, body: object, who: Person = person) =>
  sendJson(service, who.bearer, 'POST', url, body);
const read = (buildId: string) => sendJson(service, person.bearer, 'GET', at(buildId));

const HOW = { spring: 'light', lifter: 'solid', lash: 'zero', tool: 'indicator' };
/** .09 + .0005·(θ − 9)²: the worked example of the computation, every 2°, whose least is .090 at 9° after TDC. */
const gapAt = (angle: number, least = 0.09) => least + 0.0005 * (angle - 9) ** 2;
const rows = (least = 0.09, sign = 1) =>
  [2, 4, 6, 8, 10, 12, 14, 16].map((angle) => ({
    crankAngle: { value: angle * sign, unit: 'deg' },
    gap: { value: Number(gapAt(angle, least).toFixed(4)), unit: 'in' },
  }));
const scan = (more: object = {}) => ({ cylinder: 3, valve: 'intake', ...HOW, readings: rows(), ...more });

describe('a scan is kept as it was read', () => {
  test('pushed: each reading with its words, on the tape, in the export, judged', async () => {
    const { buildId } = await openCall(service, person);
    const kept = await post(at(buildId), scan());
    expect(kept.status).toBe(201);
    expect(kept.json).toMatchObject({
      cylinder: 3,
      valve: 'intake',
      lash: 'zero',
      readAs: '8 gaps from 2° after TDC to 16° after TDC, least read .0905 in at 8° after TDC',
    });
    const { json } = await read(buildId);
    expect(json.judged).toMatchObject([{ scanId: kept.json.id, atEdge: 'none', word: 'clear', missing: [] }]);
    const exported = await sendJson(service, person.bearer, 'GET', `/api/v1/builds/${buildId}/export`);
    expect(exported.json.gapScans).toHaveLength(1);
    expect(exported.text).toContain('"kind":"gap-scan-kept"');
  });

  test('pasted: looked at first, then kept; words for before and after, and a unit in the heading', async () => {
    const { buildId } = await openCall(service, person);
    const text = `Crank\tGap (thou)\n${[20, 16, 12, 8, 4].map((angle) => `${angle} BTDC\t${110 + (angle - 10) ** 2 / 2}`).join('\n')}\nTDC\t160`;
    const body = { cylinder: 1, valve: 'exhaust', ...HOW, text };
    const look = await post(at(buildId, '/paste'), body);
    expect(look.status).toBe(200);
    expect(look.json.kept).toBeUndefined();
    expect(look.json.faults).toEqual([]);
    expect(look.json.readings).toHaveLength(6);
    expect(look.json.readings).toMatchObject([
      { crankAngle: { value: -20, readAs: '20° before TDC', typed: '20 BTDC' }, gap: 160, unit: 'thou' },
      {},
      {},
      {},
      {},
      { crankAngle: { value: 0, readAs: 'TDC' } },
    ]);
    expect((await read(buildId)).json.scans).toEqual([]);
    const kept = await post(at(buildId, '/paste'), { ...body, keep: true });
    expect(kept.json.kept).toMatchObject({ valve: 'exhaust' });
    expect((await read(buildId)).json.judged).toMatchObject([{ atEdge: 'none', word: 'clear' }]);
  });

  test('rows of a text are told by their line, and none is kept', async () => {
    const { buildId } = await openCall(service, person);
    const text = '2, .1\n350, .09\n6; \n-8 BTDC, .1\nnorth, .08\n8, 80';
    const body = { cylinder: 1, valve: 'intake', text, keep: true };
    const refused = await post(at(buildId, '/paste'), body);
    expect(refused.status).toBe(422);
    for (const part of [
      'line 2',
      '350',
      '10 BTDC',
      'line 3',
      'line 4',
      'a minus and a side',
      'line 5',
      'line 6',
      '80 thou',
    ])
      expect(refused.text).toContain(part);
    expect((await read(buildId)).json.scans).toEqual([]);
  });

  test('put right in part, and struck out with the reason: the old ones stay', async () => {
    const { buildId } = await openCall(service, person);
    const { json } = await post(at(buildId), scan({ lash: 'set', lashSetting: '.016 in' }));
    const right = await post(at(buildId, `/${json.id}/corrections`), {
      valve: 'exhaust',
      reason: 'other valve',
    });
    expect([right.status, right.json.valve, right.json.replaces, right.json.readings]).toEqual([
      201,
      'exhaust',
      json.id,
      json.readings,
    ]);
    const zero = await post(at(buildId, `/${right.json.id}/corrections`), {
      lash: 'zero',
      reason: 'no lash in it',
    });
    expect([zero.json.lash, zero.json.lashSetting]).toEqual(['zero', undefined]);
    const again = await post(at(buildId, `/${json.id}/corrections`), { reason: 'twice' });
    expect(again.status).toBe(409);
    const struck = await post(at(buildId, `/${zero.json.id}/corrections`), {
      reason: 'indicator had slipped',
    });
    expect([struck.status, struck.json.struck]).toEqual([201, true]);
    const { json: listed } = await read(buildId);
    expect([listed.scans, listed.judged]).toEqual([expect.objectContaining({ length: 4 }), []]);
  });

  test('another shop sees nothing of it', async () => {
    const { buildId } = await openCall(service, person);
    const { json } = await post(at(buildId), scan());
    expect((await sendJson(service, stranger.bearer, 'GET', at(buildId))).status).toBe(404);
    expect((await post(at(buildId), scan(), stranger)).status).toBe(404);
    const correct = { reason: 'not mine' };
    expect((await post(at(buildId, `/${json.id}/corrections`), correct, stranger)).status).toBe(404);
  });
});

describe('bad input names the field', () => {
  test.each([
    ['no readings', scan({ readings: [] }), '/readings'],
    [
      'an angle of another top',
      scan({ readings: [{ crankAngle: '350 deg', gap: '.1 in' }] }),
      '/readings/0/crankAngle',
    ],
    ['a setting with zero lash', scan({ lashSetting: '.016 in' }), '/lashSetting'],
    ['a gap without its unit', scan({ readings: [{ crankAngle: '8 deg', gap: 0.1 }] }), '/readings/0/gap'],
    ['a valve there is none of', scan({ valve: 'third' }), '/valve'],
    ['a field there is none of', scan({ engine: 'v8' }), '/engine'],
  ])('%s', async (_, body, pointer) => {
    const { buildId } = await openCall(service, person);
    const refused = await post(at(buildId), body);
    expect(refused.status).toBe(422);
    expect(refused.text).toContain(`"pointer":"${pointer}`);
    expect((await read(buildId)).json.scans).toEqual([]);
  });
});

describe('what a short scan does', () => {
  test('it stops the engine, a later larger one changes nothing, and striking it out lets it go', async () => {
    const { buildId } = await openCall(service, person);
    const short = await post(at(buildId), scan({ readings: rows(0.05) }));
    const stops = async () =>
      (await sendJson(service, person.bearer, 'GET', `/api/v1/builds/${buildId}/assessment`)).json.stop;
    expect(await stops()).toMatchObject([{ code: 'gap-short', restsOn: [short.json.id] }]);
    const refused = await post(at(buildId), scan());
    expect(refused.status).toBe(409);
    const before = await post(at(buildId), scan({ arms: 'before' }));
    expect(before.status).toBe(201);
    expect(await stops()).toHaveLength(1);
    await post(at(buildId, `/${short.json.id}/corrections`), { reason: 'read on the wrong cylinder' });
    expect(await stops()).toEqual([]);
  });

  test('three orders of entry give one assessment', async () => {
    const scans = [
      scan(),
      scan({ readings: rows(0.085), tool: 'clay' }),
      scan({ valve: 'exhaust', readings: rows(0.12, -1) }),
    ];
    const orders = [
      [0, 1, 2],
      [2, 1, 0],
      [1, 2, 0],
    ];
    const said = await Promise.all(
      orders.map(async (order) => {
        const { buildId } = await openCall(service, person);
        for (const index of order) await post(at(buildId), scans[index] ?? {});
        const { json } = await read(buildId);
        const judgements = Array.isArray(json.judgements) ? json.judgements : [];
        const judged = Array.isArray(json.judged) ? json.judged : [];
        return {
          judgements: judgements.map(({ id, sentence, word }) => ({ id, sentence, word })),
          judged: judged.map(({ sentence }) => String(sentence)).sort(),
        };
      }),
    );
    expect(said[0]?.judgements).toHaveLength(2);
    expect(said[1]).toEqual(said[0]);
    expect(said[2]).toEqual(said[0]);
  });
});
