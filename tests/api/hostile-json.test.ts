import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { memberOf } from '../../shared/member.ts';
import { METHOD, openCall, sendJson, startSetUp } from '../tools/call.ts';
import { problemIn } from '../tools/problem.ts';
import { type Person, type TestService, testService } from '../tools/service.ts';

/** What JSON (RFC 8259) can carry and the service must not take, and none of it answered with 500. */
let service: TestService;
let person: Person;
let buildId: string;
let callId: string;
let setUpId: string;

beforeAll(async () => {
  service = await testService({ COMPUTE_PER_MINUTE: '1000000' });
  person = await service.person();
  ({ buildId, callId } = await openCall(service, person));
  setUpId = await startSetUp(service, person, buildId);
});

afterAll(() => service.close());

const send = (url: string, payload: string | Buffer, method: 'POST' | 'PUT' = 'POST') =>
  service.request({
    method,
    url,
    headers: { ...person.bearer, 'content-type': 'application/json' },
    payload,
  });

describe('characters that can’t be kept', () => {
  test.each([
    ['U+0000', '\\u0000'],
    ['a high surrogate alone', '\\ud800'],
    ['a low surrogate alone', '\\udc00'],
    ['surrogates in the wrong order', '\\udc00\\ud800'],
  ])('%s is 422 at its pointer, and nothing is kept', async (_, sign) => {
    const response = await send('/api/v1/calls', `{"goal":"identify","buildLabel":"a${sign}b"}`);
    const { errors } = problemIn(response, 422, 'invalid-input');
    expect(errors?.map(({ pointer, code }) => [pointer, code])).toEqual([['/buildLabel', 'not-allowed']]);
    const deep = await send(
      `/api/v1/builds/${buildId}/revisions`,
      `{"spec":{"engine":{"description":"x${sign}","firingOrder":"${sign}"}}}`,
    );
    const told = problemIn(deep, 422, 'invalid-input');
    expect(told.errors?.map((fault) => fault.pointer)).toEqual([
      '/spec/engine/description',
      '/spec/engine/firingOrder',
    ]);
    const name = await send('/api/v1/calls', `{"goal":"identify","buildLabel":"a","x${sign}":1}`);
    problemIn(name, 422, 'invalid-input');
  });

  test('a pair of surrogates is a character like any other and is kept as it came', async () => {
    const label = 'Blower \u{1F4A8} on top';
    const response = await send('/api/v1/calls', JSON.stringify({ goal: 'identify', buildLabel: label }));
    expect(response.statusCode).toBe(201);
    const listed = await sendJson(service, person.bearer, 'GET', '/api/v1/calls');
    expect(listed.text).toContain(label);
  });

  test('bytes that are not UTF-8 are 400, not another text (RFC 8259, 8.1)', async () => {
    const body = (bytes: number[]) =>
      Buffer.concat([
        Buffer.from('{"goal":"identify","buildLabel":"'),
        Buffer.from(bytes),
        Buffer.from('"}'),
      ]);
    // A surrogate in UTF-8 (CESU-8), a byte of no character, an overlong slash: Unicode 15, table 3-7.
    for (const bytes of [[0xed, 0xa0, 0x80], [0xff], [0xc0, 0xaf]])
      problemIn(await send('/api/v1/calls', body(bytes)), 400, 'invalid-json');
  });
});

