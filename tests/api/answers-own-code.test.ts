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
  const questions = async () => {
    const { json } = await sendJson(service, desk.bearer, 'GET', `${url}/sheet`);
    return asList(at(json, 'questions')).map((each) => ({
      id: String(at(each, 'id')),
      code: String(at(each, 'code')),
      ask: String(at(each, 'ask')),
      answers: asList(at(each, 'answers')).map((one) => String(at(one, 'code'))),
    }));
  };
  return { question, questions, send };
}

const asList = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);

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

const refusedAnswer = async (answer: string, found?: boolean) => {
  const { question, send } = await asked();
  const sent = await send({ answer, ...(found === undefined ? {} : { found }) });
  return { sent, question };
};

test('the label of an answer is no answer: it is refused with the codes, and nothing is kept', async () => {
  const { sent, question } = await refusedAnswer('Looked: it does not fit');
  expect(sent.status).toBe(422);
  expect(at(sent.json, 'errors', 0)).toMatchObject({ pointer: '/answer', code: 'not-allowed' });
  expect(String(at(sent.json, 'errors', 0, 'detail'))).toMatch(
    /begins with the code of one of the answers to turn-miscounted: found \(.*\), not-found \(Looked: it does not fit\)/,
  );
  expect(at(await question(), 'answered')).toBeUndefined();
});

test('beside a yes or a no the words are free', async () => {
  const { sent, question } = await refusedAnswer('Looked: it does not fit', false);
  expect(sent.status).toBe(201);
  expect(at(await question(), 'answered', 'found')).toBe(false);
});

test('a question with words of its own takes one of them, and says which', async () => {
  const { send, questions } = await asked();
  const own = (await questions()).find((each) => each.code === 'lash-not-said');
  if (own === undefined) throw new Error('nobody asks for the lash of the sheet');
  const body = { question: own.ask, questionId: own.id };
  const refused = await send({ ...body, answer: 'some of it' });
  expect(refused.status).toBe(422);
  const [zero = ''] = own.answers;
  expect(String(at(refused.json, 'errors', 0, 'detail'))).toContain(`to lash-not-said: ${zero} (`);
  expect((await send({ ...body, answer: zero })).status).toBe(201);
});

test('how far a plunger leaned does not go with the answer that it did not', async () => {
  const { send } = await asked();
  const leaning = {
    question: 'Does it lean?',
    questionId: undefined,
    code: 'plunger-tilted',
    lean: '12 deg',
  };
  const refused = await send({ ...leaning, answer: 'not-found', found: false });
  expect(refused.status).toBe(422);
  expect(at(refused.json, 'errors', 0)).toMatchObject({ pointer: '/lean' });
});

test('an answer whose label is its own code is taken by that code', async () => {
  const { buildId } = await openCall(service, desk, 'Noise', 'noise-or-failure');
  const url = `/api/v1/builds/${buildId}`;
  const { json } = await sendJson(service, desk.bearer, 'GET', `${url}/assessment`);
  const which = asList(at(json, 'questions')).find((each) => at(each, 'code') === 'noise-which');
  const { status } = await sendJson(service, desk.bearer, 'POST', `${url}/answers`, {
    question: String(at(which, 'ask')),
    questionId: String(at(which, 'id')),
    code: 'noise-which',
    answer: 'several',
  });
  expect(status).toBe(201);
});
