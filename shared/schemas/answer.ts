import { z } from 'zod';
import { memberOf } from '../member.ts';
import type { SiNumber } from './outputs.ts';

declare const sent: unique symbol;

/** An answer, or a part of one, in the form it goes out in: made by `answer` and by `encoded`, by nothing else. */
export interface Sent<out T> {
  readonly [sent]: T;
}

export type ReadonlyDeep<T> = T extends object ? { readonly [K in keyof T]: ReadonlyDeep<T[K]> } : T;

type Parts<Shape> = {
  readonly [K in keyof Shape as Shape[K] extends z.ZodOptional ? never : K]: Sendable<Shape[K]>;
} & { readonly [K in keyof Shape as Shape[K] extends z.ZodOptional ? K : never]?: Sendable<Shape[K]> };

/**
 * What may be written where the schema's value goes out: the value itself, or one that is in its form already. A
 * number in SI must be: it goes out in another unit, as `{ value, unit }`.
 */
export type Sendable<S> =
  | Sent<z.output<S>>
  | (S extends SiNumber
      ? never
      : S extends z.ZodOptional<infer Inner>
        ? Sendable<Inner> | undefined
        : S extends z.ZodArray<infer Item>
          ? readonly Sendable<Item>[]
          : S extends { readonly shape: infer Shape }
            ? Parts<Shape>
            : ReadonlyDeep<z.output<S>>);

/** Every field of an answer. One that may be missing is written as well, as undefined: none can be forgotten. */
export type Fields<S extends z.ZodObject> = { readonly [K in keyof S['shape']]: Sendable<S['shape'][K]> };

type Copy = (value: unknown) => unknown;

const copies = new WeakMap<z.core.$ZodType, Copy>();

function copyOfObject(schema: z.ZodObject): Copy {
  const fields = Object.entries(schema.shape).map(([key, field]) => [key, copyFor(field)] as const);
  return (value) => {
    if (typeof value !== 'object' || value === null) return value;
    const copy: Record<string, unknown> = {};
    for (const [key, copied] of fields) {
      const part = memberOf(value, key);
      if (part !== undefined) copy[key] = copied(part);
    }
    return copy;
  };
}

function makeCopy(schema: z.core.$ZodType): Copy {
  if (schema instanceof z.ZodObject) return copyOfObject(schema);
  if (schema instanceof z.ZodOptional) return copyFor(schema.unwrap());
  if (schema instanceof z.ZodArray) {
    const copied = copyFor(schema.element);
    return (value) => (Array.isArray(value) ? value.map(copied) : value);
  }
  return (value) => value;
}

/** Made once for each schema: walking it for every row of a list would cost more than the row. */
function copyFor(schema: z.core.$ZodType): Copy {
  const known = copies.get(schema);
  if (known !== undefined) return known;
  const made = makeCopy(schema);
  copies.set(schema, made);
  return made;
}

/**
 * Builds a JSON answer by its schema. What the schema does not name stays behind at every depth, so that a new
 * field of a domain object goes nowhere before the schema, and with it the document, has it.
 */
export function answer<S extends z.ZodObject>(schema: S, fields: Fields<S>): Sent<z.output<S>>;
export function answer(schema: z.ZodObject, fields: object): unknown {
  return copyFor(schema)(fields);
}
