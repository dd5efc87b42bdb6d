import { z } from 'zod';
import type { FaultCode } from '../problems/faults.ts';
import type { QuantityRange } from './read-quantity.ts';

/** The longest array taken unless a field says otherwise. */
export const LONGEST = 2000;

/** Where a transform of a field tells its faults. */
export interface Context {
  addIssue(issue: {
    code: 'custom';
    message: string;
    path?: PropertyKey[];
    params: { fault: FaultCode };
    input?: unknown;
  }): void;
}

/** Tells one fault, and gives the value that stands for none. */
export function refuse(ctx: Context, faultCode: FaultCode, message: string, path: PropertyKey[] = []): never {
  ctx.addIssue({ code: 'custom', message, path, params: { fault: faultCode } });
  return z.NEVER;
}

export interface ArrayRange extends QuantityRange {
  readonly least?: number;
  readonly most?: number;
}

/** Whether a list is longer or shorter than it may be, which is told. */
export function tooMany(ctx: Context, items: readonly unknown[], range: ArrayRange): boolean {
  const most = range.most ?? LONGEST;
  if (items.length > most) {
    refuse(ctx, 'too-many', `has ${items.length} items; ${most} at the most`);
    return true;
  }
  const least = range.least ?? 1;
  if (items.length < least) {
    refuse(ctx, 'required', `has ${items.length} items; ${least} at the least`);
    return true;
  }
  return false;
}
