import { afterAll, beforeAll, expect, test } from 'vitest';
import { memberOf } from '../../shared/member.ts';
import { openCall, sendJson } from '../tools/call.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

/* A long catalogue is kept by the process; a change of it, by whomever, must show at once. Families are invented. */

let service: TestService;
let person: Person;
beforeAll(async () => {
  service = await testService();
  person = await service.person();
});
afterAll(() => service.close());

const load = async (csv: string) =>
  expect((await sendJson(service, person.bearer, 'POST', '/api/v1/catalogue/loads', { csv })).status).toBe(
    200,
  );

test('a part is ranked against the catalogue as it is now', async () => {
  const { buildId } = await openCall(service, person, 'Ranked');
  const url = `/api/v1/builds/${buildId}/identification`;
  const read = { kind: 'roller-diameter', size: '.480 in' };
  const kept = await sendJson(
    service,
    person.bearer,
    'POST',
    `/api/v1/builds/${buildId}/identification/readings`,
    read,
  );
  expect(kept.status, kept.text).toBe(201);
  const codes = async (): Promise<unknown[]> => {
    const { json } = await sendJson(service, person.bearer, 'GET', url);
    const [part] = Array.isArray(json.parts) ? json.parts : [];
    const candidates = memberOf(part, 'candidates');
    return (Array.isArray(candidates) ? candidates : []).map((each: unknown) => memberOf(each, 'code'));
  };
  expect(await codes()).toEqual([]);
  await load('code,name,roller_diameter_in\nINV-1,Invented one,.480\nINV-2,Invented two,.500');
  expect(await codes()).toEqual(['INV-1', 'INV-2']);
  expect(await codes()).toEqual(['INV-1', 'INV-2']);
  await load('code,name,roller_diameter_in\nINV-1,Invented one,.520\nINV-3,Invented three,.479');
  expect(await codes()).toEqual(['INV-3', 'INV-2', 'INV-1']);
});
