import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { describeBuild, openCall, sendJson } from '../tools/call.ts';
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

const marks = (buildId: string) => `/api/v1/builds/${buildId}/tip-marks`;
const send = (buildId: string, body: object, who: Person = person) =>
  sendJson(service, who.bearer, 'POST', marks(buildId), body);
const read = (buildId: string) => sendJson(service, person.bearer, 'GET', marks(buildId));

const MARK = {
  cylinder: 3,
  valve: 'exhaust',
  width: '.075 in',
  side: 'valley',
  off: '.03 in',
  pushrod: '7.8 in',
};

const specify = (buildId: string, spec: object) => describeBuild(service, person, buildId, spec);

describe('a mark is kept as it was measured', () => {
  test('whole, with who and when, on the tape and in the export', async () => {
    const { buildId } = await openCall(service, person);
    const kept = await send(buildId, { ...MARK, found: 'fresh-ink', spring: 'light', stem: '8.69 mm' });
    expect(kept.status).toBe(201);
    expect(kept.json).toMatchObject({
      cylinder: 3,
      valve: 'exhaust',
      side: 'valley',
      found: 'fresh-ink',
      width: { value: 0.075, unit: 'in', typed: '.075 in' },
      stem: { value: 8.69, unit: 'mm' },
      readAs: '.075 in wide, .03 in toward the valley, pushrod 7.8 in',
      struck: false,
    });
    expect([kept.json.by, kept.json.byKind]).toEqual(['Test person', 'staff']);
    const exported = await sendJson(service, person.bearer, 'GET', `/api/v1/builds/${buildId}/export`);
    expect(exported.json.tipMarks).toHaveLength(1);
    expect(exported.text).toContain('"kind":"tip-mark-kept"');
  });

  test('a correction takes its place, and a reason alone strikes it out', async () => {
    const { buildId } = await openCall(service, person);
    const { json } = await send(buildId, MARK);
    const at = `${marks(buildId)}/${String(json.id)}/corrections`;
    const instead = { width: '.057 in', side: 'centred', reason: 'caliper read again' };
    const replaced = await sendJson(service, person.bearer, 'POST', at, instead);
    expect([replaced.status, replaced.json.replaces, replaced.json.off]).toEqual([201, json.id, undefined]);
    const again = await sendJson(service, person.bearer, 'POST', at, { reason: 'twice' });
    expect(again.status).toBe(409);
    const next = `${marks(buildId)}/${String(replaced.json.id)}/corrections`;
    const struck = await sendJson(service, person.bearer, 'POST', next, { reason: 'wrong valve' });
    expect([struck.status, struck.json.struck]).toEqual([201, true]);
    const { json: listed } = await read(buildId);
    expect([listed.marks, listed.valves]).toEqual([expect.objectContaining({ length: 3 }), []]);
  });
});

describe('bad input names the field', () => {
  test.each([
    [{ width: undefined }, '/width', 'required'],
    [{ width: '0 in' }, '/width', 'out-of-range'],
    [{ width: '60 in' }, '/width', 'out-of-range'],
    [{ width: 0.06 }, '/width', 'wrong-dimension'],
    [{ width: '.06 lb' }, '/width', 'wrong-dimension'],
    [{ side: 'inside' }, '/side', 'not-allowed'],
    [{ off: '2 in' }, '/off', 'out-of-range'],
    [{ side: 'centred' }, '/off', 'not-allowed'],
    [{ cylinder: 17 }, '/cylinder', 'out-of-range'],
    [{ colour: 'blue' }, '/colour', 'unknown-field'],
  ])('%j: %s %s', async (change, pointer, code) => {
    const { buildId } = await openCall(service, person);
    const answer = await send(buildId, { ...MARK, ...change });
    expect(answer.status).toBe(422);
    expect(answer.json.errors).toEqual(expect.arrayContaining([expect.objectContaining({ pointer, code })]));
    const { json } = await read(buildId);
    expect(json.marks).toEqual([]);
  });
});

describe('each valve is set against the least sweep', () => {
  test('what is missing for it is named, and nothing is called wide without it', async () => {
    const { buildId } = await openCall(service, person);
    await send(buildId, { ...MARK, width: '.2 in' });
    const { text } = await read(buildId);
    expect(text).toContain('"missing":["pivot to tip of the arm","lobe lift of the exhaust and a ratio"]');
    expect(text).not.toContain('mark-wide');
  });

  test('lobe .375 by 1.6 on an arm of 1.48 is .600 of lift: least .0307, asked about over .0507', async () => {
    const { buildId } = await openCall(service, person);
    await specify(buildId, {
      engine: { rockerMounting: 'stud' },
      cam: { exhaust: { lobeLift: '.375 in' } },
      rockers: { nominalRatio: 1.6, pivotToTip: '1.48 in' },
    });
    await send(buildId, MARK);
    await send(buildId, { ...MARK, width: '.045 in', off: '.01 in', pushrod: '7.85 in' });
    const { json } = await read(buildId);
    // b − √(b² − h²/4), by hand: 1.48 − √(2.1904 − .09) = .030724.
    expect(json.valves).toMatchObject([
      {
        leastSweep: { unit: 'in', value: expect.closeTo(0.030724, 5) },
        lookAgainOver: { value: expect.closeTo(0.050724, 5) },
      },
    ]);
    // −.030 at 7.800 and −.010 at 7.850: .4 of the change, so .025 more.
    expect(JSON.stringify(json.valves)).toContain('Would 7.875 in bring the mark to the middle?');
  });

  test('the shop’s own limit counts', async () => {
    const chief = await service.person({ roles: ['desk', 'administrator'] });
    const { buildId } = await openCall(service, chief);
    const changed = await sendJson(service, chief.bearer, 'PUT', '/api/v1/limits', {
      limits: [{ name: 'sweep-over-least', value: '.060 in', source: 'the part maker’s sheet' }],
    });
    expect(changed.status).toBe(200);
    const { json } = await sendJson(service, chief.bearer, 'GET', marks(buildId));
    expect(json.limit).toMatchObject({ overLeast: { value: 0.06 }, source: 'the part maker’s sheet' });
  });
});

test('another shop sees no marks, keeps none and corrects none', async () => {
  const { buildId } = await openCall(service, person);
  const { json } = await send(buildId, MARK);
  const own = `${marks(buildId)}/${String(json.id)}/corrections`;
  expect((await sendJson(service, stranger.bearer, 'GET', marks(buildId))).status).toBe(404);
  expect((await send(buildId, MARK, stranger)).status).toBe(404);
  expect((await sendJson(service, stranger.bearer, 'POST', own, { reason: 'mine' })).status).toBe(404);
  const { json: listed } = await read(buildId);
  expect(listed.marks).toHaveLength(1);
});
