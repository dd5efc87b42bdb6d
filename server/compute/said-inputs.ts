import { z } from 'zod';
import { defined } from '../../shared/defined.ts';
import { memberOf } from '../../shared/member.ts';
import type { InputFault, PossibleReading } from '../../shared/problems/faults.ts';
import { pointerOf } from '../../shared/problems/pointer.ts';
import { formatQuantity } from '../../shared/quantities/format.ts';
import { turnsOfParts } from '../../shared/quantities/part-turns.ts';
import { outsideOf, readInField } from '../../shared/quantities/read-in-field.ts';
import { readNumber } from '../../shared/quantities/read-number.ts';
import { isUnit, type Quantity } from '../../shared/quantities/units.ts';
import { whichSaid } from '../../shared/quantities/which-said.ts';
import { type FieldInfo, fieldInfo } from '../../shared/schemas/field-info.ts';

/*
 * What goes into a computation of a build is read as every other entry of the build is: by what the field can be. The
 * same computation by itself, where no engine is spoken of, takes whatever a machine part can be.
 */

type Schema = z.core.$ZodType;
type Path = readonly (string | number)[];
type Found = InputFault[];

/** What a schema wraps, a layer at a time: each may be the one that says what the field is. */
function within(schema: Schema): Schema | undefined {
  if (schema instanceof z.ZodOptional || schema instanceof z.ZodDefault) return schema.def.innerType;
  return schema instanceof z.ZodPipe ? schema.def.in : undefined;
}

type OfQuantity = Extract<FieldInfo, { readonly dimension: unknown }>;

function quantityOf(raw: unknown): Quantity | undefined {
  const value = memberOf(raw, 'value');
  const unit = memberOf(raw, 'unit');
  return typeof value === 'number' && typeof unit === 'string' && isUnit(unit) ? { value, unit } : undefined;
}

const withUnits = (ambiguities: readonly { readonly quantity: object }[]): PossibleReading[] =>
  ambiguities.filter((each): each is PossibleReading => 'unit' in each.quantity);

/** A quantity by what it can be there: the one thing that a text can mean, or what is wrong. */
function saidQuantity(raw: unknown, { dimension, canBe }: OfQuantity, at: Path, found: Found): unknown {
  if (canBe === undefined) return raw;
  const refuse = (code: InputFault['code'], detail: string, ambiguities?: readonly PossibleReading[]) => {
    found.push({ pointer: pointerOf(at), code, detail, ...defined({ ambiguities }) });
    return raw;
  };
  if (typeof raw === 'string') {
    const read = readInField(raw, { kind: dimension, range: canBe });
    if (read.ok) return read.unit === undefined ? raw : { value: read.value, unit: read.unit };
    if (read.fault === undefined)
      return refuse('not-allowed', whichSaid(raw, read.ambiguities), withUnits(read.ambiguities));
    return read.fault.code === 'out-of-range' ? refuse('out-of-range', read.fault.detail) : raw;
  }
  const quantity = quantityOf(raw);
  const outside =
    quantity === undefined ? undefined : outsideOf({ ...quantity, readAs: formatQuantity(quantity) }, canBe);
  return outside === undefined ? raw : refuse('out-of-range', outside);
}

/** `half a turn` as people say it, and no more turns than a thread has. */
function saidTurns(raw: unknown, turns: { least: number; most: number }, at: Path, found: Found): unknown {
  const parts = typeof raw === 'string' ? turnsOfParts(raw) : undefined;
  const read = typeof raw === 'string' ? readNumber(raw, { kind: 'turns' }) : undefined;
  const value = parts ?? (read?.ok === true ? read.value : raw);
  if (typeof value !== 'number' || !Number.isFinite(value)) return value;
  if (value >= turns.least && value <= turns.most) return value;
  const detail = `is ${value} turns; from ${turns.least} to ${turns.most} turns is allowed`;
  found.push({ pointer: pointerOf(at), code: 'out-of-range', detail });
  return value;
}

function saidList(raw: unknown, info: OfQuantity, at: Path, found: Found): unknown {
  if (Array.isArray(raw))
    return raw.map((item: unknown, index) => saidQuantity(item, info, [...at, index], found));
  const values = memberOf(raw, 'values');
  const unit = memberOf(raw, 'unit');
  if (Array.isArray(values))
    values.forEach((value: unknown, index) => {
      saidQuantity({ value, unit }, info, [...at, 'values', index], found);
    });
  return raw;
}

function saidField(info: FieldInfo, raw: unknown, at: Path, found: Found): unknown {
  switch (info.control) {
    case 'quantity':
      return saidQuantity(raw, info, at, found);
    case 'quantities':
      return saidList(raw, info, at, found);
    case 'number':
      return info.turns === undefined ? raw : saidTurns(raw, info.turns, at, found);
    default:
      return raw;
  }
}

function said(schema: Schema, raw: unknown, at: Path, found: Found): unknown {
  const own = schema instanceof z.ZodType ? fieldInfo.get(schema) : undefined;
  if (own !== undefined) return saidField(own, raw, at, found);
  const inner = within(schema);
  if (inner !== undefined) return said(inner, raw, at, found);
  if (schema instanceof z.ZodArray && Array.isArray(raw))
    return raw.map((item: unknown, index) => said(schema.element, item, [...at, index], found));
  if (!(schema instanceof z.ZodObject) || typeof raw !== 'object' || raw === null || Array.isArray(raw))
    return raw;
  const shape: Readonly<Record<string, Schema>> = schema.shape;
  return Object.fromEntries(
    Object.entries(raw).map(([key, value]: [string, unknown]) => {
      const field = Object.hasOwn(shape, key) ? shape[key] : undefined;
      return [key, field === undefined ? value : said(field, value, [...at, key], found)];
    }),
  );
}

/** The inputs of a computation of a build as they were meant, and what of them it cannot be. */
export function saidInputs(
  input: z.ZodType,
  body: unknown,
): { readonly inputs: unknown; readonly faults: readonly InputFault[] } {
  const faults: Found = [];
  return { inputs: said(input, body, [], faults), faults };
}
