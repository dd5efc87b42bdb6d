import { out, outWord } from '../../../shared/schemas/outputs.ts';
import { length } from '../../../shared/schemas/quantity-fields.ts';
import { EQUAL } from './nearest.ts';

export type Verdict = 'clear' | 'close' | 'short';

/**
 * Sets a gap against a limit.
 * `clear` when gap − uncertainty ≥ limit, `short` when gap + uncertainty < limit, else `close`.
 *
 * @param gap [m] the gap left, negative where there is overlap
 * @param limit [m] the least gap wanted
 * @param uncertainty [m] half-width of the gap's 95 % interval, not negative
 */
function verdictOf(gap: number, limit: number, uncertainty: number): Verdict {
  if (gap - uncertainty >= limit - EQUAL) return 'clear';
  if (gap + uncertainty < limit - EQUAL) return 'short';
  return 'close';
}

/** The two inputs every verdict takes. */
export const verdictInputs = {
  limit: length('least gap wanted; left out, the default of the limits table', {
    sign: 'not-negative',
  }).optional(),
  uncertainty: length('half-width of the gap’s 95 % interval; left out, zero', {
    sign: 'not-negative',
  }).optional(),
};

/** The outputs of every verdict. */
export const verdictOutputs = {
  margin: out('length', 'the gap left, negative where there is overlap'),
  limit: out('length', 'the least gap it was set against'),
  verdict: outWord(['clear', 'close', 'short'], 'gap against limit with its uncertainty'),
};

/** Margin, limit used and verdict, ready for a result. */
export function judged(
  gap: number,
  input: { readonly limit?: number | undefined; readonly uncertainty?: number | undefined },
  defaultLimit: number,
): { margin: number; limit: number; verdict: Verdict } {
  const limit = input.limit ?? defaultLimit;
  return { margin: gap, limit, verdict: verdictOf(gap, limit, input.uncertainty ?? 0) };
}
