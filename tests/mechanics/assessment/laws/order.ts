import { isDeepStrictEqual } from 'node:util';
import { assess } from '../../../../server/mechanics/assessment/assess.ts';
import { memberOf } from '../../../../shared/member.ts';
import type { Law } from './law.ts';
import { permuted } from './permuted.ts';

/** The number of an entry is there to cite it by. */
export function withoutLines(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withoutLines);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(
    Object.entries(value).flatMap(([key, each]) => (key === 'line' ? [] : [[key, withoutLines(each)]])),
  );
}

/** The first place where two answers part. */
export function parting(one: unknown, other: unknown, path: string): string | undefined {
  if (isDeepStrictEqual(one, other)) return undefined;
  if (typeof one === 'object' && typeof other === 'object' && one !== null && other !== null) {
    for (const key of new Set([...Object.keys(one), ...Object.keys(other)])) {
      const found = parting(memberOf(one, key), memberOf(other, key), `${path}/${key}`);
      if (found !== undefined) return found;
    }
  }
  return `${path}: ${JSON.stringify(one)?.slice(0, 200)}, in another order ${JSON.stringify(other)?.slice(0, 200)}`;
}

/** Law 1: any order of the same entries gives the same assessment. */
export const orderDoesNotMatter: Law = ({ seed, evidence, assessment }) => {
  const again = assess(permuted(evidence, seed));
  return [parting(withoutLines(assessment), withoutLines(again), '')].filter((found) => found !== undefined);
};
