import { z } from 'zod';
import { defined } from '../defined.ts';
import { type Dimension, unitsOf } from '../quantities/units.ts';
import { fieldInfo } from './field-info.ts';
import { type QuantityRange, readQuantity } from './read-quantity.ts';
import { refuse } from './refuse.ts';

/** JSON Schema of a quantity: `{ value, unit }`, or a text. */
export function quantityJsonSchema(dimension: Dimension) {
  return {
    anyOf: [
      {
        type: 'object' as const,
        properties: {
          value: { type: 'number' as const },
          unit: { type: 'string' as const, enum: unitsOf(dimension) },
        },
        required: ['value', 'unit'],
        additionalProperties: false,
      },
      { type: 'string' as const, minLength: 1, maxLength: 200 },
    ],
  };
}

/** A quantity of `dimension`; inside it is a number in SI. */
export function quantity(dimension: Dimension, description: string, range: QuantityRange = {}) {
  const schema = z
    .unknown()
    .transform((raw, ctx): number => {
      const read = readQuantity(raw, dimension, range);
      if (read.ok) return read.si;
      return refuse(ctx, read.code, read.detail, read.at === undefined ? [] : [read.at]);
    })
    .meta({ ...quantityJsonSchema(dimension), description, 'x-dimension': dimension });
  fieldInfo.add(schema, { control: 'quantity', dimension, ...defined({ canBe: range.canBe }) });
  return schema;
}

export const length = (description: string, range?: QuantityRange) => quantity('length', description, range);

export const angle = (description: string, range: QuantityRange = { sign: 'any' }) =>
  quantity('angle', description, range);

export const load = (description: string, range: QuantityRange = { sign: 'not-negative' }) =>
  quantity('load', description, range);

export const rate = (description: string, range?: QuantityRange) => quantity('rate', description, range);
