import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { encoded } from '../../../server/compute/encode.ts';
import { defined } from '../../../shared/defined.ts';
import { answer } from '../../../shared/schemas/answer.ts';
import { out } from '../../../shared/schemas/outputs.ts';

const inner = z.object({ size: z.number(), note: z.string().optional() });
const schema = z.object({
  id: z.string(),
  due: z.string().optional(),
  one: inner.optional(),
  many: z.array(inner),
  data: z.record(z.string(), z.unknown()),
  lift: out('length', 'a length'),
});
const lift = () => encoded(schema.shape.lift, 0.0127, 'inch');

describe('an answer', () => {
  test('has what its schema names, and nothing else at any depth', () => {
    const row = { size: 1, secret: 'of the row' };
    const made = answer(schema, {
      ...{ hash: 'of the whole' },
      id: 'a',
      due: undefined,
      one: row,
      many: [row, { size: 2, note: 'seen' }],
      data: { any: { thing: 1 } },
      lift: lift(),
    });
    expect(made).toStrictEqual({
      id: 'a',
      one: { size: 1 },
      many: [{ size: 1 }, { size: 2, note: 'seen' }],
      data: { any: { thing: 1 } },
      // 25.4 mm to the inch: NIST SP 811, B.8.
      lift: { value: 0.5, unit: 'in' },
    });
  });

  test('leaves out what is undefined, and changes nothing it was given', () => {
    const given = { id: 'a', due: undefined, one: undefined, many: [], data: {}, lift: lift() };
    expect(Object.keys(answer(schema, given))).toEqual(['id', 'many', 'data', 'lift']);
    expect(Object.keys(given)).toHaveLength(6);
  });

  test('takes parts that are answers themselves', () => {
    const part = answer(inner, { size: 3, note: undefined });
    const made = answer(schema, { id: 'a', due: 'x', one: part, many: [part], data: {}, lift: lift() });
    expect(made).toMatchObject({ one: { size: 3 }, many: [{ size: 3 }] });
  });
});

test('defined parts are kept, false, zero and null among them', () => {
  expect(defined({ a: 0, b: undefined, c: false, d: null, e: '' })).toStrictEqual({
    a: 0,
    c: false,
    d: null,
    e: '',
  });
});
