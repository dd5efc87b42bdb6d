import { z } from 'zod';
import type { FaultCode } from '../problems/faults.ts';
import { type Dimension, type Unit, unitsOf } from '../quantities/units.ts';
import { fieldInfo } from './field-info.ts';
import {
  fromValueAndUnit,
  type QuantityRange,
  type QuantityReading,
  readQuantity,
  sharedUnit,
} from './read-quantity.ts';

/** The longest array taken unless a field says otherwise. */
export const LONGEST = 2000;

interface Context {
  addIssue(issue: {
    code: 'custom';
    message: string;
    path?: PropertyKey[];
    params: { fault: FaultCode };
    input?: unknown;
  }): void;
}

function refuse(ctx: Context, faultCode: FaultCode, message: string, path: PropertyKey[] = []): never {
  ctx.addIssue({ code: 'custom', message, path, params: { fault: faultCode } });
  return z.NEVER;
}

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
  fieldInfo.add(schema, { control: 'quantity', dimension });
  return schema;
}

export const length = (description: string, range?: QuantityRange) => quantity('length', description, range);
export const angle = (description: string, range: QuantityRange = { sign: 'any' }) =>
  quantity('angle', description, range);
export const load = (description: string, range: QuantityRange = { sign: 'not-negative' }) =>
  quantity('load', description, range);
export const rate = (description: string, range?: QuantityRange) => quantity('rate', description, range);

export interface ArrayRange extends QuantityRange {
  readonly least?: number;
  readonly most?: number;
}

function tooMany(ctx: Context, items: readonly unknown[], range: ArrayRange): boolean {
  const most = range.most ?? LONGEST;
  if (items.length > most) {
    refuse(ctx, 'too-many', `has ${items.length} items; ${most} at the most`);
    return true;
  }
  const least = range.least ?? 1;
  if (items.length < least) {
    refuse(ctx, 'required', `has ${items.length} items; ${least} at the least`);
    return true;
  }
  return false;
}

interface GivenList {
  readonly items: readonly unknown[];
  /** Where the items stand within the field. */
  readonly at: readonly string[];
  /** The unit of bare items; left out where each item brings its own. */
  readonly unit?: Unit;
}

/** A list as `{ values, unit }`; undefined once anything about the whole of it is refused. */
function listWithUnit(raw: object, dimension: Dimension, ctx: Context): GivenList | undefined {
  const values: unknown = Reflect.get(raw, 'values');
  for (const key of Object.keys(raw).filter((each) => each !== 'values' && each !== 'unit')) {
    refuse(ctx, 'unknown-field', 'is not a part of a list of quantities', [key]);
  }
  if (values === undefined) refuse(ctx, 'required', 'is missing: a list of numbers', ['values']);
  else if (!Array.isArray(values)) refuse(ctx, 'not-allowed', 'must be a list of numbers', ['values']);
  const unit = sharedUnit(Reflect.get(raw, 'unit'), dimension);
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
export function quantities(dimension: Dimension, description: string, range: ArrayRange = {}) {
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
  fieldInfo.add(schema, { control: 'quantities', dimension });
  return schema;
}

export const lengths = (description: string, range?: ArrayRange) => quantities('length', description, range);
export const angles = (description: string, range: ArrayRange = { sign: 'any' }) =>
  quantities('angle', description, range);

export interface NumberRange {
  readonly least?: number;
  readonly most?: number;
  readonly above?: number;
  readonly below?: number;
  readonly whole?: boolean;
  /** Past this no machine part goes: `impossible-input`. */
  readonly beyond?: number;
}

type NumberReading = { ok: true; value: number } | { ok: false; code: FaultCode; detail: string };

const no = (code: FaultCode, detail: string): NumberReading => ({ ok: false, code, detail });

/** Reads a bare number within a range; anything else is told apart by its code. */
export function readBare(raw: unknown, range: NumberRange): NumberReading {
  if (raw === undefined) return no('required', 'is missing: a bare number');
  if (typeof raw === 'object' && raw !== null && Object.hasOwn(raw, 'unit')) {
    return no('wrong-dimension', 'has no unit; give a bare number');
  }
  if (typeof raw !== 'number') return no('not-a-number', 'must be a bare number');
  if (!Number.isFinite(raw)) return no('out-of-range', 'must be a finite number');
  if (range.beyond !== undefined && Math.abs(raw) > range.beyond) {
    return no('impossible-input', 'is beyond any machine part');
  }
  if (range.whole && !Number.isSafeInteger(raw)) return no('out-of-range', 'must be a whole number');
  if (range.least !== undefined && raw < range.least)
    return no('out-of-range', `must be ${range.least} or more`);
  if (range.most !== undefined && raw > range.most)
    return no('out-of-range', `must be ${range.most} or less`);
  if (range.above !== undefined && raw <= range.above)
    return no('out-of-range', `must be above ${range.above}`);
  if (range.below !== undefined && raw >= range.below)
    return no('out-of-range', `must be below ${range.below}`);
  return { ok: true, value: raw };
}

function numberJsonSchema(range: NumberRange) {
  return {
    type: range.whole ? ('integer' as const) : ('number' as const),
    ...(range.least === undefined ? {} : { minimum: range.least }),
    ...(range.most === undefined ? {} : { maximum: range.most }),
    ...(range.above === undefined ? {} : { exclusiveMinimum: range.above }),
    ...(range.below === undefined ? {} : { exclusiveMaximum: range.below }),
  };
}

/** A bare number. */
export function bare(description: string, range: NumberRange = {}) {
  const schema = z
    .unknown()
    .transform((raw, ctx): number => {
      const read = readBare(raw, range);
      return read.ok ? read.value : refuse(ctx, read.code, read.detail);
    })
    .meta({ ...numberJsonSchema(range), description });
  fieldInfo.add(schema, { control: 'number' });
  return schema;
}

/** A list of bare numbers. */
export function bareList(
  description: string,
  range: NumberRange & { fewest?: number; longest?: number } = {},
) {
  const most = range.longest ?? LONGEST;
  const schema = z
    .unknown()
    .transform((raw, ctx): number[] => {
      if (raw === undefined) return refuse(ctx, 'required', 'is missing: a list of bare numbers');
      if (!Array.isArray(raw)) return refuse(ctx, 'not-allowed', 'must be a list of bare numbers');
      if (tooMany(ctx, raw, { least: range.fewest ?? 1, most })) return z.NEVER;
      return raw.map((item: unknown, index) => {
        const read = readBare(item === undefined ? null : item, range);
        return read.ok ? read.value : refuse(ctx, read.code, read.detail, [index]);
      });
    })
    .meta({ type: 'array', items: numberJsonSchema(range), maxItems: most, description });
  fieldInfo.add(schema, { control: 'numbers' });
  return schema;
}

/** A rocker ratio, valve over lobe. */
export const ratio = (description: string) => bare(description, { above: 0, beyond: 100 });
/** Turns of a screw, nut or dial. */
export const turns = (description: string, range: NumberRange = {}) =>
  bare(description, { beyond: 1000, ...range });

/** One of a fixed list of words. */
export function choice<const Words extends readonly [string, ...string[]]>(
  words: Words,
  description: string,
) {
  return z.enum(words).meta({ description });
}

/** A list of objects, no longer than `most`. */
export function listOf<Item extends z.ZodType>(item: Item, description: string, least = 1, most = LONGEST) {
  return z.array(item).min(least).max(most).meta({ description });
}
