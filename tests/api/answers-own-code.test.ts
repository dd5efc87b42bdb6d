import { afterAll, beforeAll, expect, test } from 'vitest';
import { openCall, sendJson } from '../tools/call.ts';
import { at } from '../tools/numbers.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

let service: TestService;
let desk: Person;
beforeAll(async () => {
  service = await testService();
  desk = await service.person();
});
afterAll(() => service.close());

/** Invented: a turn of a usual dial (.100, common practice) is missing on 5 intake, so that a question stands. */
async function asked() {
  const { buildId } = await openCall(service, desk);
  const url = `/api/v1/builds/${buildId}`;
  const readings = ['.565', '.564', '.566', '.565', '.464', '.565', '.566', '.564'].flatMap((lift, index) =>
    (['lobe-lift', 'valve-lift'] as const).map((kind) => ({
      cylinder: index + 1,
      valve: 'intake',
      kind,
      reading: kind === 'lobe-lift' ? `.35${index % 3} in` : `${lift} in`,
    })),
  );
  const how = { spring: 'light', lifter: 'solid', tool: 'indicator' };
  await sendJson(service, desk.bearer, 'POST', `${url}/sheet`, { ...how, readings });
  const question = async () =>
    at((await sendJson(service, desk.bearer, 'GET', `${url}/sheet`)).json, 'questions', 0);
  const put = await question();
  const send = (body: object) =>
    sendJson(service, desk.bearer, 'POST', `${url}/answers`, {
      question: String(at(put, 'ask')),
      questionId: String(at(put, 'id')),
      answer: 'the small hand stood at five',
      ...body,
    });
  return { question, send };
}

test.each([
  ['under the id of the question', {}],
  ['under its words alone', { questionId: undefined }],
])('the code of an answer is not the word of the question: %s', async (_, body) => {
  const { question, send } = await asked();
  const refused = await send({ ...body, code: 'not-found', found: false });
  expect(refused.status).toBe(422);
  expect(at(refused.json, 'errors', 0)).toMatchObject({ pointer: '/code', received: 'not-found' });
  expect(String(at(refused.json, 'errors', 0, 'detail'))).toMatch(
    /must be the word of the question: turn-miscounted\. .*begins with the code/,
  );
  expect(at(await question(), 'answered')).toBeUndefined();
  const kept = await send({ ...body, code: 'turn-miscounted', found: false });
  expect(kept.status).toBe(201);
  expect(at(await question(), 'answered', 'found')).toBe(false);
});

test('an answer that is the code of a yes or a no settles the question by itself', async () => {
  const { question, send } = await asked();
  expect((await send({ answer: 'not-found' })).status).toBe(201);
  expect(at(await question(), 'answered', 'found')).toBe(false);
});
