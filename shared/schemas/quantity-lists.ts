import { z } from 'zod';
import { defined } from '../defined.ts';
import { memberOf } from '../member.ts';
import { type Dimension, type Unit, unitsOf } from '../quantities/units.ts';
import { fieldInfo } from './field-info.ts';
import { quantityJsonSchema } from './quantity-fields.ts';
import { readBare } from './read-bare.ts';
import { fromValueAndUnit, type QuantityReading, readQuantity, sharedUnit } from './read-quantity.ts';
import { type ArrayRange, type Context, LONGEST, refuse, tooMany } from './refuse.ts';

interface GivenList {
  readonly items: readonly unknown[];
  /** Where the items stand within the field. */
  readonly at: readonly string[];
  /** The unit of bare items; left out where each item brings its own. */
  readonly unit?: Unit;
}

/** A list as `{ values, unit }`; undefined once anything about the whole of it is refused. */
function listWithUnit(raw: object, dimension: Dimension, ctx: Context): GivenList | undefined {
  const values = memberOf(raw, 'values');
  for (const key of Object.keys(raw).filter((each) => each !== 'values' && each !== 'unit')) {
    refuse(ctx, 'unknown-field', 'is not a part of a list of quantities', [key]);
  }
  if (values === undefined) refuse(ctx, 'required', 'is missing: a list of numbers', ['values']);
  else if (!Array.isArray(values)) refuse(ctx, 'not-allowed', 'must be a list of numbers', ['values']);
  const unit = sharedUnit(memberOf(raw, 'unit'), dimension);
  // One unit for all: it is at fault once, not with every item.
  if (!unit.ok) refuse(ctx, unit.code, unit.detail, ['unit']);
  if (!Array.isArray(values)) return undefined;
  return { items: values, at: ['values'], ...(unit.ok ? { unit: unit.unit } : {}) };
}

function arrayOf(raw: unknown, dimension: Dimension, ctx: Context): GivenList | undefined {
  if (raw === undefined) {
    refuse(ctx, 'required', 'is missing: a list');
    return undefined;
  }
  if (Array.isArray(raw)) return { items: raw, at: [] };
  const parts = typeof raw === 'object' && raw !== null ? raw : {};
  if (Object.hasOwn(parts, 'values') || Object.hasOwn(parts, 'unit')) {
    return listWithUnit(parts, dimension, ctx);
  }
  refuse(ctx, 'not-allowed', 'must be a list');
  return undefined;
}

/** Reads a bare item of a list with one unit; where that unit is at fault, by its being a number alone. */
function readShared(
  item: unknown,
  unit: Unit | undefined,
  dimension: Dimension,
  range: ArrayRange,
): QuantityReading {
  const number = readBare(item, {});
  if (!number.ok) return number;
  return fromValueAndUnit(item, unit ?? unitsOf(dimension)[0], dimension, unit ? range : { sign: 'any' });
}

/** A list of quantities of `dimension`, as an array of quantities or `{ values, unit }`; SI inside. */
function quantities(dimension: Dimension, description: string, range: ArrayRange = {}) {
  const schema = z
    .unknown()
    .transform((raw, ctx): number[] => {
      const list = arrayOf(raw, dimension, ctx);
      if (list === undefined || tooMany(ctx, list.items, range)) return z.NEVER;
      return list.items.map((item, index) => {
        const shared = list.at.length > 0;
        const read = shared
          ? readShared(item, list.unit, dimension, range)
          : readQuantity(item, dimension, range);
        if (read.ok) return read.si;
        const within = read.at === undefined ? [] : [read.at];
        return refuse(ctx, read.code, read.detail, [...list.at, index, ...within]);
      });
    })
    .meta({
      anyOf: [
        { type: 'array' as const, items: quantityJsonSchema(dimension), maxItems: range.most ?? LONGEST },
        {
          type: 'object' as const,
          properties: {
            values: {
              type: 'array' as const,
              items: { type: 'number' as const },
              maxItems: range.most ?? LONGEST,
            },
            unit: { type: 'string' as const, enum: unitsOf(dimension) },
          },
          required: ['values', 'unit'],
          additionalProperties: false,
        },
      ],
      description,
      'x-dimension': dimension,
    });
  fieldInfo.add(schema, { control: 'quantities', dimension, ...defined({ canBe: range.canBe }) });
  return schema;
}

export const lengths = (description: string, range?: ArrayRange) => quantities('length', description, range);

export const angles = (description: string, range: ArrayRange = { sign: 'any' }) =>
  quantities('angle', description, range);
