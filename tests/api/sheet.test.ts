import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openCall, sendJson } from '../tools/call.ts';
import { at, rowWhere } from '../tools/numbers.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

let service: TestService;
let person: Person;
beforeAll(async () => {
  service = await testService();
  person = await service.person();
});
afterAll(() => service.close());

const HOW = { spring: 'light', lifter: 'solid', tool: 'indicator' };
const post = (url: string, body: object) => sendJson(service, person.bearer, 'POST', url, body);
const sheetOf = (buildId: string, order = 'firing') =>
  sendJson(service, person.bearer, 'GET', `/api/v1/builds/${buildId}/sheet?order=${order}`);

async function keep(buildId: string, readings: object[], how: object = HOW) {
  const done = await post(`/api/v1/builds/${buildId}/sheet`, { ...how, readings });
  if (done.status !== 201) throw new Error(done.text);
  return done.json;
}

const lift = (cylinder: number, reading: string, kind = 'valve-lift') => ({
  cylinder,
  valve: 'intake',
  kind,
  reading,
});
/** Invented readings: eight intakes on .350 lobes, the fifth low by .035 at the valve. */
const EIGHT = [0.56, 0.561, 0.56, 0.559, 0.525, 0.56, 0.561, 0.56].flatMap((each, index) => [
  lift(index + 1, '.350 in', 'lobe-lift'),
  lift(index + 1, `${each} in`),
]);

async function armOn(buildId: string, name: string, cylinder: number): Promise<string> {
  const arm = await post(`/api/v1/builds/${buildId}/arms`, { name });
  await place(buildId, String(arm.json.id), cylinder);
  return String(arm.json.id);
}
const place = (buildId: string, armId: string, cylinder: number) =>
  post(`/api/v1/builds/${buildId}/placements`, { armId, cylinder, valve: 'intake' });

