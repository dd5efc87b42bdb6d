import type { z } from 'zod';
import { memberOf } from '../../../shared/member.ts';
import { came, faultAt } from '../../../shared/schemas/two-forms.ts';

type Refinement = z.core.$RefinementCtx;

/** Whether every spring came with a height of its own, faulty or not. */
function eachHasItsOwn({ value, issues }: Refinement): boolean {
  const springs = memberOf(value, 'springs');
  if (!Array.isArray(springs) || springs.length === 0) return false;
  const faulty = new Set(
    issues.flatMap(({ path }) => (path?.[0] === 'springs' && path[2] === 'installedHeight' ? [path[1]] : [])),
  );
  return springs.every(
    (spring: unknown, index) =>
      faulty.has(index) ||
      (typeof spring === 'object' && spring !== null && Object.hasOwn(spring, 'installedHeight')),
  );
}

/** The nest's height is asked for unless each spring has one of its own. */
export function nestHeightWhereNeeded(_value: unknown, ctx: Refinement): void {
  if (came(ctx, 'installedHeight') || eachHasItsOwn(ctx)) return;
  const detail = 'is missing: a length with its unit; or give each spring its own';
  faultAt(ctx, ['installedHeight'], 'required', detail);
}

const withHeight = { properties: { installedHeight: {} }, required: ['installedHeight'] };

/** The same rule for readers of the JSON Schema. */
export const nestHeightJsonSchema = {
  if: { properties: { springs: { items: withHeight } } },
  else: withHeight,
};
