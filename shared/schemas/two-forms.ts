import type { z } from 'zod';
import type { FaultCode } from '../problems/faults.ts';

type Names = readonly [string, ...string[]];
export type Refinement = z.core.$RefinementCtx;

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

const both = (form: Names) => form.join(' and ');

/**
 * Holds an object to exactly one of several forms, each a set of fields that belong together: the first form that
 * anything came of is meant, and the fields of the others are not allowed beside it; where nothing came, the fields
 * of the first form are asked for.
 */
export function oneOfForms(...forms: readonly [Names, Names, ...Names[]]) {
  return (_value: unknown, ctx: Refinement): void => {
    const begun = forms.filter((form) => form.some((name) => came(ctx, name)));
    const [meant = forms[0], ...others] = begun;
    const instead = begun.length > 0 ? '' : `; or give ${forms.slice(1).map(both).join(', or ')}`;
    for (const name of meant) {
      if (!came(ctx, name)) faultAt(ctx, [name], 'required', `is missing${instead}`);
    }
    for (const form of others) {
      for (const name of form.filter((each) => came(ctx, each))) {
        faultAt(ctx, [name], 'not-allowed', `can’t come beside ${both(meant)}: give one or the other`);
      }
    }
  };
}

/** The same of two forms. */
export const oneOfTwoForms = (first: Names, second: Names) => oneOfForms(first, second);

/** Fields that say something only together: where one came, each other is asked for. */
export function allOrNone(...names: Names) {
  return (_value: unknown, ctx: Refinement): void => {
    const begun = names.filter((name) => came(ctx, name));
    if (begun.length === 0) return;
    for (const name of names)
      if (!begun.includes(name))
        faultAt(ctx, [name], 'required', `is missing: it goes with ${begun.join(' and ')}`);
  };
}

/** The first field is not allowed beside the second: both tell one thing. */
export function notBeside(name: string, other: string) {
  return (_value: unknown, ctx: Refinement): void => {
    if (came(ctx, name) && came(ctx, other))
      faultAt(ctx, [name], 'not-allowed', `can’t come beside ${other}: give one or the other`);
  };
}

/** Runs a refinement of an object also where one of its fields is faulty, so that every fault is told. */
export const evenIfFaulty = {
  when: (payload: z.core.ParsePayload): boolean =>
    typeof payload.value === 'object' && payload.value !== null && !Array.isArray(payload.value),
};

/** The same rule for readers of the JSON Schema. */
export const formsJsonSchema = (...forms: readonly [Names, Names, ...Names[]]) => ({
  oneOf: forms.map((form) => ({ required: [...form] })),
});

export const twoFormsJsonSchema = (first: Names, second: Names) => formsJsonSchema(first, second);
