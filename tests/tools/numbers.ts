import { memberOf } from '../../shared/member.ts';

/** On record at a path of a JSON answer. */
export function at(json: unknown, ...path: (string | number)[]): unknown {
  let here: unknown = json;
  for (const key of path) {
    if (typeof here !== 'object' || here === null) return undefined;
    here = memberOf(here, key);
  }
  return here;
}

/** The row of a list whose field has the value. */
export function rowWhere(json: unknown, list: string, field: string, value: unknown): unknown {
  const rows = at(json, list);
  return Array.isArray(rows) ? rows.find((row) => at(row, field) === value) : undefined;
}
