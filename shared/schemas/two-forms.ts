import type { z } from 'zod';
import type { FaultCode } from '../problems/faults.ts';

type Names = readonly [string, ...string[]];
type Refinement = z.core.$RefinementCtx;

/** Puts a fault at a field of the object that is being refined. */
export function faultAt(ctx: Refinement, path: readonly string[], fault: FaultCode, message: string): void {
  ctx.addIssue({ code: 'custom', message, path: [...path], params: { fault } });
}

/** Whether the object came with the field, faulty or not: a faulty field is not a missing one as well. */
export function came(ctx: Refinement, name: string): boolean {
  const { value } = ctx;
  if (typeof value === 'object' && value !== null && Object.hasOwn(value, name)) return true;
  return ctx.issues.some((issue) => issue.path?.[0] === name);
}

/**
 * Holds an object to exactly one of two forms, each a set of fields that belong together: the first form's
 * fields are asked for where nothing came, and those of the second are not allowed beside the first's.
 */
export function oneOfTwoForms(first: Names, second: Names) {
  return (_value: unknown, ctx: Refinement): void => {
    const inFirst = first.some((name) => came(ctx, name));
    const inSecond = second.some((name) => came(ctx, name));
    const wanted = inSecond && !inFirst ? second : first;
    const other = wanted === first ? second : first;
    for (const name of wanted) {
      if (came(ctx, name)) continue;
      const instead = inFirst || inSecond ? '' : `; or give ${other.join(' and ')}`;
      faultAt(ctx, [name], 'required', `is missing${instead}`);
    }
    if (!inFirst || !inSecond) return;
    for (const name of second.filter((each) => came(ctx, each))) {
      faultAt(
        ctx,
        [name],
        'not-allowed',
        `goes with ${second.join(' and ')} alone, without ${first.join(', ')}`,
      );
    }
  };
}

/** Runs a refinement of an object also where one of its fields is faulty, so that every fault is told. */
export const evenIfFaulty = {
  when: (payload: z.core.ParsePayload): boolean =>
    typeof payload.value === 'object' && payload.value !== null && !Array.isArray(payload.value),
};

/** The same rule for readers of the JSON Schema. */
export const twoFormsJsonSchema = (first: Names, second: Names) => ({
  oneOf: [{ required: [...first] }, { required: [...second] }],
});
