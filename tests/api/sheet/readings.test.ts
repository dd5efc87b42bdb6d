import { describe, expect, test } from 'vitest';
import { describeBuild, openCall } from '../../tools/call.ts';
import { at, rowWhere } from '../../tools/numbers.ts';
import { HOW, lift, sheetService } from './tools.ts';

const { open, post, sheetOf, keep } = sheetService();

describe('readings of the sheet', () => {
  test('between two gauges both are kept, and no mean is made of them', async () => {
    const { buildId } = await openCall(open().service, open().person);
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
    const { buildId } = await openCall(open().service, open().person);
    await keep(buildId, [lift(1, '.350 in', 'lobe-lift'), lift(1, '.556 to .560 in')]);
    const { json } = await sheetOf(buildId);
    const ratio = at(json, 'springs', 0, 'ratios', 0);
    expect(at(ratio, 'value')).toBeUndefined();
    // Interval division, by hand: .556/.352 and .560/.348.
    expect(Number(at(ratio, 'low'))).toBeCloseTo(0.556 / 0.352, 12);
    expect(Number(at(ratio, 'high'))).toBeCloseTo(0.56 / 0.348, 12);
  });

  test('light and running lifts of one valve are two quantities and are never averaged', async () => {
    const { buildId } = await openCall(open().service, open().person);
    await keep(buildId, [lift(1, '.350 in', 'lobe-lift'), lift(1, '.560 in')]);
    await keep(buildId, [lift(1, '.540 in')], { ...HOW, spring: 'running' });
    const { json } = await sheetOf(buildId);
    const ratioOn = (spring: string) =>
      Number(at(rowWhere(json, 'springs', 'spring', spring), 'ratios', 0, 'value'));
    expect(ratioOn('light')).toBeCloseTo(1.6, 12);
    expect(ratioOn('running')).toBeCloseTo(0.54 / 0.35, 12);
  });

  test('a reading is replaced with a reason, once, and the old one stays', async () => {
    const { buildId } = await openCall(open().service, open().person);
    const kept = await keep(buildId, [lift(1, '.460 in')]);
    const url = `/api/v1/builds/${buildId}/sheet/readings/${String(at(kept, 'kept', 0, 'id'))}/corrections`;
    expect((await post(url, { reading: '.560 in', reason: ' ' })).status).toBe(422);
    expect((await post(url, { reading: '.560 in', reason: 'one turn missed' })).status).toBe(201);
    expect((await post(url, { reading: '.570 in', reason: 'again' })).status).toBe(409);
    const { json } = await sheetOf(buildId);
    expect(at(json, 'readings', 0, 'replacedBy')).toBe(at(json, 'readings', 1, 'id'));
    expect(at(json, 'valves', 0, 'figures', 0, 'passes')).toBe(1);
    await expect(open().service.database.asService('update valve_reading set value = 0')).rejects.toThrow(
      /permission denied/,
    );
  });

  test('a wrong reading is told at its place and nothing of the batch is kept', async () => {
    const { buildId } = await openCall(open().service, open().person);
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
    const { buildId } = await openCall(open().service, open().person);
    await describeBuild(open().service, open().person, buildId, {
      engine: { cylinders: 8, firingOrder: '1-8-4-3-6-5-7-2', bankOrder: '1 3 5 7 / 2 4 6 8' },
    });
    expect((await sheetOf(buildId)).json.cylinders).toEqual([1, 8, 4, 3, 6, 5, 7, 2]);
    expect((await sheetOf(buildId, 'bank')).json.cylinders).toEqual([1, 3, 5, 7, 2, 4, 6, 8]);
  });

  test('while the call is on hold nothing is kept', async () => {
    const { buildId, callId } = await openCall(open().service, open().person);
    await post(`/api/v1/calls/${callId}/hold`, { reason: 'resistance felt' });
    const done = await post(`/api/v1/builds/${buildId}/sheet`, { ...HOW, readings: [lift(1, '.560 in')] });
    expect(done.status).toBe(409);
  });
});
