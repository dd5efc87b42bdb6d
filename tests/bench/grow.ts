import { InputFaults } from '../../shared/problems/faults.ts';

/** A value of JSON. */
export type Value = null | boolean | number | string | readonly Value[] | { readonly [key: string]: Value };
type List = readonly Value[];

const isList = (value: Value): value is List => Array.isArray(value);

function isObject(value: Value): value is { readonly [key: string]: Value } {
  return typeof value === 'object' && value !== null && !isList(value);
}

/** A value part of the way from one to another: numbers in between, everything else as in the first. */
function between(from: Value, to: Value, part: number): Value {
  if (typeof from === 'number' && typeof to === 'number') return from + (to - from) * part;
  if (isList(from) && isList(to)) {
    return from.map((item, index) => between(item, to[index] ?? item, part));
  }
  if (isObject(from) && isObject(to)) {
    return Object.fromEntries(
      Object.entries(from).map(([key, item]) => [key, between(item, to[key] ?? item, part)]),
    );
  }
  return from;
}

/** A list drawn out to a length: each new item lies between two of the old, so that what rises goes on rising. */
export function drawnOut(list: List, length: number): List {
  const last = list.length - 1;
  return Array.from({ length }, (_, index) => {
    const at = last <= 0 || length === 1 ? 0 : (index * last) / (length - 1);
    const left = list[Math.floor(at)] ?? null;
    return between(left, list[Math.ceil(at)] ?? left, at % 1);
  });
}

/** A list said over and over, for one whose items must not lie in between. */
export function repeated(list: List, length: number): List {
  return Array.from({ length }, (_, index) => list[index % list.length] ?? null);
}

/** Where the lists of an input are, outermost alone: a list within a list grows with it. */
export function listsOf(value: Value, path: readonly string[] = []): (readonly string[])[] {
  if (isList(value)) return value.length === 0 ? [] : [path];
  if (!isObject(value)) return [];
  return Object.entries(value).flatMap(([key, item]) => listsOf(item, [...path, key]));
}

export function listAt(value: Value, path: readonly string[]): List {
  let at: Value = value;
  for (const key of path) at = isObject(at) ? (at[key] ?? null) : null;
  return isList(at) ? at : [];
}

export function withList(value: Value, [key, ...rest]: readonly string[], list: List): Value {
  if (key === undefined) return list;
  return isObject(value) ? { ...value, [key]: withList(value[key] ?? null, rest, list) } : value;
}

/** The most items that a refusal tells of, where it is one for having too many. */
function mostOf(error: unknown): number | undefined {
  if (!(error instanceof InputFaults)) throw error;
  const fault = error.faults.find((each) => each.code === 'too-many');
  const most = /(\d+) (?:at the most|or fewer)/.exec(fault?.detail ?? '')?.[1];
  return most === undefined ? undefined : Number(most);
}

/** The input with its list at `path` so many times as long, or as long as it may be; undefined if none is taken. */
export function grown(
  input: Value,
  path: readonly string[],
  times: number,
  run: (input: Value) => unknown,
): { readonly input: Value; readonly length: number } | undefined {
  const list = listAt(input, path);
  let length = list.length * times;
  for (const way of [drawnOut, repeated]) {
    for (let tries = 0; tries < 2; tries += 1) {
      const made = withList(input, path, way(list, length));
      try {
        run(made);
        return { input: made, length };
      } catch (error) {
        const most = mostOf(error);
        if (most === undefined) break;
        length = most;
      }
    }
  }
  return undefined;
}