describe('the sheet', () => {
  test('one odd valve on a lobe like the others: rocker or position, and which swap decides', async () => {
    const { buildId } = await openCall(service, person);
    await armOn(buildId, 'arm E', 5);
    await armOn(buildId, 'arm D', 4);
    await keep(buildId, EIGHT);
    const { json } = await sheetOf(buildId);
    const side = at(json, 'springs', 0, 'sides', 0);
    expect(at(json, 'springs', 0, 'quantity')).toBe('light-spring ratio');
    expect(at(side, 'odd', 0, 'cylinder')).toBe(5);
    expect(at(side, 'odd', 0, 'cause')).toBe('rocker-or-position');
    expect(at(side, 'odd', 0, 'outlier')).toBe(true);
    expect(String(at(side, 'odd', 0, 'swap'))).toMatch(/^arm E \(5 intake\) and arm D \(4 intake\) swapped/);
  });

  test('a lift that the hand read backwards would give is asked, and told from its siblings only once it was looked at', async () => {
    const { buildId } = await openCall(service, person);
    // The hand stands at 60 of .560; the other ring of the dial has 40 there, which is .540.
    await keep(
      buildId,
      EIGHT.map((each) => (each.reading === '0.525 in' ? { ...each, reading: '.540 in' } : each)),
    );
    const { json } = await sheetOf(buildId);
    const five = (from: unknown, list: string) => rowWhere(from, list, 'cylinder', 5);
    expect(at(five(json, 'valves'), 'inDoubt')).toBe(true);
    expect(at(json, 'springs', 0, 'sides', 0, 'odd')).toEqual([]);
    const question = rowWhere(json, 'questions', 'code', 'hand-read-backwards');
    const done = await post(`/api/v1/builds/${buildId}/answers`, {
      question: String(at(question, 'ask')),
      questionId: at(question, 'id'),
      code: 'hand-read-backwards',
      answer: 'not found: the hand ran the usual way',
      found: false,
    });
    expect(done.status).toBe(201);
    const after = (await sheetOf(buildId)).json;
    expect(at(five(after, 'valves'), 'inDoubt')).toBe(false);
    expect(at(after, 'springs', 0, 'sides', 0, 'odd', 0, 'cylinder')).toBe(5);
  });

  test('after the swap the difference has gone with the arm: the part', async () => {
    const { buildId } = await openCall(service, person);
    const [e, d] = [await armOn(buildId, 'arm E', 5), await armOn(buildId, 'arm D', 4)];
    await keep(buildId, EIGHT);
    await place(buildId, e, 4);
    await place(buildId, d, 5);
    await keep(buildId, [lift(4, '.525 in'), lift(5, '.560 in')]);
    const { json } = await sheetOf(buildId);
    expect(at(json, 'springs', 0, 'swaps', 0, 'verdict')).toBe('part');
    // The odd one is now where the arm is; the lift before the swap is not averaged into it.
    expect(at(json, 'springs', 0, 'sides', 0, 'odd', 0, 'cylinder')).toBe(4);
  });

  test('between two gauges both are kept, and no mean is made of them', async () => {
    const { buildId } = await openCall(service, person);
    const kept = await keep(buildId, [
      {
        cylinder: 1,
        valve: 'exhaust',
        kind: 'piston-to-valve',
        reading: 'more than .024 in, less than .028 in',
      },
      { cylinder: 2, valve: 'exhaust', kind: 'cover', reading: { moreThan: { value: 2, unit: 'mm' } } },
    ]);
    expect(at(kept, 'kept', 0, 'moreThan')).toBe(0.024);
    expect(at(kept, 'kept', 0, 'lessThan')).toBe(0.028);
    expect(at(kept, 'kept', 0, 'value')).toBeUndefined();
    const { json } = await sheetOf(buildId);
    const one = rowWhere(json, 'valves', 'cylinder', 1);
    expect(at(one, 'valve')).toBe('intake');
    const valves = at(json, 'valves');
    const row = Array.isArray(valves)
      ? valves.find((each) => at(each, 'cylinder') === 1 && at(each, 'valve') === 'exhaust')
      : undefined;
    expect(at(row, 'figures', 0, 'value')).toBeUndefined();
    expect(at(row, 'figures', 0, 'verdict')).toBe('short');
    expect(json.stop).toBe(true);
  });

  test('bounds go through a ratio as an interval: .556 to .560 over .350 ± .002', async () => {
    const { buildId } = await openCall(service, person);
    await keep(buildId, [lift(1, '.350 in', 'lobe-lift'), lift(1, '.556 to .560 in')]);
    const { json } = await sheetOf(buildId);
    const ratio = at(json, 'springs', 0, 'ratios', 0);
    expect(at(ratio, 'value')).toBeUndefined();
    // Interval division, by hand: .556/.352 and .560/.348.
    expect(Number(at(ratio, 'low'))).toBeCloseTo(0.556 / 0.352, 12);
    expect(Number(at(ratio, 'high'))).toBeCloseTo(0.56 / 0.348, 12);
  });

  test('light and running lifts of one valve are two quantities and are never averaged', async () => {
    const { buildId } = await openCall(service, person);
    await keep(buildId, [lift(1, '.350 in', 'lobe-lift'), lift(1, '.560 in')]);
    await keep(buildId, [lift(1, '.540 in')], { ...HOW, spring: 'running' });
    const { json } = await sheetOf(buildId);
    const ratioOn = (spring: string) =>
      Number(at(rowWhere(json, 'springs', 'spring', spring), 'ratios', 0, 'value'));
    expect(ratioOn('light')).toBeCloseTo(1.6, 12);
    expect(ratioOn('running')).toBeCloseTo(0.54 / 0.35, 12);
  });

  test('a reading is replaced with a reason, once, and the old one stays', async () => {
    const { buildId } = await openCall(service, person);
    const kept = await keep(buildId, [lift(1, '.460 in')]);
    const url = `/api/v1/builds/${buildId}/sheet/readings/${String(at(kept, 'kept', 0, 'id'))}/corrections`;
    expect((await post(url, { reading: '.560 in', reason: ' ' })).status).toBe(422);
    expect((await post(url, { reading: '.560 in', reason: 'one turn missed' })).status).toBe(201);
    expect((await post(url, { reading: '.570 in', reason: 'again' })).status).toBe(409);
    const { json } = await sheetOf(buildId);
    expect(at(json, 'readings', 0, 'replacedBy')).toBe(at(json, 'readings', 1, 'id'));
    expect(at(json, 'valves', 0, 'figures', 0, 'passes')).toBe(1);
    await expect(service.database.asService('update valve_reading set value = 0')).rejects.toThrow(
      /permission denied/,
    );
  });

  test('a wrong reading is told at its place and nothing of the batch is kept', async () => {
    const { buildId } = await openCall(service, person);
    const done = await post(`/api/v1/builds/${buildId}/sheet`, {
      ...HOW,
      readings: [
        lift(1, '.560 in'),
        lift(17, '.560 in'),
        lift(2, '.56 lbf'),
        lift(3, 'more than .028 in, less than .024 in'),
      ],
    });
    expect(done.status).toBe(422);
    const errors = at(done.json, 'errors');
    const pointers = Array.isArray(errors) ? errors.map((error) => at(error, 'pointer')) : [];
    expect(pointers).toEqual(['/readings/1/cylinder', '/readings/2/reading', '/readings/3/reading']);
    expect(at((await sheetOf(buildId)).json, 'readings')).toEqual([]);
  });

  test('firing order and bank order', async () => {
    const { buildId } = await openCall(service, person);
    const put = await sendJson(
      service,
      person.bearer,
      'PUT',
      `/api/v1/builds/${buildId}/spec`,
      { spec: { engine: { cylinders: 8, firingOrder: '1-8-4-3-6-5-7-2', bankOrder: '1 3 5 7 / 2 4 6 8' } } },
      { 'if-match': '"1"' },
    );
    expect(put.status).toBe(200);
    expect((await sheetOf(buildId)).json.cylinders).toEqual([1, 8, 4, 3, 6, 5, 7, 2]);
    expect((await sheetOf(buildId, 'bank')).json.cylinders).toEqual([1, 3, 5, 7, 2, 4, 6, 8]);
  });

  test('while the call is on hold nothing is kept', async () => {
    const { buildId, callId } = await openCall(service, person);
    await post(`/api/v1/calls/${callId}/hold`, { reason: 'resistance felt' });
    const done = await post(`/api/v1/builds/${buildId}/sheet`, { ...HOW, readings: [lift(1, '.560 in')] });
    expect(done.status).toBe(409);
  });
});

