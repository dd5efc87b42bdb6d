import { z } from 'zod';
import { defined } from '../../../shared/defined.ts';
import { spokenUnits } from '../../../shared/quantities/spoken-units.ts';
import { answerUnit, type Dimension, type Unit, unitsOf } from '../../../shared/quantities/units.ts';
import { type FieldInfo, fieldInfo } from '../../../shared/schemas/field-info.ts';
import type { Control, Entry, Leaf, Named } from './control.ts';
import { aboutOf, bareSchema, isOptional, labelOf } from './words.ts';

type Schema = z.core.$ZodType;

/** Rows of so many plain entries still fit a line of a phone; longer ones are asked for one by one. */
const MOST_COLUMNS = 3;

/** The unit of a number that names none: as the call is spoken, and in inches outside of one. */
const firstUnit = (dimension: Dimension): Unit =>
  spokenUnits() === 'metric'
    ? answerUnit(dimension, 'metric')
    : (unitsOf(dimension)[0] ?? answerUnit(dimension, 'inch'));

function entryOfInfo(info: FieldInfo): Entry {
  switch (info.control) {
    case 'quantity':
      return {
        as: info.control,
        dimension: info.dimension,
        unit: firstUnit(info.dimension),
        ...defined({ canBe: info.canBe }),
      };
    case 'quantities':
      return {
        as: info.control,
        dimension: info.dimension,
        unit: firstUnit(info.dimension),
        ...defined({ canBe: info.canBe }),
      };
    case 'number':
      return { as: info.turns === undefined ? 'number' : 'turns' };
    case 'event':
      return { as: 'event', sides: info.sides };
    default:
      return { as: info.control };
  }
}

const described = z.looseObject({ type: z.literal('string'), enum: z.array(z.string()).optional() });

/** A schema that reads its own texts says so in its JSON schema. */
function describedEntry(schema: Schema): Entry | undefined {
  const told = schema instanceof z.ZodType ? described.safeParse(schema.meta()) : undefined;
  if (told?.success !== true) return undefined;
  return told.data.enum === undefined ? { as: 'text' } : { as: 'word', words: told.data.enum };
}

function plainEntry(schema: Schema): Entry | undefined {
  const info = schema instanceof z.ZodType ? fieldInfo.get(schema) : undefined;
  if (info !== undefined) return entryOfInfo(info);
  if (schema instanceof z.ZodEnum) return { as: 'word', words: schema.options.map(String) };
  if (schema instanceof z.ZodBoolean) return { as: 'truth' };
  if (schema instanceof z.ZodString) return { as: 'text' };
  if (schema instanceof z.ZodNumber) return { as: 'number' };
  return describedEntry(schema);
}

function objectParts(schema: z.ZodObject, prefix: string): Control[] {
  return Object.entries(schema.shape).map(([key, field]) =>
    controlOf(field, prefix === '' ? key : `${prefix}.${key}`, labelOf(key)),
  );
}

/** The columns of a list whose items are small flat objects. */
function columnsOf(item: Schema): Leaf[] | undefined {
  if (!(item instanceof z.ZodObject)) return undefined;
  const parts = objectParts(item, '');
  const columns = parts.filter(
    (part): part is Leaf =>
      part.kind === 'leaf' && !['quantities', 'numbers', 'lines', 'grid', 'json'].includes(part.entry.as),
  );
  return columns.length === parts.length && columns.length <= MOST_COLUMNS ? columns : undefined;
}

function listControl(item: Schema, named: Named): Control {
  const columns = columnsOf(item);
  if (columns !== undefined) return { ...named, kind: 'leaf', entry: { as: 'lines', columns } };
  if (item instanceof z.ZodObject) {
    return {
      ...named,
      kind: 'repeat',
      item: (index) => ({
        kind: 'group',
        name: `${named.name}.${index}`,
        label: `${named.label}, ${index + 1}`,
        about: '',
        optional: true,
        parts: objectParts(item, `${named.name}.${index}`),
      }),
    };
  }
  const entry = plainEntry(item);
  if (entry?.as === 'quantities' || entry?.as === 'quantity' || entry?.as === 'numbers') {
    const { as } = entry;
    if (as === 'quantity') return { ...named, kind: 'leaf', entry: { ...entry, as: 'quantities' } };
    return { ...named, kind: 'leaf', entry: { as: 'grid', cell: entry } };
  }
  if (entry?.as === 'number') return { ...named, kind: 'leaf', entry: { as: 'numbers' } };
  return { ...named, kind: 'leaf', entry: { as: 'json' } };
}

function controlOf(schema: Schema, name: string, label: string): Control {
  const named: Named = { name, label, about: aboutOf(schema), optional: isOptional(schema) };
  const bare = bareSchema(schema);
  const entry = plainEntry(bare);
  if (entry !== undefined) return { ...named, kind: 'leaf', entry };
  if (bare instanceof z.ZodObject) return { ...named, kind: 'group', parts: objectParts(bare, name) };
  if (bare instanceof z.ZodArray) return listControl(bareSchema(bare.element), named);
  // Anything else, a union among it, can still be given as it is given to a program.
  return { ...named, kind: 'leaf', entry: { as: 'json' } };
}

/** Every entry of a computation's input, in the order of its schema. */
export function controlsOf(input: Schema): readonly Control[] {
  const bare = bareSchema(input);
  if (bare instanceof z.ZodPipe) return controlsOf(bare.def.in);
  if (bare instanceof z.ZodObject) return objectParts(bare, '');
  throw new Error(`an input of type ${bare._zod.def.type} has no form`);
}
