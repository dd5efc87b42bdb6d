import { z } from 'zod';
import type { FieldRange } from '../quantities/field-range.ts';
import { fieldInfo } from './field-info.ts';

/*
 * A number is understood by what it is of: `one six` is .016 in as a lash and 1.6 in across a trunnion. Where another
 * field of the same object says what it is of, it is read once both are there.
 */

/** What came, by the value that stands for it until it is read. */
const HELD = new WeakMap<object, unknown>();

interface HeldBack<Out extends object> {
  /** As it is read where nothing is known of it: for its place in the JSON schema. */
  readonly like: z.ZodType<Out>;
  readonly canBe: FieldRange;
  /** What it can be of each thing that it may be of. */
  readonly byKind: readonly FieldRange[];
  /** What stands for it until then. */
  readonly standIn: () => Out;
}

/** A field that waits for `readOnceKnown`. */
export function heldBack<Out extends object>({ like, canBe, byKind, standIn }: HeldBack<Out>) {
  const schema = z
    .unknown()
    .transform((raw): Out => {
      const held = standIn();
      HELD.set(held, raw);
      return held;
    })
    .meta({ ...like.meta() });
  fieldInfo.add(schema, { control: 'quantity', dimension: 'length', canBe, canBeByKind: byKind });
  return schema;
}

interface Refusal {
  addIssue(issue: {
    code: 'custom';
    message: string;
    path: PropertyKey[];
    params: Record<string, unknown>;
    input: unknown;
  }): void;
}

/** What else a fault says: its code, and what the entry can mean. */
const paramsOf = (issue: z.core.$ZodIssue): Record<string, unknown> =>
  issue.code === 'custom' && issue.params !== undefined
    ? issue.params
    : { fault: issue.code === 'unrecognized_keys' ? 'unknown-field' : 'not-allowed' };

/**
 * Reads the field of an object that was held back, by the schema of what it is of; its faults stand at the field. For
 * `superRefine`, also where another field is at fault.
 */
export const readOnceKnown =
  <Name extends string, Out extends object, Given extends { [key in Name]?: Out | undefined }>(
    name: Name,
    schemaOf: (given: Given) => z.ZodType<Out>,
  ) =>
  (given: Given, ctx: Refusal): void => {
    const held: Out | undefined = given[name];
    if (held === undefined || !HELD.has(held)) return;
    const input = HELD.get(held);
    const read = schemaOf(given).safeParse(input);
    if (read.success) {
      Object.assign(given, { [name]: read.data });
      return;
    }
    for (const issue of read.error.issues)
      ctx.addIssue({
        code: 'custom',
        message: issue.message,
        path: [name, ...issue.path],
        params: paramsOf(issue),
        input,
      });
  };
