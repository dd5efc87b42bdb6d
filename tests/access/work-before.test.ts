import { afterAll, beforeAll, expect, test } from 'vitest';
import { byAnotherApp } from '../tools/by-another-app.ts';
import { openCall, sendJson } from '../tools/call.ts';
import { makeLink } from '../tools/filled-call.ts';
import { postForm } from '../tools/post-form.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

/** What takes long is done before the transaction that keeps it: no connection is lent out and no build locked meanwhile. */
let service: TestService;
let person: Person;
const computed: { readonly name: string; readonly lentOut: number }[] = [];

beforeAll(async () => {
  const made = await testService();
  const { work, db } = made.deps;
  service = await byAnotherApp(made, {
    work: {
      ...work,
      answer: (each, ...rest) => {
        computed.push({ name: each.name, lentOut: db.pool.totalCount - db.pool.idleCount });
        return work.answer(each, ...rest);
      },
    },
  });
  person = await service.person();
});
afterAll(() => service.close());

test('a computation that a builder keeps, over JSON and from the form, is computed with no transaction open', async () => {
  const { callId, buildId } = await openCall(service, person);
  const { secret, bench } = await makeLink(service, person, callId);
  const kept = await sendJson(
    service,
    { authorization: `Bearer ${secret}` },
    'POST',
    `/api/v1/builds/${buildId}/workings`,
    { computation: 'top-dead-centre', inputs: { stopReadings: ['36.75 deg', '35.25 deg'] } },
  );
  expect(kept.status).toBe(201);
  const form = await postForm(
    service,
    '/bench/workings/adjuster',
    {
      form: 'working',
      computation: 'adjuster',
      thread: '7/16-20',
      turns: '.5',
      ratio: '1.5',
      mount: 'stud-nut',
      lifter: 'hydraulic',
      key: crypto.randomUUID(),
    },
    { cookies: { 'benchcall-bench': bench } },
  );
  expect(form.statusCode).toBe(303);
  expect(computed).toEqual([
    { name: 'top-dead-centre', lentOut: 0 },
    { name: 'adjuster', lentOut: 0 },
  ]);
});

test('nothing is computed for a build that is not the caller’s, or for nobody', async () => {
  const { callId } = await openCall(service, person);
  const other = await openCall(service, person);
  const { secret } = await makeLink(service, person, callId);
  const before = computed.length;
  const body = { computation: 'top-dead-centre', inputs: { stopReadings: ['36.75 deg', '35.25 deg'] } };
  const url = `/api/v1/builds/${other.buildId}/workings`;
  expect((await sendJson(service, { authorization: `Bearer ${secret}` }, 'POST', url, body)).status).toBe(
    404,
  );
  expect((await sendJson(service, {}, 'POST', url, body)).status).toBe(401);
  expect(computed).toHaveLength(before);
});

test('sent twice with its key it is kept once', async () => {
  const { buildId } = await openCall(service, person);
  const body = { computation: 'top-dead-centre', inputs: { stopReadings: ['36.75 deg', '35.25 deg'] } };
  const url = `/api/v1/builds/${buildId}/workings`;
  const key = { 'idempotency-key': crypto.randomUUID() };
  const one = await sendJson(service, person.bearer, 'POST', url, body, key);
  const two = await sendJson(service, person.bearer, 'POST', url, body, key);
  expect([one.status, two.status, two.json]).toEqual([201, 201, one.json]);
  const listed = await sendJson(service, person.bearer, 'GET', url);
  expect(listed.json.workings).toHaveLength(1);
});
