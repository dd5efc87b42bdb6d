import { isWire, type Wire } from './forms.ts';

/** Where a part of a body stands, and what is there. */
export interface Leaf {
  readonly pointer: string;
  readonly value: unknown;
}

/** Every quantity, number, word and yes-or-no of a body. */
export function leavesOf(part: unknown, pointer = ''): Leaf[] {
  if (isWire(part) || typeof part !== 'object' || part === null) return [{ pointer, value: part }];
  return Object.entries(part).flatMap(([key, inner]) => leavesOf(inner, `${pointer}/${key}`));
}

/** The objects of a body that have fields of their own, and the body itself. */
export function objectsOf(part: unknown, pointer = ''): string[] {
  if (isWire(part) || typeof part !== 'object' || part === null) return [];
  const inner = Object.entries(part).flatMap(([key, each]) => objectsOf(each, `${pointer}/${key}`));
  return Array.isArray(part) ? inner : [pointer, ...inner];
}

/** A copy of a body with something else at a pointer; undefined leaves it out. */
export function withAt(body: unknown, pointer: string, value: unknown): unknown {
  if (pointer === '') return value;
  const [, key = '', ...rest] = pointer.split('/');
  const inner = rest.length === 0 ? '' : `/${rest.join('/')}`;
  if (Array.isArray(body)) {
    return body.map((each, index) => (String(index) === key ? withAt(each, inner, value) : each));
  }
  const parts = typeof body === 'object' && body !== null ? Object.entries(body) : [];
  const others = parts.filter(([name]) => name !== key);
  const changed = withAt(parts.find(([name]) => name === key)?.[1], inner, value);
  return Object.fromEntries(changed === undefined ? others : [...others, [key, changed]]);
}

export const isQuantity = (leaf: Leaf): leaf is Leaf & { value: Wire } => isWire(leaf.value);
