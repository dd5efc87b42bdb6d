import { z } from 'zod';
import { UNITS } from '../../shared/quantities/units.ts';

/** As much of JSON Schema as the computations use. */
const node = z.looseObject({
  type: z.string().optional(),
  required: z.array(z.string()).default([]),
  enum: z.array(z.string()).optional(),
  const: z.string().optional(),
  get properties() {
    return z.record(z.string(), node).optional();
  },
  get items() {
    return z.union([node, z.literal(false)]).optional();
  },
  get prefixItems() {
    return z.array(node).optional();
  },
  get anyOf() {
    return z.array(node).optional();
  },
  get oneOf() {
    return z.array(node).optional();
  },
});
type Node = z.output<typeof node>;

/** Names and kinds of the fields, without their words and bounds. */
export type Outline = string | readonly Outline[] | { readonly [field: string]: Outline };

const DIMENSIONS = new Map<string, string>(
  Object.entries(UNITS).map(([unit, each]) => [unit, each.dimension]),
);

/** A number with its unit: told by its dimension, an event by its dead centres too. */
function quantityOf({ properties = {} }: Node): string | undefined {
  const { value, values, unit, side } = properties;
  if ((value ?? values) === undefined || unit?.enum === undefined) return undefined;
  const [dimension, ...more] = new Set(unit.enum.map((each) => DIMENSIONS.get(each)));
  if (dimension === undefined) return undefined;
  if (more.length > 0) return 'any quantity';
  return side === undefined ? dimension : `${dimension} ${side.const ?? side.enum?.join(' | ')}`;
}

/** Which fields go together, where there is a choice: `turns, or preload`. */
const choice = (alternatives: readonly Node[]) =>
  alternatives
    .map(({ required, properties = {} }) =>
      [...required, ...Object.entries(properties).map(([name, { const: word }]) => `${name} = ${word}`)].join(
        ' and ',
      ),
    )
    .join(', or ');

function objectOf(schema: Node): Outline {
  const { properties = {}, required, oneOf } = schema;
  return {
    ...Object.fromEntries(
      Object.entries(properties).map(([name, each]) => [
        required.includes(name) ? name : `${name}?`,
        outlineOf(each),
      ]),
    ),
    ...(oneOf === undefined ? {} : { '(either)': choice(oneOf) }),
  };
}

/** A quantity may be sent as its text too, and a list of quantities with its unit once: told once. */
function alternativesOf(alternatives: readonly Node[]): Outline {
  const list = alternatives.find(({ type }) => type === 'array');
  if (list !== undefined) return outlineOf(list);
  const quantity = alternatives.map(quantityOf).find((each) => each !== undefined);
  if (quantity !== undefined) return quantity;
  return { '(any of)': alternatives.map(outlineOf) };
}

function outlineOf(schema: Node): Outline {
  const quantity = quantityOf(schema);
  if (quantity !== undefined) return quantity;
  if (schema.anyOf !== undefined) return alternativesOf(schema.anyOf);
  if (schema.enum !== undefined) return schema.enum.join(' | ');
  if (schema.type === 'object') return objectOf(schema);
  if (schema.type !== 'array') return schema.type ?? 'anything';
  if (schema.prefixItems !== undefined) return schema.prefixItems.map(outlineOf);
  return schema.items === undefined || schema.items === false ? [] : [outlineOf(schema.items)];
}

/** Fields and kinds of a published schema. A list has its kind of item in brackets; `?` may be left out. */
export function outline(schema: unknown): Outline {
  return outlineOf(node.parse(schema));
}
