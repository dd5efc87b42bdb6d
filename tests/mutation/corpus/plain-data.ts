/** Data as JSON has it. */
export type Plain = string | number | boolean | null | readonly Plain[] | PlainObject;
export interface PlainObject {
  readonly [name: string]: Plain;
}

export const isList = (value: Plain | undefined): value is readonly Plain[] => Array.isArray(value);
export const isMembers = (value: Plain | undefined): value is PlainObject =>
  typeof value === 'object' && value !== null && !isList(value);

/** A place inside: names, and numbers of a list. */
export type Path = readonly (string | number)[];

/** A place whatever its number in a list: `lash.*.gap.value`. */
export const kindOf = (path: Path): string =>
  path.map((step) => (typeof step === 'number' ? '*' : step)).join('.');

export function valueAt(value: Plain | undefined, path: Path): Plain | undefined {
  const [step, ...rest] = path;
  if (step === undefined) return value;
  if (typeof step === 'number') return isList(value) ? valueAt(value[step], rest) : undefined;
  return isMembers(value) ? valueAt(value[step], rest) : undefined;
}

/** The same with another value at this place; without it where none is given. */
export function withAt(value: Plain, path: Path, put: Plain | undefined): Plain {
  const [step, ...rest] = path;
  if (step === undefined) return put ?? value;
  if (isList(value)) {
    if (rest.length === 0 && put === undefined) return value.filter((_, at) => at !== step);
    return value.map((item, at) => (at === step ? withAt(item, rest, put) : item));
  }
  if (!isMembers(value)) return value;
  const { [step]: was, ...others } = value;
  if (rest.length === 0) return put === undefined ? others : { ...value, [step]: put };
  return was === undefined ? value : { ...value, [step]: withAt(was, rest, put) };
}

/** Every place inside, those that hold others before what they hold. */
export function pathsIn(value: Plain, path: Path = []): Path[] {
  const inside: readonly (readonly [string | number, Plain])[] = isList(value)
    ? value.map((item, at) => [at, item] as const)
    : isMembers(value)
      ? Object.entries(value)
      : [];
  return inside.flatMap(([step, item]) => [[...path, step], ...pathsIn(item, [...path, step])]);
}
