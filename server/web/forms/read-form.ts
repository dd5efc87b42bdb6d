import { z } from 'zod';
import { defined } from '../../../shared/defined.ts';
import type { InputFault, PossibleReading } from '../../../shared/problems/faults.ts';
import { readNumber } from '../../../shared/quantities/read-number.ts';
import { answerUnit, type Quantity, type Unit, unitsOf } from '../../../shared/quantities/units.ts';
import { fieldInfo } from '../../../shared/schemas/field-info.ts';
import { faultsOf } from '../../compute/faults-of.ts';
import { pickedFrom, pickName } from './picked-reading.ts';

/** A form as it came: field names with dots for what lies inside (`cam.intake.lobeLift`), texts as typed. */
export type Fields = Readonly<Record<string, string>>;

export interface FormOptions {
  /** The unit of a length that names none, as the form says beside the field. */
  readonly lengths: 'in' | 'mm';
  /** Travel of the dial per turn, where "3 turns 42" may be typed. */
  readonly perTurn?: Quantity;
}

export type FormReading<T> =
  | { readonly ok: true; readonly data: T }
  | { readonly ok: false; readonly faults: readonly FormFault[] };

/** A fault at a field of the form. */
export interface FormFault {
  readonly field: string;
  readonly detail: string;
  /** The line of the tape that it is about. */
  readonly line?: number;
  /** A stop came before it: nothing that was typed is wrong. */
  readonly held?: boolean;
  /** What was typed there can be read as: the person picks one. */
  readonly ambiguities?: readonly PossibleReading[];
}

/** Unit that is meant for a dimension when none is written, in the order trade people write them. */
function assumedUnit(dimension: Parameters<typeof unitsOf>[0], options: FormOptions): Unit {
  if (dimension === 'length') return options.lengths;
  if (options.lengths === 'mm') return answerUnit(dimension, 'metric');
  const [first] = unitsOf(dimension);
  if (first === undefined) throw new Error(`no unit for ${dimension}`);
  return first;
}

function unwrap(schema: z.core.$ZodType): z.core.$ZodType {
  if (schema instanceof z.ZodOptional || schema instanceof z.ZodDefault) return unwrap(schema.def.innerType);
  return schema;
}

/** The schema of a field by its name, dots and indices among it. */
export function schemaAt(schema: z.core.$ZodType, path: readonly string[]): z.core.$ZodType | undefined {
  const [head, ...rest] = path;
  const at = unwrap(schema);
  if (head === undefined) return at;
  if (at instanceof z.ZodArray) return /^\d+$/.test(head) ? schemaAt(at.element, rest) : undefined;
  const member: z.core.$ZodType | undefined = at instanceof z.ZodObject ? at.shape[head] : undefined;
  return member === undefined ? undefined : schemaAt(member, rest);
}

function objectFrom(schema: z.ZodObject, fields: Fields, prefix: string, options: FormOptions): unknown {
  const body: Record<string, unknown> = {};
  for (const [key, inner] of Object.entries(schema.shape)) {
    const value = valueFrom(inner, fields, prefix === '' ? key : `${prefix}.${key}`, options);
    if (value !== undefined) body[key] = value;
  }
  return Object.keys(body).length === 0 && prefix !== '' ? undefined : body;
}

function listFrom(item: z.core.$ZodType, fields: Fields, name: string, options: FormOptions): unknown {
  const indices = new Set<number>();
  for (const field of Object.keys(fields)) {
    const rest = field.startsWith(`${name}.`) ? field.slice(name.length + 1) : '';
    const index = /^(\d{1,3})(\.|$)/.exec(rest)?.[1];
    if (index !== undefined && (fields[field] ?? '').trim() !== '') indices.add(Number(index));
  }
  if (indices.size === 0) return undefined;
  return [...indices]
    .sort((a, b) => a - b)
    .map((index) => valueFrom(item, fields, `${name}.${index}`, options));
}

function numberFrom(text: string): unknown {
  const read = readNumber(text, { kind: 'ratio' });
  return read.ok ? read.value : text;
}

/** A ticked box or a yes; a box left alone is not sent, and neither counts as said. */
function booleanFrom(text: string): unknown {
  if (text === '') return undefined;
  return text === 'yes' ? true : text === 'no' ? false : text;
}

function valueFrom(schema: z.core.$ZodType, fields: Fields, name: string, options: FormOptions): unknown {
  const inner = unwrap(schema);
  if (inner instanceof z.ZodObject) return objectFrom(inner, fields, name, options);
  if (inner instanceof z.ZodArray) return listFrom(inner.element, fields, name, options);
  const text = fields[name];
  if (text === undefined) return undefined;
  if (inner instanceof z.ZodBoolean) return booleanFrom(text);
  const info = inner instanceof z.ZodType ? fieldInfo.get(inner) : undefined;
  if (info === undefined) {
    // A choice or an id that was left alone is left out; words are kept as they are, also empty ones.
    return inner instanceof z.ZodString
      ? inner.format === null || inner.format === undefined
        ? text
        : text || undefined
      : text || undefined;
  }
  if (text.trim() === '') return undefined;
  if (info.control === 'quantity') {
    const assume = assumedUnit(info.dimension, options);
    const turns = info.dimension === 'length' ? defined({ perTurn: options.perTurn }) : {};
    const picked = pickedFrom(text, fields[pickName(name)], { ...info, assume });
    return picked === undefined ? { typed: text, assume, ...turns } : { typed: text, ...picked };
  }
  return info.control === 'number' ? numberFrom(text) : text;
}

/** JSON pointer to the name of the form's field. */
function fieldOf(fault: InputFault): string {
  return fault.pointer.slice(1).replaceAll('/', '.').replaceAll('~1', '/').replaceAll('~0', '~');
}

/** Reads a form by the schema that its JSON twin has. What was typed stays with the caller. */
export function readForm<Schema extends z.ZodObject>(
  schema: Schema,
  fields: Fields,
  options: FormOptions,
): FormReading<z.output<Schema>> {
  const body = objectFrom(schema, fields, '', options);
  const parsed = schema.safeParse(body);
  if (parsed.success) return { ok: true, data: parsed.data };
  return {
    ok: false,
    faults: faultsOf(parsed.error, body).map((fault) => ({
      field: fieldOf(fault),
      detail: fault.detail,
      ...defined({ ambiguities: fault.ambiguities }),
    })),
  };
}

/** What a form post carries, every value as one text. A field sent twice keeps its first value. */
export function fieldsOf(body: unknown): Fields {
  if (typeof body !== 'object' || body === null) return {};
  const entries = Object.entries(body).map(
    ([name, value]) => [name, Array.isArray(value) ? String(value[0]) : String(value)] as const,
  );
  return Object.fromEntries(entries);
}
