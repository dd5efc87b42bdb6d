import { Ajv2020 } from 'ajv/dist/2020.js';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { z } from 'zod';
import { loadComputations } from '../../server/compute/registry.ts';
import { type TestService, testService } from '../tools/service.ts';
import { expectDerived } from './compute/forms.ts';

/** A program that knows the address of the list and JSON Schema (draft 2020-12), and nothing else. */
let service: TestService;
const listed: { name: string; title: string; summary: string }[] = [];

beforeAll(async () => {
  service = await testService({ COMPUTE_PER_MINUTE: '1000000' });
  const response = await service.request('/api/v1/compute');
  expect(response.statusCode).toBe(200);
  const list = z.strictObject({
    computations: z.array(
      z.strictObject({ name: z.string(), title: z.string().min(3), summary: z.string().min(10) }),
    ),
  });
  listed.push(...list.parse(response.json()).computations);
});
afterAll(() => service.close());

const NAMES = [...(await loadComputations()).keys()];

const schema = z.looseObject({
  $schema: z.literal('https://json-schema.org/draft/2020-12/schema'),
  type: z.literal('object'),
  properties: z.record(z.string(), z.unknown()),
});
const described = z.strictObject({
  name: z.string(),
  title: z.string(),
  summary: z.string(),
  inputs: schema,
  outputs: schema,
  equation: z.string().min(5),
  source: z.string().min(5),
  validity: z.string().min(5),
  example: z.strictObject({
    inputs: z.record(z.string(), z.unknown()),
    result: z.record(z.string(), z.unknown()),
  }),
});

const ajv = new Ajv2020({ strict: false, allErrors: true });

async function describedAs(name: string) {
  const response = await service.request(`/api/v1/compute/${name}`);
  expect(response.statusCode).toBe(200);
  return described.parse(response.json());
}

const compute = (name: string, body: unknown, query = '') =>
  service.request({
    method: 'POST',
    url: `/api/v1/compute/${name}${query}`,
    headers: { 'content-type': 'application/json' },
    payload: JSON.stringify(body),
  });

test('the list has every computation, once', () => {
  expect(listed.map(({ name }) => name).sort()).toEqual(NAMES.toSorted());
});

test.each(NAMES)('%s: its example is answered as documented, by its published schemas', async (name) => {
  const about = await describedAs(name);
  expect(about.name).toBe(name);
  const input = ajv.compile(about.inputs);
  const output = ajv.compile(about.outputs);
  expect(input(about.example.inputs), ajv.errorsText(input.errors)).toBe(true);
  expect(output(about.example.result), ajv.errorsText(output.errors)).toBe(true);
  for (const query of ['', '?units=inch', '?units=metric']) {
    const response = await compute(name, about.example.inputs, query);
    expect(response.statusCode, response.body).toBe(200);
    const { result, basis } = z
      .strictObject({
        result: z.unknown(),
        assumptions: z.array(z.string().min(3)),
        cautions: z.array(z.string().min(3)),
        basis: z.unknown(),
      })
      .parse(response.json());
    expect(output(result), ajv.errorsText(output.errors)).toBe(true);
    expect(basis).toEqual({ equation: about.equation, source: about.source, validity: about.validity });
    if (query !== '?units=metric') expectDerived(result, about.example.result);
  }
});

test.each(NAMES)('%s: the schema refuses what the service refuses', async (name) => {
  const about = await describedAs(name);
  const input = ajv.compile(about.inputs);
  const example = about.example.inputs;
  for (const field of Object.keys(example)) {
    const { [field]: _gone, ...without } = example;
    for (const body of [without, { ...example, [field]: null }, { ...example, [field]: true }]) {
      const { statusCode } = await compute(name, body);
      expect([input(body), statusCode], JSON.stringify(body).slice(0, 200)).toEqual(
        statusCode === 200 ? [true, 200] : [false, 422],
      );
    }
  }
  expect(input({ ...example, surprise: 1 })).toBe(false);
  expect(input([])).toBe(false);
});

test('a name that is not there is 404, to look at and to compute', async () => {
  for (const name of ['valve-lift', 'LIFT', '__proto__', 'constructor', 'lift%2F', 'lift/x', '%00', '..']) {
    for (const method of ['GET', 'POST'] as const) {
      const response = await service.request({
        method,
        url: `/api/v1/compute/${name}`,
        ...(method === 'POST' ? { headers: { 'content-type': 'application/json' }, payload: '{}' } : {}),
      });
      expect([name, method, [400, 404].includes(response.statusCode)]).toEqual([name, method, true]);
      expect(response.headers['content-type']).toMatch(/^application\/problem\+json/);
    }
  }
  expect((await service.request('/api/v1/compute/valve-lift')).statusCode).toBe(404);
  expect((await compute('valve-lift', {})).statusCode).toBe(404);
});

test.each([
  ['PUT', '/api/v1/compute/lift', ['GET', 'HEAD', 'POST']],
  ['DELETE', '/api/v1/compute/lift', ['GET', 'HEAD', 'POST']],
  ['PATCH', '/api/v1/compute/lift', ['GET', 'HEAD', 'POST']],
  ['POST', '/api/v1/compute', ['GET', 'HEAD']],
  ['DELETE', '/api/v1/compute', ['GET', 'HEAD']],
] as const)('%s %s is 405 and says what is taken', async (method, url, allowed) => {
  const response = await service.request({ method, url });
  expect(response.statusCode).toBe(405);
  expect(response.headers['content-type']).toMatch(/^application\/problem\+json/);
  const told = String(response.headers.allow).split(', ').sort();
  expect(told).toEqual([...allowed]);
});
