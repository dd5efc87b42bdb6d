import { z } from 'zod';
import { memberOf } from '../../shared/member.ts';
import { answerUnit, UNITS, type UnitSystem } from '../../shared/quantities/units.ts';
import type { ReadonlyDeep, Sent } from '../../shared/schemas/answer.ts';
import { outputDimension, outputEvent } from '../../shared/schemas/field-info.ts';

type Encoder = (value: unknown, system: UnitSystem) => unknown;

/** A number of an answer that JSON can't carry. */
export class NotFinite extends Error {}

function finite(value: unknown): number {
  if (typeof value === 'number' && Number.isFinite(value)) return value;
  throw new NotFinite('a number of the answer is past what a double holds');
}

function encodeNumber(schema: z.ZodNumber): Encoder {
  const event = outputEvent.get(schema);
  if (event !== undefined) {
    return (value, system) => {
      const unit = answerUnit('angle', system);
      return { value: finite(value) / UNITS[unit].toSi, unit, side: event.side };
    };
  }
  const known = outputDimension.get(schema);
  if (known === undefined) return finite;
  return (value, system) => {
    const unit = answerUnit(known.dimension, system);
    return { value: finite(value) / UNITS[unit].toSi, unit };
  };
}

function encodeObject(schema: z.ZodObject): Encoder {
  const fields = Object.entries(schema.shape).map(([key, field]) => [key, encoderFor(field)] as const);
  return (value, system) => {
    const answer: Record<string, unknown> = {};
    if (typeof value !== 'object' || value === null) return answer;
    for (const [key, encode] of fields) {
      const part = memberOf(value, key);
      if (part !== undefined) answer[key] = encode(part, system);
    }
    return answer;
  };
}

/**
 * Builds the function that turns a result in SI into the JSON answer in the asked units. Compiled once per
 * computation: walking the schema for every answer would cost more than the computation itself.
 */
export function encoderFor(schema: z.core.$ZodType): Encoder {
  if (schema instanceof z.ZodNumber) return encodeNumber(schema);
  if (schema instanceof z.ZodObject) return encodeObject(schema);
  if (schema instanceof z.ZodArray) {
    const item = encoderFor(schema.element);
    return (value, system) => (Array.isArray(value) ? value.map((each) => item(each, system)) : []);
  }
  if (schema instanceof z.ZodTuple) {
    const items = schema.def.items.map((each) => encoderFor(each));
    return (value, system) =>
      Array.isArray(value) ? items.map((encode, index) => encode(value[index], system)) : [];
  }
  if (schema instanceof z.ZodOptional) return encoderFor(schema.unwrap());
  const plain = [z.ZodString, z.ZodStringFormat, z.ZodEnum, z.ZodBoolean];
  if (plain.some((kind) => schema instanceof kind)) return (value) => value;
  throw new Error(`an output of type ${schema._zod.def.type} has no encoder`);
}

const encoders = new WeakMap<z.core.$ZodType, Encoder>();

/**
 * The part of an answer that was computed: quantities leave in the units of `system`. Inside and outside such a
 * part has one schema but two forms; its type says which, so that `answer` can't be given the numbers in SI for it.
 */
export function encoded<S extends z.ZodType>(
  schema: S,
  value: ReadonlyDeep<z.output<S>>,
  system: UnitSystem,
): Sent<z.output<S>>;
export function encoded(schema: z.ZodType, value: unknown, system: UnitSystem): unknown {
  const known = encoders.get(schema);
  const encode = known ?? encoderFor(schema);
  if (known === undefined) encoders.set(schema, encode);
  return encode(value, system);
}
