import { describe, expect, test } from 'vitest';
import { METHOD, openCall, startSetUp } from '../../tools/call.ts';
import { at, rowWhere } from '../../tools/numbers.ts';
import { HOW, lift, sheetService } from './tools.ts';

const { open, post, sheetOf, keep } = sheetService();
const urlOf = (buildId: string) => `/api/v1/builds/${buildId}/sheet`;
const faultsOf = (json: unknown): unknown[][] => {
  const errors = at(json, 'errors');
  return Array.isArray(errors)
    ? errors.map((error) => [at(error, 'pointer'), String(at(error, 'detail'))])
    : [];
};

describe('readings as they are said', () => {
  test('turns are read on the dial of the newest set-up: 4 turns 37 on .100 a turn is .437', async () => {
    const { service, person } = open();
    const { buildId } = await openCall(service, person);
    await startSetUp(service, person, buildId);
    const kept = await keep(buildId, [lift(1, '4 turns 37'), lift(2, 'five turns and sixty six')]);
    expect([0, 1].map((index) => at(kept, 'kept', index, 'value'))).toEqual([0.437, 0.566]);
    expect(at(kept, 'kept', 0, 'typed')).toBe('4 turns 37');
  });

  test('on a dial of the sheet’s own: 11 turns 16 on .050 a turn, and 14 turns 22 on 1 mm a turn', async () => {
    const { service, person } = open();
    const { buildId } = await openCall(service, person);
    await startSetUp(service, person, buildId, METHOD);
    const half = await keep(buildId, [lift(1, '11 turns 16')], { ...HOW, perTurn: '.050 in' });
    expect(at(half, 'kept', 0, 'value')).toBeCloseTo(0.566, 12);
    const metric = await keep(buildId, [lift(2, '14 turns 22')], { ...HOW, perTurn: '1 mm' });
    expect([at(metric, 'kept', 0, 'value'), at(metric, 'kept', 0, 'unit')]).toEqual([14.22, 'mm']);
  });

  test('the dial that was said is the one a missed turn is asked about', async () => {
    const { buildId } = await openCall(open().service, open().person);
    const how = { ...HOW, perTurn: '.050 in' };
    const lifts = [0.56, 0.561, 0.559, 0.56, 0.51, 0.561, 0.56, 0.559];
    await keep(
      buildId,
      lifts.flatMap((each, index) => [
        lift(index + 1, `.35${index % 2} in`, 'lobe-lift'),
        lift(index + 1, `${each} in`),
      ]),
      how,
    );
    const question = rowWhere((await sheetOf(buildId)).json, 'questions', 'code', 'turn-miscounted');
    expect(at(question, 'about', 'cylinder')).toBe(5);
    expect(String(at(question, 'size'))).toMatch(/^\.050 in more would make it \.560 in/);
  });

  test('without a dial turns are asked about, and nothing is kept', async () => {
    const { buildId } = await openCall(open().service, open().person);
    const done = await post(urlOf(buildId), {
      ...HOW,
      readings: [lift(1, '.560 in'), lift(2, '5 turns 66')],
    });
    expect(done.status).toBe(422);
    expect(faultsOf(done.json)).toEqual([
      ['/readings/1/reading', expect.stringContaining('the dial is not known')],
    ]);
    expect(at((await sheetOf(buildId)).json, 'readings')).toEqual([]);
  });

  test('a number that can be another than it says is asked, with the ways', async () => {
    const { buildId } = await openCall(open().service, open().person);
    const done = await post(urlOf(buildId), {
      ...HOW,
      readings: [{ ...lift(1, ''), reading: { typed: '14.22', assume: 'in' } }, lift(2, '22 mil')],
    });
    expect(done.status).toBe(422);
    const faults = faultsOf(done.json);
    expect(faults.map(([pointer]) => pointer)).toEqual(['/readings/0/reading', '/readings/1/reading']);
    // A lift can only be 14.22 mm; 22 mil is 22 thou or 22 mm.
    expect(faults[0]?.[1]).toMatch(/came as 14\.22 without a unit\. Is it 14\.22 mm\?/);
    expect(faults[1]?.[1]).toMatch(/can be read in more than one way: .+, or .+/);
  });

  test('a pasted cell in turns is read the same way', async () => {
    const { service, person } = open();
    const { buildId } = await openCall(service, person);
    await startSetUp(service, person, buildId);
    const text = 'cyl,valve,lobe lift,valve lift\n1,I,3 turns 50,5 turns 60';
    const look = await post(`${urlOf(buildId)}/paste`, { ...HOW, text });
    expect(at(look.json, 'faults')).toEqual([]);
    expect([0, 1].map((index) => String(at(look.json, 'readings', index, 'readAs')))).toEqual([
      expect.stringMatching(/= \.350 in$/),
      expect.stringMatching(/= \.560 in$/),
    ]);
  });

  test('a reading is put right in turns too', async () => {
    const { service, person } = open();
    const { buildId } = await openCall(service, person);
    await startSetUp(service, person, buildId);
    const kept = await keep(buildId, [lift(1, '4 turns 60')]);
    const done = await post(`${urlOf(buildId)}/readings/${String(at(kept, 'kept', 0, 'id'))}/corrections`, {
      reading: '5 turns 60',
      reason: 'small hand read again',
    });
    expect([done.status, done.json.value]).toEqual([201, 0.56]);
  });

  test('each column its own way of reading, and the ± of the ratio from both tools', async () => {
    const { buildId } = await openCall(open().service, open().person);
    const kept = await keep(buildId, [lift(1, '.350 in', 'lobe-lift'), lift(1, '.560 in')], {
      ...HOW,
      columns: { 'lobe-lift': { tool: 'caliper' } },
    });
    expect([0, 1].map((index) => at(kept, 'kept', index, 'tool'))).toEqual(['caliper', 'indicator']);
    const ratio = at((await sheetOf(buildId)).json, 'springs', 0, 'ratios', 0);
    // 1.6·√((.002/.56)² + (.003/.35)²) = .01486, by hand: .003 of a caliper, .002 of an indicator, common practice.
    expect(Number(at(ratio, 'high')) - 1.6).toBeCloseTo(0.01486, 5);
  });

  test('a tool that was not said is as good as any entry: ± .005 on both', async () => {
    const { buildId } = await openCall(open().service, open().person);
    await keep(buildId, [lift(1, '.350 in', 'lobe-lift'), lift(1, '.560 in')], { spring: 'light' });
    const ratio = at((await sheetOf(buildId)).json, 'springs', 0, 'ratios', 0);
    // 1.6·√((.005/.56)² + (.005/.35)²) = .02695, by hand.
    expect(Number(at(ratio, 'high')) - 1.6).toBeCloseTo(0.02695, 5);
  });

  test('an arm of another build is no arm of this one', async () => {
    const { service, person } = open();
    const [one, two] = [await openCall(service, person), await openCall(service, person)];
    const arm = await post(`/api/v1/builds/${one.buildId}/arms`, { name: 'arm A' });
    const done = await post(urlOf(two.buildId), {
      ...HOW,
      readings: [{ ...lift(1, '.560 in'), armId: arm.json.id }],
    });
    expect(done.status).toBe(404);
  });
});