describe('numbers that are none', () => {
  const lift = (lobeLift: string) =>
    send('/api/v1/compute/lift', `{"lobeLift":${lobeLift},"ratio":1.6,"lash":".016 in"}`);

  test('the precondition: the same body with a usual number is taken', async () => {
    expect((await lift('{"value":0.35,"unit":"in"}')).statusCode).toBe(200);
  });

  test.each(['1e999', '-1e999', '123456789012345678901234567890e300'])(
    '%s is beyond double precision (IEEE 754) and refused at its pointer',
    async (literal) => {
      const response = await lift(`{"value":${literal},"unit":"in"}`);
      const { errors } = problemIn(response, 422, 'invalid-input');
      expect(errors?.[0]?.pointer).toMatch(/^\/lobeLift/);
      const ratio = await send(
        '/api/v1/compute/lift',
        `{"lobeLift":".35 in","ratio":${literal},"lash":".016 in"}`,
      );
      problemIn(ratio, 422, 'invalid-input');
    },
  );

  test.each(['9007199254740993', '1e16', '-9007199254740993', '4294967297', '2147483648', '1.5'])(
    '%s is no cylinder, pass or number of days',
    async (literal) => {
      const set = await send(
        `/api/v1/builds/${buildId}/set-ups`,
        `{"cylinder":${literal},"valve":"intake","method":${JSON.stringify(METHOD)}}`,
      );
      problemIn(set, 422, 'invalid-input');
      const pass = await send(
        `/api/v1/builds/${buildId}/set-ups/${setUpId}/readings`,
        `{"kind":"valve-lift","pass":${literal},"peak":".482 in"}`,
      );
      problemIn(pass, 422, 'invalid-input');
      const days = await send(`/api/v1/calls/${callId}/share-links`, `{"days":${literal}}`);
      problemIn(days, 422, 'invalid-input');
    },
  );

  test.each([
    '{"value":"0.35","unit":"in"}',
    '{"value":null,"unit":"in"}',
    '{"value":[0.35],"unit":"in"}',
    'null',
    '[]',
    'true',
    '0.35',
  ])('%s is no length', async (literal) => {
    problemIn(await lift(literal), 422, 'invalid-input');
  });

  test('minus zero is no lift', async () => {
    problemIn(await lift('{"value":-0,"unit":"in"}'), 422, 'invalid-input');
  });
});

describe('names with a meaning to the language', () => {
  test.each(['__proto__', 'constructor', 'prototype', 'toString', 'hasOwnProperty'])(
    '"%s" is an unknown field wherever it stands',
    async (name) => {
      const top = await send(
        '/api/v1/calls',
        `{"goal":"identify","buildLabel":"x","${name}":{"roles":["administrator"]}}`,
      );
      const { errors } = problemIn(top, 422, 'invalid-input');
      expect(errors?.map(({ pointer, code }) => [pointer, code])).toEqual([[`/${name}`, 'unknown-field']]);
      const inner = await send(
        '/api/v1/compute/lift',
        `{"lobeLift":{"value":0.35,"unit":"in","${name}":1},"ratio":1.6}`,
      );
      problemIn(inner, 422, 'invalid-input');
      expect(memberOf({}, 'roles')).toBeUndefined();
    },
  );

  test('a field given twice is the later one, as JSON.parse has it', async () => {
    const response = await send('/api/v1/calls', '{"goal":"sell","goal":"identify","buildLabel":"x"}');
    expect(response.statusCode).toBe(201);
  });
});

describe('nesting without end', () => {
  test.each([
    ['100 000 lists', 100_000, '[', ']'],
    ['40 000 objects', 40_000, '{"a":', '}'],
  ] as const)('%s in each other are 400, at once', async (_, depth, open, close) => {
    const body = `{"goal":"identify","buildLabel":${open.repeat(depth)}1${close.repeat(depth)}}`;
    problemIn(await send('/api/v1/calls', body), 400, 'invalid-json');
    expect((await service.request({ url: '/health/live' })).statusCode).toBe(200);
  });

  test.each([
    ['closing brackets in a text', `"${']'.repeat(100)}"`],
    ['closing brackets after a quotation mark in a text', `"\\\\\\"${'}'.repeat(100)}"`],
    ['a text that ends in a backslash', '"\\\\"'],
  ])('%s hide no nesting: RFC 8259, 7', async (_, text) => {
    const nested = (depth: number) =>
      `{"a":${'['.repeat(depth)}${text},${'['.repeat(3)}1]]]${']'.repeat(depth)}}`;
    problemIn(await send('/api/v1/calls', nested(40)), 400, 'invalid-json');
    problemIn(await send('/api/v1/calls', nested(30)), 422, 'invalid-input');
  });

  test('a body of many faults is answered with a bounded list', async () => {
    const names = Array.from({ length: 20_000 }, (_, index) => `"f${index}":1`).join(',');
    const response = await send('/api/v1/calls', `{${names}}`);
    const { errors } = problemIn(response, 422, 'invalid-input');
    expect(errors?.length).toBeLessThanOrEqual(100);
    expect(response.body.length).toBeLessThan(50_000);
  });
});
