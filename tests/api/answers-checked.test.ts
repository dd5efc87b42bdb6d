import type { FastifySchema } from 'fastify';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { z } from 'zod';
import { buildApp } from '../../server/app.ts';
import { quantityView } from '../../shared/schemas/answer-parts.ts';
import { out, outEvent } from '../../shared/schemas/outputs.ts';
import { ask } from '../tools/http.ts';
import { type TestService, testService } from '../tools/service.ts';
import { faultsOfAnswer, strictAnswers } from '../tools/strict-answers.ts';

const schema = z.object({
  name: z.string(),
  lift: out('length', 'a length'),
  opens: outEvent('BTDC', 'an event').optional(),
  range: z.tuple([z.number(), z.number()]).optional(),
  open: z.record(z.string(), z.unknown()).optional(),
  rows: z.array(z.object({ at: z.iso.datetime(), word: z.enum(['near', 'far']).optional() })),
  kept: z.object({ size: quantityView }).meta({ id: 'AnswerOfATest' }).optional(),
});
const sound = {
  name: 'a',
  lift: { value: 0.5, unit: 'in' },
  opens: { value: 20, unit: 'deg', side: 'BTDC' },
  range: [1, 2],
  open: { anything: { at: 'all' } },
  rows: [{ at: '2026-03-14T09:00:00.000Z', word: 'near' }],
  kept: { size: { value: 1, unit: 'mm' } },
};
const faults = (changed: object) =>
  faultsOfAnswer(schema, JSON.stringify({ ...sound, ...changed })).join(' ');

describe('an answer is held to its published schema', () => {
  test('a sound one passes', () => {
    expect(faults({})).toBe('');
    expect(faults({ opens: undefined, range: undefined, kept: undefined, rows: [] })).toBe('');
  });

  test.each<[string, object, RegExp]>([
    ['an unknown key', { surplus: 1 }, /surplus/],
    ['an unknown key in a list', { rows: [{ at: sound.rows[0]?.at, surplus: 1 }] }, /surplus.*rows\[0\]/],
    ['an unknown key in a named schema', { kept: { size: sound.kept.size, surplus: 1 } }, /surplus.*kept/],
    ['an unknown key in a quantity', { lift: { ...sound.lift, typed: '.5' } }, /typed.*lift/],
    ['a missing key', { name: undefined }, /at name/],
    ['a missing key in a list', { rows: [{ word: 'far' }] }, /rows\[0\]\.at/],
    ['a number in SI where a quantity is due', { lift: 0.0127 }, /at lift/],
    ['a quantity in a unit of another kind', { lift: { value: 0.5, unit: 'lbf' } }, /lift\.unit/],
    ['an event without its side', { opens: { value: 20, unit: 'deg' } }, /opens\.side/],
    ['null where something is due', { range: null }, /at range/],
    ['a tuple too long', { range: [1, 2, 3] }, /at range/],
    ['a word that is not in the list', { rows: [{ at: sound.rows[0]?.at, word: 'off' }] }, /rows\[0\]\.word/],
    ['a date that is none', { rows: [{ at: '14 March' }] }, /rows\[0\]\.at/],
  ])('%s does not', (_, changed, said) => {
    expect(faults(changed)).toMatch(said);
  });

  test('a schema that leaves its keys open can’t be checked against', () => {
    expect(() => faultsOfAnswer(z.object({ it: z.unknown().meta({ type: 'object' }) }), '{}')).toThrow(
      /which keys/,
    );
  });
});

describe('in the service', () => {
  let service: TestService;
  beforeAll(async () => {
    service = await testService();
  });
  afterAll(() => service.close());

  test('a route that answers more, less or other than it declares is named, and its answer is held back', async () => {
    const answers = strictAnswers();
    const app = await buildApp({ ...service.deps, checkAnswer: answers.check });
    const declared: { readonly schema: FastifySchema } = {
      schema: { hide: true, response: { 200: z.object({ id: z.int() }) } },
    };
    app.get('/api/v1/surplus', declared, () => ({ id: 1, hash: 'secret' }));
    app.get('/api/v1/text', declared, (_, reply) => reply.type('application/json').send('{"id":"1"}'));
    app.get('/api/v1/undeclared', { schema: { hide: true } }, () => ({ id: 1 }));
    app.get('/api/v1/other-status', declared, (_, reply) => reply.code(203).send({ id: 1 }));
    app.get('/api/v1/sound', declared, () => ({ id: 1 }));
    for (const name of ['surplus', 'text', 'undeclared', 'other-status']) {
      const response = await ask(app, `/api/v1/${name}`);
      expect(response.statusCode).toBe(500);
      expect(response.body).not.toContain('secret');
    }
    expect((await ask(app, '/api/v1/sound')).json()).toEqual({ id: 1 });
    expect((await ask(app, '/api/v1/me')).statusCode).toBe(401);
    await app.close();
    expect(answers.faults).toEqual([
      expect.stringMatching(/^GET \/api\/v1\/surplus 200: .*"hash"/),
      expect.stringMatching(/^GET \/api\/v1\/text 200: .*at id/),
      expect.stringMatching(/^GET \/api\/v1\/undeclared 200: no schema is declared/),
      expect.stringMatching(/^GET \/api\/v1\/other-status 203: no schema is declared/),
    ]);
  });

  test('a service under test does not close over a faulty answer', async () => {
    const faulty = await testService();
    expect(() => faulty.deps.checkAnswer?.('GET /faulty 200', schema, '{}')).toThrow(/GET \/faulty 200/);
    await expect(faulty.close()).rejects.toThrow(/GET \/faulty 200/);
  });
});
