import { z } from 'zod';

/** Names that letters alone do not put into words. */
const IN_WORDS: Readonly<Record<string, string>> = {
  interval95: '95 % interval',
  index: 'Number in the list',
};

/** `lobeLift` as people write it: `Lobe lift`. */
export function labelOf(key: string): string {
  if (Object.hasOwn(IN_WORDS, key)) return IN_WORDS[key] ?? key;
  const spaced = key.replace(/([a-z0-9])([A-Z])/g, (_, before: string, after: string) => {
    return `${before} ${after.toLowerCase()}`;
  });
  const parted = spaced.replace(/([a-z])(\d)/g, '$1 $2');
  const capital = parted.charAt(0).toUpperCase() + parted.slice(1);
  return capital.replace(/\b[TB]dc\b|\b[tb]dc\b/g, (word) => word.toUpperCase());
}

type Schema = z.core.$ZodType;

function inner(schema: Schema): Schema | undefined {
  return schema instanceof z.ZodOptional || schema instanceof z.ZodDefault ? schema.def.innerType : undefined;
}

/** The schema without what makes it optional. */
export function bareSchema(schema: Schema): Schema {
  const within = inner(schema);
  return within === undefined ? schema : bareSchema(within);
}

/** The object that an input is, whatever is checked of it as a whole. */
export function objectOf(schema: Schema): z.ZodObject | undefined {
  const within = bareSchema(schema);
  if (within instanceof z.ZodPipe) return objectOf(within.def.in);
  return within instanceof z.ZodObject ? within : undefined;
}

export const isOptional = (schema: Schema): boolean => inner(schema) !== undefined;

/** The description that a schema, or what it wraps, carries. */
export function aboutOf(schema: Schema): string {
  const own = schema instanceof z.ZodType ? schema.description : undefined;
  const within = inner(schema);
  return own ?? (within === undefined ? '' : aboutOf(within));
}
