import { afterAll, beforeAll, expect, it } from 'vitest';
import { METHOD, openCall, sendJson, startSetUp } from '../tools/call.ts';
import { at } from '../tools/numbers.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

/** Lifts read part of the way up: exact lines worked by hand, V = 1.6·L − g. */
let service: TestService;
let desk: Person;
beforeAll(async () => {
  service = await testService();
  desk = await service.person();
});
afterAll(() => service?.close());

async function readAt(stations: readonly (readonly [string, string])[], full?: readonly [string, string]) {
  const { buildId } = await openCall(service, desk);
  const setUpId = await startSetUp(service, desk, buildId, { ...METHOD, spring: 'light' });
  const url = `/api/v1/builds/${buildId}/set-ups/${setUpId}`;
  const keep = (body: object) => sendJson(service, desk.bearer, 'POST', `${url}/readings`, body);
  for (const [atLobeLift, peak] of stations) await keep({ kind: 'valve-lift-at', atLobeLift, peak });
  if (full !== undefined) {
    await keep({ kind: 'lobe-lift', peak: full[0] });
    await keep({ kind: 'valve-lift', peak: full[1] });
  }
  const { json } = await sendJson(service, desk.bearer, 'GET', `${url}/ratio-through-lift`);
  return json;
}

it('two stations and the full lift give the ratio and the lash left in', async () => {
  const json = await readAt(
    [
      ['.100 in', '.150 in'],
      ['.200 in', '.310 in'],
    ],
    ['.350 in', '.550 in'],
  );
  expect(json.missing).toEqual([]);
  expect(Number(at(json, 'result', 'ratio', 'value'))).toBeCloseTo(1.6, 9);
  expect(Number(at(json, 'result', 'lashLeftIn', 'value', 'value'))).toBeCloseTo(0.01, 9);
});

it('stations come in any order, and two readings at one lobe lift count as their mean', async () => {
  const json = await readAt([
    ['.300 in', '.480 in'],
    ['.100 in', '.159 in'],
    ['.200 in', '.320 in'],
    ['.100 in', '.161 in'],
  ]);
  expect(Number(at(json, 'result', 'ratio', 'value'))).toBeCloseTo(1.6, 9);
  expect(Number(at(json, 'result', 'lashLeftIn', 'value', 'value'))).toBeCloseTo(0, 9);
});

it('says what it lacks, and which station does not rise', async () => {
  const few = await readAt([['.100 in', '.160 in']]);
  expect(few.missing).toEqual(['three lobe lifts on the light spring, full lift among them: 1 of 3']);
  const falling = await readAt([
    ['.100 in', '.160 in'],
    ['.200 in', '.150 in'],
    ['.300 in', '.480 in'],
  ]);
  expect(String(falling.missing)).toContain('must be above the one before');
  expect(falling.result).toBeUndefined();
});
