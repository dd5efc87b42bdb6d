import { figure } from '../../tools/told/inline.ts';

const isSameNumber = (one: number, other: number): boolean =>
  one === other || (one - other !== 0 && figure(one) === figure(other)) || Number.isNaN(one + other);

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;

const membersOf = (value: Readonly<Record<string, unknown>>): string[] =>
  Object.keys(value).filter((name) => value[name] !== undefined);

/** Nothing that is written down of the two would be otherwise. */
export function isSame(one: unknown, other: unknown): boolean {
  if (one === other) return true;
  if (typeof one === 'number' && typeof other === 'number') return isSameNumber(one, other);
  if (Array.isArray(one) || Array.isArray(other))
    return (
      Array.isArray(one) &&
      Array.isArray(other) &&
      one.length === other.length &&
      one.every((item, at) => isSame(item, other[at]))
    );
  if (!isRecord(one) || !isRecord(other)) return false;
  const names = membersOf(one);
  return names.length === membersOf(other).length && names.every((name) => isSame(one[name], other[name]));
}
