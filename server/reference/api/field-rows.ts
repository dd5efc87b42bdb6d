import type { SchemaNode } from './document.ts';

export interface FieldRow {
  readonly name: string;
  readonly type: string;
  readonly about: string;
  readonly required: boolean;
}

/** Past this depth a row's name says less than a look at the document. */
const DEEPEST = 5;

export const shapeOf = (ref: string): string => ref.slice(ref.lastIndexOf('/') + 1);

function listed(values: readonly unknown[]): string {
  const words = values.map((value) => (value === '' ? 'nothing' : String(value)));
  return words.length > 12 ? `one of ${words.length} words` : words.join(', ');
}

function rangeOf({ minimum, maximum, maxLength }: SchemaNode): string {
  const low = minimum !== undefined && Math.abs(minimum) < 1e9 ? ` from ${minimum}` : '';
  const high = maximum !== undefined && Math.abs(maximum) < 1e9 ? ` to ${maximum}` : '';
  const long = maxLength === undefined ? '' : `, to ${maxLength} characters`;
  return low + high + long;
}

/** What a value is, in a few words. */
export function typeOf(node: SchemaNode): string {
  if (node.$ref !== undefined) return shapeOf(node.$ref);
  const dimension = node['x-dimension'];
  const branches = node.anyOf ?? node.oneOf;
  if (dimension !== undefined) {
    const isList = branches?.some((branch) => branch.type === 'array') ?? false;
    return `${isList ? 'list of quantities' : 'quantity'}, ${dimension}`;
  }
  if (node.const !== undefined) return String(node.const);
  if (node.enum !== undefined) return listed(node.enum);
  if (node.prefixItems !== undefined) return node.prefixItems.map(typeOf).join(', then ');
  if (node.type === 'array') return node.items === undefined ? 'list' : `list of ${typeOf(node.items)}`;
  if (branches !== undefined && node.properties === undefined) {
    return [...new Set(branches.map(typeOf))].join(' or ');
  }
  if (node.type === 'string') {
    const formats: Record<string, string> = {
      uuid: 'id',
      'date-time': 'date and time',
      date: 'date',
      email: 'e-mail',
    };
    return (formats[node.format ?? ''] ?? 'text') + rangeOf(node);
  }
  if (node.type === 'integer') return `whole number${rangeOf(node)}`;
  if (node.type === 'number') return `number${rangeOf(node)}`;
  if (node.type === 'boolean') return 'true or false';
  return node.type ?? 'any JSON';
}

function objectsIn(node: SchemaNode): SchemaNode[] {
  if (node['x-dimension'] !== undefined || node.$ref !== undefined) return [];
  const branches = (node.anyOf ?? node.oneOf ?? []).flatMap(objectsIn);
  const own = node.properties === undefined ? [] : [node];
  const items = node.items === undefined ? [] : objectsIn(node.items);
  return [...own, ...branches, ...items];
}

/** A quantity of an answer is one value to a reader, not an object of two. */
function isQuantity({ properties = {} }: SchemaNode): boolean {
  const names = Object.keys(properties);
  return (
    names.includes('value') &&
    names.includes('unit') &&
    names.every((name) => ['value', 'unit', 'side', 'typed', 'readAs'].includes(name))
  );
}

/** The named shapes that a value is one of. */
export const shapesOf = ({ oneOf = [] }: SchemaNode): string[] =>
  oneOf.flatMap(({ $ref }) => ($ref === undefined ? [] : [shapeOf($ref)]));

/** Every field of a body or an answer, those of inner objects by their path. */
export function fieldRows(node: SchemaNode, prefix = '', depth = 0): FieldRow[] {
  if (depth > DEEPEST) return [];
  const seen = new Set<string>();
  return objectsIn(node).flatMap((object) =>
    Object.entries(object.properties ?? {}).flatMap(([key, field]) => {
      const name = `${prefix}${key}`;
      if (seen.has(name)) return [];
      seen.add(name);
      const quantity = isQuantity(field);
      const row: FieldRow = {
        name,
        type: quantity ? 'quantity' : typeOf(field),
        about: field.description ?? '',
        required: object.required?.includes(key) ?? false,
      };
      const inside = quantity
        ? []
        : fieldRows(field, `${name}${field.type === 'array' ? '[]' : ''}.`, depth + 1);
      return [row, ...inside];
    }),
  );
}
