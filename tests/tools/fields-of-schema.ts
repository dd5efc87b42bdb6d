import { z } from 'zod';
import { type FieldInfo, fieldInfo } from '../../shared/schemas/field-info.ts';

type Schema = z.core.$ZodType;

/** A field of a form: where it stands in its schema, what it is, and the schema that reads it. */
export interface Leaf {
  readonly path: string;
  readonly info: FieldInfo;
  readonly schema: z.ZodType;
}

/** What a schema wraps, a layer at a time. */
function within(schema: Schema): Schema | undefined {
  if (schema instanceof z.ZodOptional || schema instanceof z.ZodDefault) return schema.def.innerType;
  if (schema instanceof z.ZodArray) return schema.element;
  return schema instanceof z.ZodPipe ? schema.def.in : undefined;
}

/** Every field of a schema that a control is drawn for. */
export function fieldsOf(schema: Schema, path = ''): Leaf[] {
  const info = schema instanceof z.ZodType ? fieldInfo.get(schema) : undefined;
  if (info !== undefined && schema instanceof z.ZodType) return [{ path, info, schema }];
  const inner = within(schema);
  if (inner !== undefined) return fieldsOf(inner, path);
  if (!(schema instanceof z.ZodObject)) return [];
  const shape: Readonly<Record<string, Schema>> = schema.shape;
  return Object.entries(shape).flatMap(([key, field]) =>
    fieldsOf(field, path === '' ? key : `${path}.${key}`),
  );
}