describe('pasted from a spreadsheet', () => {
  const TEXT = [
    'Cyl\tValve\tLobe lift (in)\tValve lift, mm\tLash',
    '1\tIntake\t.350\t14.22\t.016',
    '2\tE\t.362\t14.70\tmore than .014, less than .016',
    '3\tI\t\t14.2\t-',
  ].join('\n');

  test('a dry look reads it and keeps nothing; then it is kept as looked at', async () => {
    const { buildId } = await openCall(service, person);
    const url = `/api/v1/builds/${buildId}/sheet/paste`;
    const look = await post(url, { ...HOW, text: TEXT });
    expect(look.status).toBe(200);
    expect(at(look.json, 'faults')).toEqual([]);
    expect(at(look.json, 'readings', 1)).toMatchObject({
      line: 2,
      cylinder: 1,
      kind: 'valve-lift',
      readAs: '14.22 mm',
    });
    expect(at(look.json, 'readings', 5)).toMatchObject({
      line: 3,
      readAs: 'more than .014 in, less than .016 in',
    });
    expect(at((await sheetOf(buildId)).json, 'readings')).toEqual([]);
    const kept = await post(url, { ...HOW, text: TEXT, keep: true });
    expect(at(kept.json, 'kept', 6, 'readAs')).toBe('14.2 mm');
    expect(at((await sheetOf(buildId)).json, 'readings', 6, 'cylinder')).toBe(3);
    const again = await post(url, { ...HOW, text: TEXT });
    expect(at(again.json, 'readings', 0, 'already')).toBe('.350 in');
  });

  test('every fault with its line and column, and none of it kept', async () => {
    const { buildId } = await openCall(service, person);
    const text =
      'cylinder,valve,lobe lift\n1,intake,.350\n1,intake,.351\n99,intake,.350\n4,sideways,.350\n5,intake,abc';
    const url = `/api/v1/builds/${buildId}/sheet/paste`;
    const look = await post(url, { ...HOW, text });
    const faults = at(look.json, 'faults');
    expect(
      Array.isArray(faults) ? faults.map((fault) => [at(fault, 'line'), at(fault, 'column')]) : [],
    ).toEqual([
      [3, 'lobe lift'],
      [4, 'cylinder'],
      [5, 'valve'],
      [6, 'lobe lift'],
    ]);
    const kept = await post(url, { ...HOW, text, keep: true });
    expect(kept.status).toBe(422);
    expect(at(kept.json, 'errors', 0, 'pointer')).toBe('/text');
    expect(at((await sheetOf(buildId)).json, 'readings')).toEqual([]);
  });

  test('a bare lift is asked about: lobe or valve', async () => {
    const { buildId } = await openCall(service, person);
    const look = await post(`/api/v1/builds/${buildId}/sheet/paste`, {
      ...HOW,
      text: 'cyl,valve,lift\n1,I,.35',
    });
    expect(String(at(look.json, 'faults', 0, 'detail'))).toMatch(/lobe or of the valve/);
  });

  test('one row for each cylinder, a column for each side, and quotes as inches', async () => {
    const { buildId } = await openCall(service, person);
    const text = 'Cylinder;Intake lobe;Exhaust lobe\n1;.350";.362\n2;0.351;.361';
    const look = await post(`/api/v1/builds/${buildId}/sheet/paste`, { ...HOW, text });
    expect(at(look.json, 'faults')).toEqual([]);
    expect(at(look.json, 'readings', 1)).toMatchObject({ cylinder: 1, valve: 'exhaust', readAs: '.362 in' });
    expect(at(look.json, 'readings', 0)).toMatchObject({ valve: 'intake', readAs: '.350 in' });
  });
});
